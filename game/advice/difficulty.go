package advice

import (
	"math"
	"slices"

	"partialcredit/game/mark"
	"partialcredit/game/words"
)

// difficulty tells how many steps there are on each control, and how much of all
// that can be set is right. Steps are as large as the sheet takes them.
func (m *match) difficulty() {
	const right = 3.5 // steps, on both sides together, that earn [nearly] full marks
	bits := 0.0
	for i, sc := range m.scales {
		if m.dull[i] {
			continue
		}
		c := sc.control
		if sc.choices() {
			n := len(sc.value)
			bits += math.Log2(float64(n))
			m.tell(Difficulty, i, Note, words.Say("%s: %d to choose from.", c.Label, n))
			continue
		}
		all := sc.all() / m.times
		away := min(math.Abs(sc.of(c.Start)-sc.of(m.target[i])), // or less, where settings sound alike
			mark.Apart(m.exercise.Target, m.sound(m.moved(i, c.Start)))) / m.times
		bits += math.Log2(max(1, all/right))
		m.tell(Difficulty, i, Note, words.Say("%s: %s just-noticeable steps across the range, %s from the start to the target: %s, %s.",
			c.Label, stepped(all), stepped(away), begin(away), finish(all)))
	}
	if !slices.Contains(m.dull, false) {
		return
	}
	m.tell(Difficulty, -1, Note, words.Say("By chance, one setting in %s would be right: %s.", rough(math.Exp2(bits)), hard(bits)))
}

// begin says how plain the difference at the start is, in steps (design choice: at 7
// half the marks are gone).
func begin(steps float64) words.Message {
	switch {
	case steps < 1:
		return words.Say("it starts where it is right")
	case steps < 3.5:
		return words.Say("hard to start")
	case steps < 7:
		return words.Say("not hard to start")
	}
	return words.Say("easy to start")
}

// finish says how small a part of the range is right (design choice).
func finish(steps float64) words.Message {
	switch {
	case steps < 10:
		return words.Say("soon finished")
	case steps < 50:
		return words.Say("fine to finish")
	}
	return words.Say("very fine to finish")
}

// hard puts a number of bits to be found into a word (design choice, after the sheets
// of the course: from 1.5 on the first to 15 on the last).
func hard(bits float64) words.Message {
	switch {
	case bits < 3:
		return words.Say("easy")
	case bits < 7:
		return words.Say("of middling difficulty")
	case bits < 11:
		return words.Say("hard")
	}
	return words.Say("very hard")
}

// rough writes a number to one or two figures.
func rough(v float64) string {
	unit := math.Pow(10, max(0, math.Floor(math.Log10(v))-1))
	return whole(math.Round(v/unit) * unit)
}
