package credit

import "fmt"

// Confused are shapes and techniques that learners take for one another.
var Confused = confused()

func confused() []Pair {
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
	var all []Pair
	for _, c := range []struct {
		name   string
		target string
		others []string
	}{
		{"a sawtooth", saw, []string{triangle, sine, square, pulse(0.05), pulse(0.1), pulse(0.15), pulse(0.2), pulse(0.25), pulse(0.3), pulse(0.4), detuned, sync, fm1, vibrato, tremolo, fall, octave}},
		{"a triangle", triangle, []string{sine, square, ring, am, fm}},
		{"a square", square, []string{sine, moving, sync}},
		{"pulse-width modulation", moving, []string{detuned, `"a": {"shape": "pulse"}, "lfo": {"hz": 2, "level": 0.7}`}},
		{"vibrato", vibrato, []string{tremolo}},
		{"ring modulation", ring, []string{am, fm}},
		{"amplitude modulation", am, []string{fm}},
		{"hard sync", sync, []string{fm1, pulse(0.4)}},
	} {
		for _, other := range c.others {
			all = append(all, Pair{c.name, c.target, other})
		}
	}
	return all
}
