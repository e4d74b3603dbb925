package mark

import (
	"math"

	"partialcredit/game/words"
)

// compareLoudness speaks of how the level rises, falls and is held. The steps
// are those of the controls (see steps).
func compareLoudness(t, y *heard) (f []finding) {
	a, b := t.loudness, y.loudness
	if !a.ok || !b.ok || t.moves() || y.moves() || resets(t.shape.family) || resets(y.shape.family) {
		return // the level follows from what else moves
	}
	find := func(cost float64, text words.Message) { f = append(f, finding{aboutLoudness, Reason{text, cost}}) }
	find(4*math.Abs(math.Log((0.012+b.attack)/(0.012+a.attack))), words.Say("The level of yours rises %s: it takes %s to its loudest, the target %s.",
		more(b.attack, a.attack, "more slowly", "faster"), duration(b.attack), duration(a.attack)))
	if math.Min(a.left, b.left) < 0.3 {
		return // there is no time for it to fall
	}
	const flat = 0.94 // half a decibel: no fall to speak of
	if a.held < flat && b.held < flat {
		cost := 4 * math.Abs(math.Log(b.decay/a.decay))
		if 2*a.decay > a.left || 2*b.decay > b.left { // where it would come to rest is not heard, and the time is a guess
			if math.Min(a.left, b.left) < 1 {
				return // there is no time for it to fall
			}
			find(cost, words.Say("The level of yours dies away %s than that of the target.", more(b.decay, a.decay, "more slowly", "faster")))
			return
		}
		find(cost, words.Say("The level of yours dies away %s: its time is %s, the target's %s.",
			more(b.decay, a.decay, "more slowly", "faster"), duration(b.decay), duration(a.decay)))
	}
	text := words.Say("Yours holds a lower level after its start: %d %% of its loudest, the target %d %%.", percent(b.held), percent(a.held))
	if b.held > a.held {
		text = words.Say("Yours holds a higher level after its start: %d %% of its loudest, the target %d %%.", percent(b.held), percent(a.held))
	}
	find(math.Abs(levelSteps(a.held)-levelSteps(b.held)), text)
	return
}
