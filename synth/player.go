package synth

import (
	"math"
	"slices"
)

const (
	ramp    = 0.010 // seconds of every start and stop
	ceiling = 0.5   // the greatest output of a player: -6 dBFS
)

// An Item is a sound and the linear gain it is played with, which comes from
// matching loudness. ID says whose sound it is: an item whose sound changes
// keeps its ID, and glides to where its controls now stand.
type Item struct {
	ID    int
	Sound Sound
	Gain  float64
}

// A Program is what a player plays: its items in turn, over and over or once, with
// Gap seconds of silence between them. A program without items is silence.
type Program struct {
	Items []Item
	Gap   float64
	Once  bool
}

// A Player plays a program. Its output never exceeds 0.5, every note starts
// and stops within a ramp of 10 ms on top of its own envelope, and Render
// allocates nothing. It is not safe for concurrent use.
type Player struct {
	rate    float64
	voice   *Voice
	now     Program
	next    Program
	waiting bool // next is to follow when the ramp is down

	item    int // which sounds, -1 for none
	follows int // which comes next
	ticks   int // for how long it has sounded, or silence is still to last
	gain    slide
	edge    float64 // the ramp, 0 to 1
	limiter limiter

	ready int // samples of the last tick not yet given away
	out   [tick]float32
}

// NewPlayer makes a player for a sample rate in hertz. It is silent until
// [Player.Play].
func NewPlayer(rate float64) *Player {
	v := NewVoice(Default(), rate)
	return &Player{rate: v.rate, voice: v, item: -1, limiter: newLimiter(v.rate)}
}

// Play goes over to a program. Where its items have the IDs of the program that
// plays, the controls of the one that sounds are moved to where they now stand;
// otherwise what sounds fades out within 10 ms and the first item begins.
func (p *Player) Play(next Program) {
	p.next.Items = append(p.next.Items[:0], next.Items...) // allocates only for more than ever
	for i := range p.next.Items {
		p.next.Items[i].Gain = finite(next.Items[i].Gain, 0, 1000)
	}
	p.next.Gap, p.next.Once = finite(next.Gap, 0, 3600), next.Once
	switch {
	case p.waiting:
	case slices.EqualFunc(p.next.Items, p.now.Items, sameID):
		p.now, p.next = p.next, p.now
		if p.item >= 0 {
			p.voice.Set(p.now.Items[p.item].Sound)
			p.gain.to(p.now.Items[p.item].Gain, glideTime*p.rate)
		}
	case p.item < 0:
		p.now, p.next = p.next, p.now
		p.follows, p.ticks = 0, 0
	default:
		p.waiting = true
	}
}

func sameID(a, b Item) bool { return a.ID == b.ID }

// Sounding returns which item sounds and for how many seconds it has; -1 in
// silence.
func (p *Player) Sounding() (item int, seconds float64) {
	if p.item < 0 {
		return -1, 0
	}
	return p.item, float64(p.ticks*tick-p.ready) / p.rate
}

// Render writes the next samples to dst and, unless cycle is nil, the phase
// that triggers an oscilloscope to cycle, which must be as long: see
// [Voice.Render]. In silence it is 0.
func (p *Player) Render(dst, cycle []float32) {
	for i := 0; i < len(dst); {
		if p.ready == 0 {
			p.tick()
		}
		n := min(p.ready, len(dst)-i)
		copy(dst[i:i+n], p.out[tick-p.ready:])
		switch {
		case cycle == nil:
		case p.item < 0:
			clear(cycle[i : i+n])
		default:
			copy(cycle[i:i+n], p.voice.trace()[tick-p.ready:])
		}
		p.ready -= n
		i += n
	}
}

// tick makes the next samples.
func (p *Player) tick() {
	p.turn()
	p.ready = tick
	if p.item < 0 {
		p.ticks = max(0, p.ticks-1)
		clear(p.out[:])
		return
	}
	p.voice.Render(p.out[:], nil)
	step := 1 / (ramp * p.rate)
	if p.waiting || p.voice.remaining() < ramp {
		step = -step
	}
	for i, x := range p.out {
		p.edge = math.Min(math.Max(p.edge+step, 0), 1)
		y := float64(x) * p.gain.advance() * raisedCosine(p.edge)
		p.out[i] = float32(p.limiter.run(y))
	}
	p.ticks++
}

// turn ends what has ended and begins what is due.
func (p *Player) turn() {
	switch {
	case p.waiting && (p.item < 0 || p.edge == 0 || p.voice.Done()):
		p.now, p.next, p.waiting = p.next, p.now, false
		p.item, p.follows, p.ticks = -1, 0, 0
	case p.item >= 0 && p.voice.Done():
		p.item, p.follows = -1, p.item+1
		p.ticks = int(math.Round(p.now.Gap * p.rate / tick))
	}
	if n := len(p.now.Items); p.item < 0 && p.ticks == 0 && n > 0 && (p.follows < n || !p.now.Once) {
		p.item = p.follows % len(p.now.Items)
		p.voice.start(p.now.Items[p.item].Sound)
		g := p.now.Items[p.item].Gain
		p.gain, p.edge = slide{now: g, goal: g}, 0
	}
}

// finite returns x brought between lo and hi; lo if x is not a number.
func finite(x, lo, hi float64) float64 {
	if !(x >= lo) { // also NaN
		return lo
	}
	return math.Min(x, hi)
}
