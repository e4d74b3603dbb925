package advice

import (
	"math"
	"slices"
	"strconv"

	"partialcredit/game/mark"
	"partialcredit/game/words"
	"partialcredit/synth"
)

const (
	met    = 80.0 // marks of a start that is nearly the target: "very close" (hearing.md 8(a)4)
	solved = 95.0 // about those of one step: there is nothing to hear
	nearly = 90.0 // marks of what is taken for right (design choice)
)

// A match is an exercise with controls, while advice is sought on it.
type match struct {
	*Adviser
	reference *mark.Reference
	scales    []*scale
	target    []float64 // the value of each control that is right
	dull      []bool    // controls of which nothing is heard beside the target
	known     map[synth.Sound]count
}

// A count is what the marking says of a sound.
type count struct{ steps, heard float64 }

func (a *Adviser) newMatch() *match {
	e := a.exercise
	m := &match{Adviser: a, reference: a.prepare(e.Target), known: map[synth.Sound]count{}, dull: make([]bool, len(e.Controls))}
	for i := range e.Controls {
		c := &e.Controls[i]
		m.scales = append(m.scales, newScale(c, e.Target))
		m.target = append(m.target, c.Get(&e.Target))
	}
	return m
}

func (a *Adviser) match() {
	m := a.newMatch()
	m.heardOf()
	if a.told(Silent) {
		return
	}
	m.start()
	sweeps := make([]sweep, len(m.scales))
	for i := range m.scales {
		sweeps[i] = m.sweep(i)
	}
	m.unheard(sweeps)
	m.others(sweeps)
	for i := range sweeps {
		if !m.dull[i] {
			m.rises(i, sweeps[i])
		}
	}
	m.difficulty()
	m.drawn()
}

// sound is the target with other values of the controls.
func (m *match) sound(values []float64) synth.Sound {
	s := m.exercise.Target
	for i := range m.scales {
		m.scales[i].control.Set(&s, values[i])
	}
	return s
}

// count marks a setting, once.
func (m *match) count(values []float64) count {
	s := m.sound(values)
	c, ok := m.known[s]
	if !ok {
		c.steps, c.heard = m.steps(m.reference, s)
		m.known[s] = c
	}
	return c
}

func (m *match) marks(values []float64) float64 { return mark.Credit(m.count(values).steps, m.times) }

func (m *match) starts() []float64 {
	var values []float64
	for _, sc := range m.scales {
		values = append(values, sc.control.Start)
	}
	return values
}

// start tells that nothing needs to be done.
func (m *match) start() {
	marks := m.marks(m.starts())
	if marks < met {
		return
	}
	weight := Warning
	if marks >= solved {
		weight = Mistake
	}
	m.tell(Met, -1, weight, words.Say("The target is as good as met at the start: handed in untouched, it earns %s marks. Start further away from it.", whole(marks)))
}

// unheard tells which controls do nothing: beside the target, beside the start, or
// at all.
func (m *match) unheard(sweeps []sweep) {
	var start *mark.Reference
	for i, sc := range m.scales {
		c := sc.control
		lost := 100 - sweeps[i].least()
		m.dull[i] = lost < nothing
		if start == nil {
			start = m.prepare(m.exercise.Start())
		}
		silent := true
		for _, v := range sc.spread(4) {
			s := m.exercise.Start()
			c.Set(&s, v)
			if s != m.exercise.Start() && silent {
				steps, _ := m.steps(start, s)
				silent = 100-mark.Credit(steps, m.times) < nothing
			}
		}
		switch {
		case m.dull[i] && c.Field().Name == "seconds":
			m.tell(Unheard, i, Mistake, words.Say("%s is heard but not marked: over all of its range it costs no marks. Take it away.", c.Label))
		case m.dull[i] && silent:
			m.tell(Unheard, i, Mistake, words.Say("%s cannot be heard in this sound: over all of its range it costs no marks. Take it away, or change the sound so that it counts.", c.Label))
		case m.dull[i]:
			m.tell(Unheard, i, Warning, words.Say("%s cannot be heard once the other controls are right: beside the target it costs no marks, wherever it stands.", c.Label))
		case silent:
			m.tell(Unheard, i, Note, words.Say("At the start nothing is heard of %s: another control has to be moved first.", c.Label))
		}
	}
}

func whole(v float64) string { return strconv.Itoa(int(math.Round(v))) }

// stepped writes a number of steps: whole from ten on.
func stepped(v float64) string {
	if v >= 9.95 {
		return whole(v)
	}
	return strconv.FormatFloat(v, 'f', 1, 64)
}

// setting names the values of the controls that differ from the target's: "Duty
// 75.0 %, Footage 16′".
func (m *match) setting(values []float64) words.Message {
	var text words.Message
	for i, sc := range m.scales {
		if !m.differs(i, values[i]) {
			continue
		}
		one := words.Say("%s %s", sc.control.Label, sc.control.Field().Format(values[i]))
		if text.Format == "" {
			text = one
		} else {
			text = words.Say("%s, %s", text, one)
		}
	}
	return text
}

// differs says that a value of a control is written otherwise than the target's.
func (m *match) differs(i int, v float64) bool {
	f := m.scales[i].control.Field()
	return f.Format(v) != f.Format(m.target[i])
}

// moved is where one control alone stands elsewhere.
func (m *match) moved(i int, v float64) []float64 {
	values := slices.Clone(m.target)
	values[i] = v
	return values
}
