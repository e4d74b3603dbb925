package advice

import (
	"slices"

	"partialcredit/game/mark"
	"partialcredit/game/words"
)

// mostOthers is how many other right answers are named (design choice).
const mostOthers = 4

// others tells of right answers beside the target's own.
func (m *match) others(sweeps []sweep) {
	m.flats(sweeps)
	var found [][]float64
	var places []place
	for _, values := range m.candidates() {
		values = m.plainest(values)
		if m.ended || !m.far(values) || m.marks(values) < nearly || m.within(values, sweeps) || m.has(found, values) {
			continue
		}
		found = append(found, values)
		places = append(places, place{values, 1000*float64(m.moves(values)) + m.count(values).steps}) // the plainest first
	}
	joined := false
	for _, p := range byOff(places)[:min(mostOthers, len(places))] {
		values := p.values
		j := m.joined(values)
		if !j || !joined { // of one way it is enough to name one end
			m.another(values, j)
		}
		joined = joined || j
	}
}

// another names a right answer; one that is joined with the target by others.
func (m *match) another(values []float64, joined bool) {
	control := -1
	for i := range values {
		if values[i] != m.target[i] {
			if control >= 0 {
				control = -1
				break
			}
			control = i
		}
	}
	setting, earns := m.setting(values), whole(m.marks(values))
	steps := m.count(values).steps
	var a *Advice
	switch {
	case joined:
		a = m.tell(Another, control, Warning, words.Say("There is no one right answer: %s earns %s marks, and so does about everything on the way there from the target.", setting, earns))
	case mark.Apart(m.exercise.Target, m.sound(values)) < same && steps < same:
		a = m.tell(Another, control, Note, words.Say("%s is right too and earns %s marks: it sounds the same as the target, by a known equivalence.", setting, earns))
	case steps < same:
		a = m.tell(Another, control, Note, words.Say("%s is right too and earns %s marks: its sound is the same as the target's.", setting, earns))
	default:
		a = m.tell(Another, control, Warning, words.Say("%s earns %s marks too: it sounds within %s just-noticeable steps of the target.", setting, earns, stepped(steps)))
	}
	a.Settings = values
}

// same is how many steps still are no difference: what is left of finding the place.
const same = 0.3

// flats tells where a control can stand far from the target and all the way there
// earns nearly full marks.
func (m *match) flats(sweeps []sweep) {
	for i, s := range sweeps {
		if m.dull[i] || m.scales[i].choices() {
			continue
		}
		down, up := reach(s.down, m.target[i]), reach(s.up, m.target[i])
		if max(down.far, up.far) < m.half() {
			continue
		}
		f := m.scales[i].control.Field()
		m.tell(Another, i, Warning, words.Say("%s: everything from %s to %s is taken for right, with %s marks or more.",
			m.scales[i].control.Label, f.Format(down.value), f.Format(up.value), whole(nearly)))
	}
}

// within says that a setting lies where flats has told of it.
func (m *match) within(values []float64, sweeps []sweep) bool {
	for i, s := range sweeps {
		down, up := reach(s.down, m.target[i]), reach(s.up, m.target[i])
		if m.moves(values) == 1 && values[i] != m.target[i] && !m.scales[i].choices() &&
			max(down.far, up.far) >= m.half() && values[i] >= down.value && values[i] <= up.value {
			return true
		}
	}
	return false
}

// plainest brings every control back to the target's value that need not have left it.
func (m *match) plainest(values []float64) []float64 {
	least := min(m.marks(values), 99) - 1
	for i := range values {
		if values[i] == m.target[i] {
			continue
		}
		back := slices.Clone(values)
		back[i] = m.target[i]
		if m.far(back) && m.marks(back) >= least {
			values = back
		}
	}
	return values
}

// joined says that marks stay high on the straight way from the target.
func (m *match) joined(values []float64) bool {
	for _, at := range []float64{0.25, 0.5, 0.75} {
		v := slices.Clone(values)
		for i, sc := range m.scales {
			if sc.choices() && v[i] != m.target[i] {
				return false
			}
			from, to := sc.of(m.target[i]), sc.of(v[i])
			v[i] = sc.at(from + at*(to-from))
		}
		if m.marks(v) < nearly-10 {
			return false
		}
	}
	return true
}

// moves is how many controls stand elsewhere than the target's.
func (m *match) moves(values []float64) (n int) {
	for i := range values {
		if values[i] != m.target[i] {
			n++
		}
	}
	return n
}

// near says that two settings are about the same one.
func (m *match) near(a, b []float64) bool {
	for i, sc := range m.scales {
		if sc.apart(a[i], b[i]) >= m.half() {
			return false
		}
	}
	return true
}
