package mark

import (
	"fmt"
	"math"
)

// comparePulses speaks of the widths of two pulses an octave apart.
func comparePulses(t, y *heard) (f []finding) {
	a, b := t.pulses, y.pulses
	if !a.ok || !b.ok || !t.pitched() || !y.pitched() {
		return
	}
	say := func(which string, target, yours float64) {
		cost := math.Abs(math.Log(yours/target)) / 0.04
		if cost < 1 {
			return
		}
		ys, ts := two(100*yours, 100*target)
		f = append(f, finding{aboutShape, Reason{fmt.Sprintf("The pulse of the %s tone is %s in yours: a duty near %s %% against %s %%.",
			which, more(yours, target, "wider", "narrower"), ys, ts), cost}})
	}
	say("lower", a.lower, b.lower)
	say("upper", a.upper, b.upper)
	return
}
