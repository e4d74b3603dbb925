package speaker

import (
	"math"
	"testing"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// An afar is a browser with an engine in the thread of its audio device, which
// renders bursts of quanta; messages and blocks are on their way for a while.
// The rules are those of web/engine.js and web/worklet.js.
type afar struct {
	Speaker
	now     time.Duration
	state   string // of the device
	engine  string // its state
	latency int    // samples from the graph's end to the ear
	burst   int    // quanta at once
	way     time.Duration

	far    *engine.Engine
	make   func() engine.Player
	frame  int64
	kept   [2][]float64
	out    []letter[[]float64]
	back   []letter[engine.Block]
	stuck  bool // the page: it cannot even give back old blocks that nobody takes
	free   int  // blocks that are not on their way
	played []float32
}

type letter[T any] struct {
	what T
	due  time.Duration
}

func newAfar(make func() engine.Player) *afar {
	a := &afar{state: "suspended", engine: "ready", latency: 1920, burst: 4, way: 2 * time.Millisecond, make: make, free: 64}
	a.far = engine.New(make())
	a.Speaker = newRemote(a, a)
	return a
}

func (a *afar) Now() time.Duration    { return a.now }
func (a *afar) AudioState() string    { return a.state }
func (a *afar) AudioTime() float64    { return float64(a.frame) / Rate }
func (a *afar) AudioLatency() float64 { return float64(a.latency) / Rate }
func (a *afar) OnPull(func())         {}
func (a *afar) EngineState() string   { return a.engine }

func (a *afar) Send(m []float64) {
	m = append([]float64(nil), m...)
	a.kept[int(m[0])] = m
	a.out = append(a.out, letter[[]float64]{m, a.now + a.way})
}

func (a *afar) Receive(b *engine.Block) bool {
	if len(a.back) == 0 || a.back[0].due > a.now {
		return false
	}
	*b, a.back = a.back[0].what, a.back[1:]
	a.free++
	return true
}

func (a *afar) speaker() Speaker { return a.Speaker }

func (a *afar) suspend(on bool) {
	a.state = "running"
	if on {
		a.state = "suspended"
	}
}

func (a *afar) ear() []float32 { return a.played[:max(0, len(a.played)-a.latency)] }

func (a *afar) advance(d time.Duration) {
	step := time.Second * quantum * time.Duration(a.burst) / Rate
	for end := a.now + d; a.now < end; a.now += step {
		for len(a.out) > 0 && a.out[0].due <= a.now {
			a.deliver(a.out[0].what)
			a.out = a.out[1:]
		}
		if a.state == "running" {
			for range a.burst {
				a.quantum()
			}
		}
	}
}

func (a *afar) deliver(m []float64) {
	copy(a.far.Inbox(len(m)), m)
	a.far.Take()
}

func (a *afar) quantum() {
	full := a.far.Render(a.frame)
	a.frame += quantum
	a.played = append(a.played, a.far.Out()[:]...)
	if !a.stuck && len(a.back) > queued {
		a.back = a.back[1:]
		a.free++
	}
	if full && a.free > 0 {
		a.free--
		a.back = append(a.back, letter[engine.Block]{*a.far.Block(), a.now + a.way})
	}
}

// renew puts another device in the place of this one.
func (a *afar) renew() {
	a.far = engine.New(a.make())
	a.frame, a.played, a.out, a.back, a.free = 0, nil, nil, nil, 64
	for _, m := range a.kept {
		if m != nil {
			a.deliver(m)
		}
	}
}

// queued is how many blocks web/engine.js keeps for the app.
const queued = 48

func aCount() engine.Player { return &counting{} }

const blockLength = len(engine.Block{}) * quantum

func TestRemoteKeepsTheContract(t *testing.T) {
	for _, latency := range []int{0, 480, 1920, 9600} {
		for _, burst := range []int{1, 4, 16} {
			// Behind by what of a block is not there yet, its way, and a burst.
			lag := max(0, int64(blockLength+96+burst*quantum-latency)) + int64(burst*quantum)
			testContract(t, lag, func() rig {
				a := newAfar(aCount)
				a.latency, a.burst = latency, burst
				return a
			})
		}
	}
}

func TestChoiceKeepsTheContract(t *testing.T) {
	t.Run("with the engine", func(t *testing.T) {
		testContract(t, int64(8*quantum), func() rig {
			a := newAfar(aCount)
			a.Speaker = newChoice(a, a, func() Speaker {
				t.Error("the other way was opened")
				return a.Speaker
			})
			return a
		})
	})
	t.Run("without", func(t *testing.T) {
		testContract(t, int64(4*quantum), func() rig {
			s := newSimulation(&counting{}, 4096)
			a := newAfar(aCount)
			a.engine = "failed"
			return &fallen{s, newChoice(s, a, func() Speaker { return s.deck })}
		})
	})
}

// A fallen is a simulation of Oto behind a choice.
type fallen struct {
	*simulation
	choice *choice
}

func (f *fallen) speaker() Speaker {
	f.choice.State()
	return f.choice
}

func TestChoiceTakesAlongWhatPlays(t *testing.T) {
	s := newSimulation(synth.NewPlayer(Rate), 4096)
	s.state = "running"
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.engine = "loading"
	opened := 0
	c := newChoice(s, a, func() Speaker { opened++; return s.deck })
	c.Play(synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.1}}})
	c.SetVolume(0.5)
	if c.State() != Waiting || opened != 0 {
		t.Errorf("while the engine is loading: state %d, Oto opened %d times", c.State(), opened)
	}
	a.engine = "failed"
	for range 3 {
		c.State()
	}
	s.advance(2 * time.Second)
	loudest := float32(0)
	for _, v := range s.ear() {
		loudest = max(loudest, v)
	}
	if c.State() != Running || opened != 1 || loudest == 0 {
		t.Errorf("after the engine has failed: state %d, Oto opened %d times, peak %v", c.State(), opened, loudest)
	}
}

// The whole way with the real engine: what the ear hears of a program is what a
// player gives for it.
func TestTheEarHearsThePlayerAfar(t *testing.T) {
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.state = "running"
	a.SetVolume(0.5)
	a.advance(time.Second)
	p := synth.Program{Items: []synth.Item{{ID: 7, Sound: synth.Default(), Gain: 0.2}}, Gap: 0.1}
	a.Play(p)
	a.advance(a.way)
	rendered := len(a.played)
	a.advance(time.Second)

	want := make([]float32, Rate/2)
	reference := synth.NewPlayer(Rate)
	reference.Render(make([]float32, rendered), nil)
	reference.Play(p)
	reference.Render(want, nil)
	peak := 0.0
	for i, v := range want {
		peak = math.Max(peak, math.Abs(float64(v)))
		if got := a.played[rendered+i]; got != v/2 {
			t.Fatalf("sample %d is %v, want %v", i, got, v/2)
		}
	}
	if peak < 0.01 {
		t.Errorf("a peak of %v: nothing was compared", peak)
	}
	w := newWindow(1000)
	a.Heard(w)
	if w.Item != 0 || w.Seconds < 0.5 || w.Seconds > 1 {
		t.Errorf("item %d for %v s", w.Item, w.Seconds)
	}
}

func TestSilenceIsToldOnce(t *testing.T) {
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.state = "running"
	a.SetVolume(1)
	note := synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.2}}}
	w := newWindow(4096)
	for range 2 {
		a.Play(note)
		a.advance(time.Second)
		if a.Heard(w); w.Item != 0 {
			t.Fatalf("item %d while a note sounds", w.Item)
		}
		a.Play(synth.Program{})
		a.advance(4 * time.Second)
		if a.Heard(w); w.Item != -1 {
			t.Errorf("item %d in silence", w.Item)
		}
		for i, v := range w.Samples {
			if v != 0 {
				t.Fatalf("sample %d of silence is %v", i, v)
			}
		}
		a.advance(10 * time.Second)
		if len(a.back) > 0 {
			t.Errorf("%d blocks of silence came back within ten seconds", len(a.back))
		}
	}
}

func TestHeardAfterThePageStoodStill(t *testing.T) {
	a := newAfar(aCount)
	a.state = "running"
	a.SetVolume(1)
	a.advance(time.Second)
	w := newWindow(4096)
	a.Heard(w)
	a.stuck = true
	a.advance(10 * time.Second)
	a.stuck = false
	a.Heard(w)
	for range 100 {
		a.advance(5 * time.Millisecond)
		a.Heard(w)
	}
	end := int64(w.Samples[len(w.Samples)-1])
	if ear := int64(len(a.ear())); end > ear || end < ear-8*quantum {
		t.Errorf("heard up to sample %d, the ear up to %d", end, ear)
	}
	for i, v := range w.Samples {
		if want := float32(end - int64(len(w.Samples)-1-i)); v != want {
			t.Fatalf("sample %d of the window is number %v, want %v", i, v, want)
		}
	}
}

func TestAnotherDeviceBeginsAnew(t *testing.T) {
	a := newAfar(aCount)
	a.state = "running"
	a.SetVolume(1)
	a.advance(5 * time.Second)
	w := newWindow(1)
	a.Heard(w)
	a.renew()
	a.advance(time.Second)
	a.Heard(w)
	if ear := float32(len(a.ear())); w.Samples[0] > ear || w.Samples[0] < ear-8*quantum {
		t.Errorf("heard up to sample %v, the ear up to %v", w.Samples[0], ear)
	}
	if last := a.played[len(a.played)-1]; last != float32(len(a.played)) {
		t.Errorf("the volume did not come along: sample %d is %v", len(a.played), last)
	}
}

func TestStatesOfARemote(t *testing.T) {
	a := newAfar(aCount)
	check := func(what string, want State, fails bool) {
		t.Helper()
		if got, err := a.State(), a.Err(); got != want || (err != nil) != fails {
			t.Errorf("%s: state %d with error %v, want %d", what, got, err, want)
		}
	}
	check("before a gesture", Waiting, false)
	a.state, a.engine = "running", "loading"
	a.advance(10 * time.Second)
	check("while the engine is loading", Waiting, false)
	a.engine = "ready"
	a.advance(time.Second)
	check("running", Running, false)
	a.state = "interrupted"
	check("interrupted", Suspended, false)
	a.state = "running"
	for range 100 { // its clock stands still
		a.now += 50 * time.Millisecond
		a.State()
	}
	check("a device whose clock stands still", Failed, true)
	a.advance(time.Second)
	check("it goes on after all", Running, false)
	a.state = "closed"
	check("closed", Failed, true)
}
