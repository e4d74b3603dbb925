package mark_test

import (
	"fmt"
	"math"
	"testing"

	"partialcredit/game/mark"
)

// Shapes and techniques that are confused get at most 40 (the brief). Each
// first sound is marked against each of the others; the distance is symmetric.
func TestWhatIsConfusedGetsFewMarks(t *testing.T) {
	const (
		saw      = `"a": {"shape": "sawtooth"}`
		triangle = `"a": {"shape": "triangle"}`
		sine     = `"a": {"shape": "sine"}`
		square   = `"a": {"shape": "pulse"}`
		moving   = `"a": {"shape": "pulse"}, "lfo": {"hz": 2, "duty": 0.35}`
		detuned  = `"b": {"cents": 14}, "combine": {"how": "mix"}`
		vibrato  = `"lfo": {"shape": "sine", "hz": 5, "cents": 50}`
		tremolo  = `"lfo": {"shape": "sine", "hz": 5, "level": 0.7}`
		ring     = `"a": {"shape": "triangle"}, "b": {"shape": "sine"}, "combine": {"how": "ring", "ratio": 2.4}`
		am       = `"a": {"shape": "triangle"}, "b": {"shape": "sine"}, "combine": {"how": "am", "ratio": 2.4}`
		fm       = `"a": {"shape": "triangle"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "ratio": 2.4, "index": 2}`
		fm1      = `"a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "index": 3}`
		sync     = `"combine": {"how": "sync", "ratio": 2.5}`
		fall     = `"envelope": {"a": 12, "seconds": 0.2}`
		octave   = `"b": {"footage": 4}, "combine": {"how": "mix"}`
	)
	pulse := func(duty float64) string { return fmt.Sprintf(`"a": {"shape": "pulse", "duty": %g}`, duty) }
	for _, c := range []struct {
		target string
		others []string
	}{
		{saw, []string{triangle, sine, square, pulse(0.05), pulse(0.1), pulse(0.15), pulse(0.2), pulse(0.25), pulse(0.3), pulse(0.4), detuned, sync, fm1, vibrato, tremolo, fall, octave}},
		{triangle, []string{sine, square, ring, am, fm}},
		{square, []string{sine, moving, sync}},
		{moving, []string{detuned, `"a": {"shape": "pulse"}, "lfo": {"hz": 2, "level": 0.7}`}},
		{vibrato, []string{tremolo}},
		{ring, []string{am, fm}},
		{am, []string{fm}},
		{sync, []string{fm1, pulse(0.4)}},
	} {
		for _, note := range []int{45, 69} {
			in := func(d string) string { return fmt.Sprintf(`"note": %d, %s`, note, d) }
			r := mark.Prepare(parse(t, in(c.target)))
			for _, other := range c.others {
				got := r.Mark(parse(t, in(other)), 1).Marks
				t.Logf("note %d, %s | %s: %.1f", note, c.target, other, got)
				if !(got <= 40) {
					t.Errorf("note %d, %s and %s: %.1f", note, c.target, other, got)
				}
			}
		}
	}
}

// Silence gets at most 5 (the brief), and there is no reward for noise where
// silence is wanted; nothing for nothing is right.
func TestSilence(t *testing.T) {
	sound, silence := parse(t, `"note": 57`), parse(t, `"a": {"level": 0}`)
	for _, c := range []struct {
		name      string
		got       mark.Result
		low, high float64
	}{
		{"silence for a sound", mark.Prepare(sound).Mark(silence, 1), 0, 5},
		{"a sound for silence", mark.Prepare(silence).Mark(sound, 1), 0, 5},
		{"silence for silence", mark.Prepare(silence).Mark(silence, 1), 100, 100},
	} {
		if !(c.got.Marks >= c.low && c.got.Marks <= c.high) {
			t.Errorf("%s gets %v", c.name, c.got.Marks)
		}
		for _, p := range c.got.Partials {
			if p.Within || math.IsInf(p.Yours, 0) || math.IsNaN(p.Yours) {
				t.Errorf("%s: %+v", c.name, p)
			}
		}
	}
}
