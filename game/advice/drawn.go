package advice

import (
	"partialcredit/game/mark"
	"partialcredit/game/words"
)

// drawers are the names for which a sheet that varies is looked at: any will do, these
// stand for a class (design choice: eight see what happens to one learner in five with
// a probability of 83 %). They draw from a sheet of the exercise alone, so that what is
// said of it depends on nothing else and is the same in the app and at the desk.
var drawers = []string{"1", "2", "3", "4", "5", "6", "7", "8"}

// drawn tells of targets that are drawn for learners and met at the start, or in which a
// control is not heard.
func (m *match) drawn() {
	if !m.sheet.Vary {
		return
	}
	close, unheard := 0, make([]int, len(m.scales))
	most, example := 0.0, words.Message{}
	alone := m.sheet.Only(m.at).Drawing()
	for _, name := range drawers {
		e := &alone.For(name).Exercises[0]
		r := m.prepare(e.Target)
		steps, _ := m.steps(r, e.Start())
		values := make([]float64, len(m.scales))
		for i, sc := range m.scales {
			values[i] = sc.control.Get(&e.Target)
		}
		if marks := mark.Credit(steps, m.times); marks >= met {
			close++
			if marks > most {
				most, example = marks, m.setting(values)
			}
		}
		for i, sc := range m.scales {
			costs := false
			for _, v := range []float64{sc.control.Min, sc.control.Max} {
				s := e.Target
				sc.control.Set(&s, v)
				steps, _ := m.steps(r, s)
				costs = costs || mark.Credit(steps, m.times) <= 100-nothing
			}
			if !costs && !m.dull[i] {
				unheard[i]++
			}
		}
	}
	if close > 0 {
		m.tell(Met, -1, Warning, words.Say("Of %d targets drawn for learners %d are as good as met at the start, which earns up to %s marks (%s). Draw further away from it.", len(drawers), close, whole(most), example))
	}
	for i, n := range unheard {
		if n > 0 {
			m.tell(Unheard, i, Warning, words.Say("%s cannot be heard in %d of %d targets drawn for learners.", m.scales[i].control.Label, n, len(drawers)))
		}
	}
}
