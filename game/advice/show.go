package advice

import "partialcredit/game/words"

// show looks at a demonstration: its controls must do something.
func (a *Adviser) show() {
	m := a.newMatch()
	sweeps := make([]sweep, len(m.scales))
	for i, sc := range m.scales {
		for _, v := range sc.spread(5) {
			if v != m.target[i] {
				sweeps[i].up = append(sweeps[i].up, point{value: v, marks: m.marks(m.moved(i, v))})
			}
		}
	}
	m.unheard(sweeps)
	m.heardOf()
}

// heardOf tells how the target comes out and, where there is nothing to tell of it, the
// start.
func (m *match) heardOf() {
	if m.comesOut(m.exercise.Target, words.Say("The target")) || m.moves(m.starts()) == 0 {
		return
	}
	m.comesOut(m.exercise.Start(), words.Say("The sound at the start"))
}
