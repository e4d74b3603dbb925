package synth

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// tone is a sine of 0.2 s at a MIDI note.
func tone(note float64) Sound {
	s := oscillators(OnlyA, Sine, 0.5)
	s.Note, s.Seconds, s.Amplitude.Release = note, 0.2, 0.05
	return s
}

func peak(x []float32) float64 {
	m := 0.0
	for _, y := range x {
		m = math.Max(m, math.Abs(float64(y)))
	}
	return m
}

// playFor renders seconds of a player at 48 kHz in uneven blocks.
func playFor(p *Player, seconds float64) []float32 {
	out := make([]float32, int(math.Round(seconds*48000)))
	for i := 0; i < len(out); {
		n := min(377, len(out)-i)
		p.Render(out[i:i+n], nil)
		i += n
	}
	return out
}

func TestPlayerIsSilentUntilPlay(t *testing.T) {
	p := NewPlayer(48000)
	if got := peak(playFor(p, 0.1)); got != 0 {
		t.Errorf("peak %v", got)
	}
	if item, seconds := p.Sounding(); item != -1 || seconds != 0 {
		t.Errorf("item %v after %v s", item, seconds)
	}
	p.Play(Program{})
	if got := peak(playFor(p, 0.1)); got != 0 {
		t.Errorf("peak %v", got)
	}
}

// Items in turn, over and over: 0.25 s of note, 0.1 s of gap.
func TestItemsSoundInTurn(t *testing.T) {
	p := NewPlayer(48000)
	p.Play(Program{Items: []Item{{Sound: tone(69), Gain: 1}, {Sound: tone(81), Gain: 1}, {Sound: tone(93), Gain: 1}}, Gap: 0.1})
	x := wide(playFor(p, 3))
	for i := range 8 {
		from := int(float64(i) * 0.35 * 48000)
		hz := []float64{440, 880, 1760}[i%3]
		if got := amplitude(x[from+2400:from+9600], hz/48000); math.Abs(got-1) > 0.01 {
			t.Errorf("note %d: %v of %v Hz", i, got, hz)
		}
		gap := playbackPeak(x[from+12000+tick : from+16800-tick])
		if gap != 0 {
			t.Errorf("gap %d: %v", i, gap)
		}
	}
}

func TestOnceEndsAfterTheLastItem(t *testing.T) {
	p := NewPlayer(48000)
	once := Program{Items: []Item{{Sound: tone(69), Gain: 1}, {Sound: tone(81), Gain: 1}}, Gap: 0.1, Once: true}
	for range 2 { // and again after silence
		p.Play(once)
		x := wide(playFor(p, 0.6))
		if first, second := amplitude(x[2400:9600], 440/48000.), amplitude(x[19200:26400], 880/48000.); math.Abs(first-1) > 0.01 || math.Abs(second-1) > 0.01 {
			t.Errorf("%v of the first note, %v of the second", first, second)
		}
		if after := peak(playFor(p, 2)); after != 0 {
			t.Errorf("%v after the end", after)
		}
		p.Play(Program{})
	}
}

func playbackPeak(x []float64) float64 {
	return max(slices.Max(x), -slices.Min(x))
}

func TestSoundingTellsItemAndTime(t *testing.T) {
	p := NewPlayer(48000)
	p.Play(Program{Items: []Item{{Sound: tone(69), Gain: 1}, {Sound: tone(81), Gain: 1}}, Gap: 0.1})
	now := 0.0
	for _, c := range []struct {
		at      float64
		item    int
		seconds float64
	}{{0.1001, 0, 0.1001}, {0.2, 0, 0.2}, {0.3, -1, 0}, {0.4, 1, 0.05}, {0.8, 0, 0.1}} { // gaps and notes are whole ticks here
		playFor(p, c.at-now)
		now = c.at
		if item, seconds := p.Sounding(); item != c.item || math.Abs(seconds-c.seconds) > 0.5/48000 {
			t.Errorf("at %v s: item %d after %v s, want %d after %v", c.at, item, seconds, c.item, c.seconds)
		}
	}
}

// The gain comes from matching loudness and must arrive exactly.
func TestGain(t *testing.T) {
	p := NewPlayer(48000)
	p.Play(Program{Items: []Item{{Sound: tone(81), Gain: 0.5}, {Sound: tone(81), Gain: 2}}})
	x := playFor(p, 0.5)
	if a, b := peak(x[4800:9600]), peak(x[16800:21600]); math.Abs(a-0.5*unit) > 1e-3*unit || math.Abs(b-2*unit) > 2e-3*unit {
		t.Errorf("peaks of %v and %v", a, b)
	}
}

// The ramp of 10 ms lies over the envelope of the note, however short its own
// attack and release: a raised cosine, the definition in limiter.go.
func TestRampsOfTenMilliseconds(t *testing.T) {
	s := tone(93)
	s.Amplitude.Attack, s.Amplitude.Release = 0.002, 0.005
	p := NewPlayer(48000)
	p.Play(Program{Items: []Item{{Sound: s, Gain: 1}}, Gap: 1})
	x := playFor(p, 0.3)
	for _, c := range []struct{ at, want float64 }{{0.0025, 0.146}, {0.005, 0.5}, {0.0075, 0.854}, {0.02, 1}} {
		from := int(c.at * 48000)
		// Over the period of 1760 Hz about the point the ramp moves by up to 9 %.
		if got := peak(x[from-14:from+14]) / unit; math.Abs(got-c.want) > 0.1 {
			t.Errorf("level %.3f at %v s, want %v", got, c.at, c.want)
		}
	}
	end := int(0.205 * 48000)
	if got := peak(x[end:]); got > 1e-3*unit {
		t.Errorf("%v after the end", got)
	}
	if got := peak(x[end-264:end-216]) / unit; math.Abs(got-0.5) > 0.15 { // 5 ms before the end
		t.Errorf("level %.3f 5 ms before the end, want 0.5", got)
	}
}

// With the same IDs the sounding item glides; with others, or another number of
// items, it fades out within 10 ms and the new program begins.
func TestPlayWhileSounding(t *testing.T) {
	long := tone(69)
	long.Seconds = 2
	p := NewPlayer(48000)
	p.Play(Program{Items: []Item{{Sound: long, Gain: 1}}})
	playFor(p, 0.5)
	higher := long
	higher.Note = 81
	p.Play(Program{Items: []Item{{Sound: higher, Gain: 1}}})
	x := wide(playFor(p, 0.5))
	if got := amplitude(x[2400:], 880.0/48000); math.Abs(got-1) > 0.01 {
		t.Errorf("%v of the new pitch", got)
	}
	if item, seconds := p.Sounding(); item != 0 || seconds < 0.9 {
		t.Errorf("the note began again: item %d after %v s", item, seconds)
	}
	p.Play(Program{Items: []Item{{ID: 7, Sound: higher, Gain: 1}}})
	playFor(p, 0.2)
	if item, seconds := p.Sounding(); item != 0 || math.Abs(seconds-0.19) > 0.001 {
		t.Errorf("another ID: item %d after %v s, want 0 after 0.19", item, seconds)
	}
	p.Play(Program{Items: []Item{{Sound: tone(93), Gain: 1}, {Sound: tone(93), Gain: 1}}})
	x = wide(playFor(p, 0.2))
	if item, seconds := p.Sounding(); item != 0 || math.Abs(seconds-0.19) > 0.001 {
		t.Errorf("item %d after %v s, want 0 after 0.19", item, seconds)
	}
	if got := amplitude(x[1440:8640], 1760.0/48000); math.Abs(got-1) > 0.01 {
		t.Errorf("%v of the new program", got)
	}
	p.Play(Program{})
	x = wide(playFor(p, 0.1))
	if got := playbackPeak(x[480+tick:]); got != 0 {
		t.Errorf("%v after the fade out", got)
	}
	if item, _ := p.Sounding(); item != -1 {
		t.Errorf("item %d sounds", item)
	}
}

// A new program does not wait for the gap after a note that ends meanwhile.
func TestPlayNearTheEndOfANote(t *testing.T) {
	for _, at := range []float64{0.243, 0.249, 0.26} { // the note ends at 0.25
		p := NewPlayer(48000)
		p.Play(Program{Items: []Item{{Sound: tone(69), Gain: 1}}, Gap: 5})
		playFor(p, at)
		p.Play(Program{Items: []Item{{Sound: tone(93), Gain: 1}, {Sound: tone(93), Gain: 1}}})
		x := wide(playFor(p, 0.2))
		if got := amplitude(x[1440:8640], 1760.0/48000); math.Abs(got-1) > 0.01 {
			t.Errorf("at %v s: %v of the new program", at, got)
		}
	}
}

// The output never exceeds -6 dBFS (issue 2), whatever is done, and a steady
// loud tone is made softer without being bent: its harmonics stay away.
func TestLimiter(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	p := NewPlayer(48000)
	block, cycle := make([]float32, 1000), make([]float32, 1000)
	for i := range 300 {
		s := busy(hows[random.IntN(6)])
		s.Seconds = 0.1 + random.Float64()
		items := make([]Item, 1+i/50%2)
		for j := range items {
			items[j] = Item{Sound: s, Gain: []float64{1, 4, 100, math.NaN(), math.Inf(1), -1}[random.IntN(6)]}
		}
		p.Play(Program{Items: items, Gap: []float64{0, 0.01, math.NaN()}[random.IntN(3)]})
		p.Render(block, cycle)
		checkSane(t, s, block, cycle)
		if got := peak(block); got > ceiling {
			t.Fatalf("peak %v", got)
		}
	}
	for _, note := range []float64{24, 57, 96} {
		s := tone(note)
		s.Seconds = 3
		p := NewPlayer(48000)
		p.Play(Program{Items: []Item{{Sound: s, Gain: 20}}})
		x := wide(playFor(p, 3))[48000:]
		hz, _ := s.Hz()
		first := amplitude(x, hz/48000) * unit
		if first < 0.9*ceiling || first > ceiling*1.001 { // where the gain stays
			t.Errorf("note %v: amplitude %v, want %v", note, first, ceiling)
		}
		for n := 2.0; n < 6; n++ {
			if got := decibels(amplitude(x, n*hz/48000) * unit / first); got > -90 { // the side lobes of the window: -92
				t.Errorf("note %v: harmonic %v at %.1f dB", note, n, got)
			}
		}
	}
}

func TestPlayerAllocatesNothing(t *testing.T) {
	p := NewPlayer(48000)
	a, b := busy(FM), busy(Ring)
	a.Seconds, b.Seconds = 0.1, 0.1
	p.Play(Program{Items: []Item{{Sound: a, Gain: 1}, {Sound: b, Gain: 1}}, Gap: 0.01})
	block, cycle := make([]float32, 1024), make([]float32, 1024)
	if n := testing.AllocsPerRun(100, func() { p.Render(block, cycle) }); n != 0 {
		t.Errorf("%v allocations for a block", n)
	}
}

func TestPlayerGivesTheSameBitsForAnySplit(t *testing.T) {
	program := Program{Items: []Item{{Sound: busy(FM), Gain: 1}, {Sound: busy(Mix), Gain: 6}}, Gap: 0.05}
	random := rand.New(rand.NewPCG(9, 10))
	whole, wholeCycle := make([]float32, 48000), make([]float32, 48000)
	p := NewPlayer(48000)
	p.Play(program)
	p.Render(whole, wholeCycle)
	split, cycle := make([]float32, 48000), make([]float32, 48000)
	p = NewPlayer(48000)
	p.Play(program)
	for i := 0; i < len(split); {
		n := min(random.IntN(300), len(split)-i)
		p.Render(split[i:i+n], cycle[i:i+n])
		i += n
	}
	if !slices.Equal(whole, split) || !slices.Equal(wholeCycle, cycle) {
		t.Error("another split, other bits")
	}
}
