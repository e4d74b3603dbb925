package mark

import (
	"math"

	"partialcredit/game/words"
)

// comparePulses speaks of the widths of two pulses an octave apart.
func comparePulses(t, y *heard) (f []finding) {
	a, b := t.pulses, y.pulses
	if !a.ok || !b.ok || !t.pitched() || !y.pitched() {
		return
	}
	compare := func(target, yours float64, say func(way, ys, ts string) words.Message) {
		cost := math.Abs(math.Log(yours/target)) / 0.04
		if cost < 1 {
			return
		}
		ys, ts := two(100*yours, 100*target)
		f = append(f, finding{aboutShape, Reason{say(more(yours, target, "wider", "narrower"), ys, ts), cost}})
	}
	compare(a.lower, b.lower, func(way, ys, ts string) words.Message {
		return words.Say("The pulse of the lower tone is %s in yours: a duty near %s %% against %s %%.", way, ys, ts)
	})
	compare(a.upper, b.upper, func(way, ys, ts string) words.Message {
		return words.Say("The pulse of the upper tone is %s in yours: a duty near %s %% against %s %%.", way, ys, ts)
	})
	return
}
