package speaker

import (
	"encoding/binary"
	"math"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// counting is a player whose samples say which ones they are: 1, 2, 3 and so
// on. Its items last itemLength samples each, then comes silence as long.
type counting struct {
	n       int64
	program synth.Program
}

const itemLength = 1000

func (c *counting) Play(p synth.Program) { c.program = p }

func (c *counting) Render(dst, cycle []float32) {
	for i := range dst {
		c.n++
		dst[i] = float32(c.n)
		cycle[i] = -float32(c.n)
	}
}

func (c *counting) Sounding() (int, float64) { return countedItem(c.n) }

// countedItem is what sounds in sample n, the first being 1.
func countedItem(n int64) (item int, seconds float64) {
	slot := (n - 1) / itemLength
	if n <= 0 || slot%2 == 1 {
		return -1, 0
	}
	return int(slot / 2), float64(n-slot*itemLength) / Rate
}

// A simulation is a browser with Oto in it: a worklet that plays quanta and
// pulls, a main thread that answers, and the way to the ear. The worklet's
// rules are those of oto v3.5.0, driver_js.go, the player's those of its mux.
type simulation struct {
	deck      *deck
	now       time.Duration
	announces bool // its pulls

	state   string
	latency int           // samples from the worklet to the ear
	answer  time.Duration // how long the main thread takes

	chunk   int // samples
	buffer  []byte
	store   []float32
	asked   bool
	askedAt time.Duration
	quanta  int64
	dry     int // quanta without sound while there should have been

	played []float32 // the left channel
	uneven int       // samples that differ between the channels
}

func (s *simulation) Now() time.Duration    { return s.now }
func (s *simulation) AudioState() string    { return s.state }
func (s *simulation) OnPull(func())         {}
func (s *simulation) AudioTime() float64    { return 0 }
func (s *simulation) AudioLatency() float64 { return float64(s.latency) / Rate }

func newSimulation(p engine.Player, chunk int) *simulation {
	s := &simulation{state: "suspended", latency: 1920, chunk: chunk, answer: time.Millisecond}
	s.deck = newDeck(s, p, chunk)
	s.deck.waiting = func() int { return len(s.buffer) }
	s.fill(pullWas)
	return s
}

// fill is what Oto's mux does when the player's buffer has room.
func (s *simulation) fill(why reason) {
	for len(s.buffer) < s.chunk*bytesPerFrame {
		p := make([]byte, s.chunk*bytesPerFrame)
		n := s.deck.read(p, why)
		s.buffer = append(s.buffer, p[:n]...)
	}
}

// advance lets time pass.
func (s *simulation) advance(d time.Duration) {
	const step = time.Second * quantum / Rate
	for end := s.now + d; s.now < end; s.now += step {
		if s.state == "running" {
			s.quantum()
		}
		if s.asked && s.now >= s.askedAt+s.answer {
			s.pull()
		}
	}
}

func (s *simulation) quantum() {
	if len(s.store) < 2*quantum {
		s.ask()
		if len(s.played) > 0 {
			s.dry++
		}
		return
	}
	if len(s.store) < s.chunk {
		s.ask()
	}
	for i := range quantum {
		left, right := s.store[2*i], s.store[2*i+1]
		if left != right {
			s.uneven++
		}
		s.played = append(s.played, left)
	}
	s.store = s.store[2*quantum:]
}

func (s *simulation) ask() {
	if !s.asked {
		s.asked, s.askedAt = true, s.now
	}
}

func (s *simulation) pull() {
	if s.announces {
		s.fill(pullComes)
	}
	n := min(len(s.buffer), s.chunk*bytesPerFrame)
	for i := 0; i < n; i += 4 {
		s.store = append(s.store, math.Float32frombits(binary.LittleEndian.Uint32(s.buffer[i:])))
	}
	s.buffer = s.buffer[n:]
	s.asked = false
	if !s.announces {
		s.fill(pullWas)
	}
}

// ear is everything that has reached the ear.
func (s *simulation) ear() []float32 {
	return s.played[:max(0, len(s.played)-s.latency)]
}
