package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

func parse(t *testing.T, description string) synth.Sound {
	t.Helper()
	s, err := synth.Parse([]byte(`{"version": 1, ` + description + `}`))
	if err != nil {
		t.Fatalf("%s: %v", description, err)
	}
	return s
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
