package engine

import (
	"math"
	"slices"
	"testing"

	"partialcredit/synth"
)

// counting is a player whose samples say which ones they are: 1, 2, 3 and so
// on. It says that an item sounds while it has a program with items.
type counting struct {
	n       int
	program synth.Program
	played  int
}

func (c *counting) Play(p synth.Program) {
	c.program = p
	c.played++
}

func (c *counting) Render(dst, cycle []float32) {
	for i := range dst {
		c.n++
		dst[i], cycle[i] = float32(c.n), -float32(c.n)
	}
}

func (c *counting) Sounding() (int, float64) { return len(c.program.Items) - 1, float64(c.n) }

// send does what the page and web/worklet.js do.
func send(e *Engine, m []float64) {
	copy(e.Inbox(len(m)), m)
	e.Take()
}

func program() synth.Program {
	other := synth.Default()
	for i := range fields { // another value for every field
		f := &fields[i]
		other = nudged(other, f)
	}
	return synth.Program{Gap: 0.25, Items: []synth.Item{{ID: 1, Sound: synth.Default(), Gain: 0.125}, {ID: 2, Sound: other, Gain: math.Pi}}}
}

func nudged(s synth.Sound, f *synth.Field) synth.Sound {
	v := f.Min
	if f.Get(&s) == v {
		v = f.Max
	}
	f.Set(&s, v)
	return s
}

func TestProgramsArriveAsTheyWereSent(t *testing.T) {
	c := &counting{}
	e := New(c)
	for _, p := range []synth.Program{program(), {Gap: 3}, {Once: true}, {}, {Items: program().Items[1:]}} {
		send(e, AppendProgram(nil, p))
		if c.program.Gap != p.Gap || c.program.Once != p.Once || !slices.Equal(c.program.Items, p.Items) {
			t.Errorf("sent %+v, arrived %+v", p, c.program)
		}
	}
	if d, n := synth.Default(), program().Items[1].Sound; d == n {
		t.Error("nothing but defaults was sent")
	}
}

func TestWhatIsNoMessageChangesNothing(t *testing.T) {
	c := &counting{}
	e := New(c)
	good := AppendProgram(nil, program())
	for _, m := range [][]float64{nil, {0}, {0, 1, 2}, {2, 1}, {1}, good[:len(good)-1], {math.NaN(), 1}, append(slices.Clone(good), 0)} {
		send(e, m)
	}
	e.Render(0)
	if c.played != 0 || e.out[Quantum-1] != 0 {
		t.Errorf("a program was played %d times, and the volume is %v", c.played, e.out[Quantum-1]/Quantum)
	}
}

func TestVolumeStartsAtZeroAndGlides(t *testing.T) {
	e := New(&counting{})
	render := func(quanta int) float64 {
		for range quanta {
			e.Render(0)
		}
		return float64(e.Out()[Quantum-1]) / float64(e.player.(*counting).n)
	}
	if got := render(3); got != 0 {
		t.Errorf("volume %v at first", got)
	}
	send(e, AppendVolume(nil, 0.5))
	if got := render(1); math.Abs(got-float64(Quantum)/Glide) > 1e-6 {
		t.Errorf("volume %v after a quantum, want %v", got, float64(Quantum)/Glide)
	}
	for _, tt := range [][2]float64{{0.5, 0.5}, {7, 1}, {-3, 0}, {math.Inf(1), 1}, {math.NaN(), 0}} {
		send(e, AppendVolume(nil, tt[0]))
		if got := render(8); math.Abs(got-tt[1]) > 1e-6 {
			t.Errorf("volume %v, want %v for %v", got, tt[1], tt[0])
		}
	}
}

func TestBlocksHoldWhatWasPlayed(t *testing.T) {
	c := &counting{program: program()}
	e := New(c)
	const first = 1 << 40
	for i := range 3 * len(e.block) {
		full := e.Render(first + int64(i)*Quantum)
		if want := (i+1)%len(e.block) == 0; full != want {
			t.Fatalf("after %d quanta full is %v", i+1, full)
		}
		if !full {
			continue
		}
		for j, q := range e.Block() {
			n := i + 1 - len(e.block) + j
			if q.Frame != first+int64(n)*Quantum || q.Item != 1 || q.Seconds != float64((n+1)*Quantum) {
				t.Errorf("quantum %d: frame %d, item %d for %v s", n, q.Frame, q.Item, q.Seconds)
			}
			if q.Samples[0] != float32(n*Quantum+1) || q.Cycle[Quantum-1] != -float32((n+1)*Quantum) {
				t.Errorf("quantum %d begins with sample %v and ends with cycle %v", n, q.Samples[0], q.Cycle[Quantum-1])
			}
		}
	}
}

func TestLongSilenceSendsNothing(t *testing.T) {
	c := &counting{}
	e := New(c)
	blocks := func(quanta int) (n int) {
		for i := range quanta {
			if e.Render(int64(i) * Quantum) {
				n++
			}
		}
		return n
	}
	if n := blocks(80); n != 0 {
		t.Errorf("%d blocks of silence before anything sounded", n)
	}
	c.program = program()
	if n := blocks(80); n != 10 {
		t.Errorf("%d blocks of sound, want 10", n)
	}
	c.program = synth.Program{}
	if n := blocks(rests); n != rests/8 {
		t.Errorf("%d blocks of silence at first, want %d", n, rests/8)
	}
	if n := blocks(800); n != 0 {
		t.Errorf("%d blocks of silence later on", n)
	}
}

func TestNothingIsAllocated(t *testing.T) {
	e := New(synth.NewPlayer(48000))
	p := program()
	message := AppendProgram(nil, p)
	play := func() {
		p.Items[0].Gain += 1e-6
		p.Items[0].Sound.Combine.How = synth.How(int(1e6*p.Items[0].Gain) % 6)
		message = AppendProgram(message[:0], p)
		send(e, message)
		send(e, AppendVolume(message[:0], p.Items[0].Gain))
	}
	for range 3 {
		play()
		e.Render(0)
	}
	frame := int64(0)
	if n := testing.AllocsPerRun(1000, func() { e.Render(frame); frame += Quantum }); n != 0 {
		t.Errorf("a quantum allocates %v times", n)
	}
	if n := testing.AllocsPerRun(1000, func() { play(); e.Render(frame); frame += Quantum }); n != 0 {
		t.Errorf("a message and a quantum allocate %v times", n)
	}
	p.Items[0].ID++ // another program
	if n := testing.AllocsPerRun(1000, func() { p.Items[0].ID++; play(); e.Render(frame); frame += Quantum }); n != 0 {
		t.Errorf("another program and a quantum allocate %v times", n)
	}
}
