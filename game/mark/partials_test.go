package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// Levels of partials re the first: sawtooth 1/n, pulse |sin πnd|/n (closed
// Fourier series, any textbook). The engine keeps within 0.1 dB of them; the
// sums over the bins of a partial add no more.
func TestPartialsOfTheTarget(t *testing.T) {
	saw, pulse := parse(t, `"note": 57`), parse(t, `"note": 57, "a": {"shape": "pulse", "duty": 0.25}`)
	r := mark.Prepare(saw)
	for _, p := range r.Mark(saw, 1).Partials {
		near(t, "sawtooth", p.Target, -20*math.Log10(float64(p.Number)), 0.15)
		near(t, "sawtooth", p.Hz, 220*float64(p.Number), 1e-6)
		if !p.Within || p.Target != p.Yours {
			t.Errorf("the same sound: %+v", p)
		}
	}
	crosses := r.Mark(pulse, 1).Partials
	if n := len(crosses); n < 10 || n > 25 {
		t.Errorf("%d partials of a sawtooth at 220 Hz can be heard out", n)
	}
	for _, p := range crosses {
		if p.Number%4 == 0 && (p.Within || p.Yours > -50) {
			t.Errorf("a quarter duty has no partial %d: %+v", p.Number, p)
		}
	}
	for _, p := range mark.Prepare(pulse).Mark(saw, 1).Partials {
		if p.Number%4 == 0 {
			t.Errorf("the target has no partial %d: %+v", p.Number, p)
		}
	}
}

// Ring modulation of two sines of 220 Hz and 2.4 times that: the sum and the
// difference, of equal level, and nothing else.
func TestPartialsOfAnInharmonicTarget(t *testing.T) {
	s := parse(t, `"note": 57, "a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "ring", "ratio": 2.4}`)
	got := mark.Prepare(s).Mark(s, 1).Partials
	want := []float64{220 * 1.4, 220 * 3.4}
	if len(got) != len(want) {
		t.Fatalf("%+v", got)
	}
	for i, p := range got {
		near(t, "frequency", p.Hz, want[i], 0.5)
		near(t, "level", p.Target, 0, 0.1)
		if p.Number != 0 {
			t.Errorf("it is no multiple of the fundamental: %+v", p)
		}
	}
}

// Amplitude modulation of a sine at 440 Hz by 0.62 times that, depth 0.8: the
// carrier and a pair of sidebands of half the depth, all three to be ticked.
func TestPartialsOfCarrierAndSidebands(t *testing.T) {
	s := parse(t, `"note": 69, "a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "am", "ratio": 0.62, "depth": 0.8}`)
	got := mark.Prepare(s).Mark(s, 1).Partials
	want := []struct{ hz, db float64 }{{440 * 0.38, 20 * math.Log10(0.4)}, {440, 0}, {440 * 1.62, 20 * math.Log10(0.4)}}
	if len(got) != len(want) {
		t.Fatalf("%+v", got)
	}
	for i, p := range got {
		near(t, "frequency", p.Hz, want[i].hz, 0.5)
		near(t, "level", p.Target, want[i].db, 0.1)
	}
}

// Vibrato spreads a partial over several lines; one of them carries its number.
func TestVibratoKeepsThePartialsApart(t *testing.T) {
	s := synth.Render(parse(t, `"note": 64, "a": {"shape": "triangle"}, "lfo": {"shape": "sine", "hz": 5.5, "cents": 60}`), 48000)
	seen := map[int]bool{}
	for _, l := range mark.Partials(s[20000:20000+8192], 48000, 329.63) {
		if l.DB > -45 && l.Number == 0 {
			t.Errorf("a strong line has no number: %+v", l)
		}
		if l.Number > 0 && seen[l.Number] {
			t.Errorf("two lines are partial %d", l.Number)
		}
		seen[l.Number] = true
	}
	if !seen[1] || !seen[3] || !seen[5] {
		t.Errorf("partials %v", seen)
	}
}

func TestLinesForDrawing(t *testing.T) {
	const rate = 48000
	saw := synth.Render(parse(t, `"note": 57`), rate)[9600 : 9600+8192]
	lines := mark.Partials(saw, rate, 220)
	for i, l := range lines[:20] {
		if l.Number != i+1 {
			t.Fatalf("line %d is numbered %d", i+1, l.Number)
		}
		near(t, "frequency", l.Hz, 220*float64(l.Number), 0.05)
		near(t, "level", l.DB, -20*math.Log10(float64(l.Number)), 0.15)
	}
	ring := synth.Render(parse(t, `"note": 57, "a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "ring", "ratio": 2.4}`), rate)
	lines = mark.Partials(ring[9600:9600+8192], rate, 220)
	if len(lines) != 2 || lines[0].Number != 0 || lines[1].Number != 0 {
		t.Errorf("ring modulation: %+v", lines)
	}
	if lines := mark.Partials(make([]float32, 8192), rate, 220); len(lines) != 0 {
		t.Errorf("silence: %+v", lines)
	}
	if n := testing.AllocsPerRun(20, func() { mark.Partials(saw, rate, 220) }); n > 1 {
		t.Errorf("%v allocations a call, want only the result", n)
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tolerance)
	}
}
