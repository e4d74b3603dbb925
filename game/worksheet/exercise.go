package worksheet

import (
	"strconv"
	"strings"

	"partialcredit/game/chance"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// exercise lays out one exercise: its number, title, task and pictures, and room for answers or the
// answers themselves. name is the learner's whose sheet it is.
func (m *Maker) exercise(i int, e *sheet.Exercise, name string) {
	rows := 1
	switch e.Kind {
	case sheet.Name:
		rows = len(e.Answers)
		if e.Reference != nil {
			rows++
		}
	case sheet.Same:
		rows = len(e.Pairs)
	case sheet.Show:
		rows = len(m.shown(e))
	}
	h, fits := fitting(rows, 0)
	if i == 0 {
		if below, fit := fitting(rows, headingHeight); fit {
			h = below
		}
	}
	class := "exercise"
	if !fits {
		class += " long"
	}
	m.put(`<section class="`, class, `">`, "\n", element("h2", "", strconv.Itoa(i+1)+". "+m.own(e.Title)), element("p", "", m.own(e.Task)))
	if moves(e) {
		m.put(element("p", "small", m.t("Sounds of this exercise move, and a picture shows one moment: listen.")))
	}
	switch e.Kind {
	case sheet.Name:
		m.naming(e, name, h)
	case sheet.Same:
		m.comparison(e, name, h)
	case sheet.Limit:
		m.limit(e)
	case sheet.Show:
		m.demonstration(e, h)
	default:
		m.match(e)
	}
	if m.o.Key {
		m.put(element("p", "teach", m.own(e.Teach)))
	}
	m.put("</section>\n")
}

// order is the order in which the pictures of an exercise stand: drawn, so that it tells nothing, and
// the same on the worksheet and its key.
func (m *Maker) order(e *sheet.Exercise, name string, n int) []int {
	return chance.From(chance.Seed(m.draw.Fingerprint, sheet.Learner(name), e.ID, "paper")).Order(n)
}

func letter(i int) string { return string(rune('A' + i%26)) }

// naming lays out lettered pictures, each with a line for its name.
func (m *Maker) naming(e *sheet.Exercise, name string, h int) {
	if !m.o.Key {
		var all []string
		for i := range e.Answers {
			all = append(all, m.own(e.Answers[i].Name))
		}
		m.put(element("p", "", m.t("Which sound is which? Write the names beside them:")), element("p", "names", strings.Join(all, " · ")))
	}
	if e.Reference != nil {
		m.row("", m.t("The sound to compare with"), h, *e.Reference, nil, true, element("p", "", m.t("Compare with this sound.")))
	}
	for i, at := range m.order(e, name, len(e.Answers)) {
		a := &e.Answers[at]
		beside := blank
		if m.o.Key {
			beside = element("p", "key", m.own(a.Name)) + element("p", "small", m.own(a.Cue))
		}
		m.row(letter(i), m.t("Sound %s", verbatim(letter(i))), h, a.Sound, nil, false, beside)
	}
	m.right(e)
}

// comparison lays out pairs of sounds, one over the other.
func (m *Maker) comparison(e *sheet.Exercise, name string, h int) {
	m.put(element("p", "small", m.t("The first sound is solid with filled dots, the second dashed with open circles. Do they sound the same?")))
	for i, at := range m.order(e, name, len(e.Pairs)) {
		p := &e.Pairs[at]
		about := m.t("Pair %s: the first sound solid with filled dots, the second dashed with open circles", verbatim(letter(i)))
		beside := "<p>" + m.box(p.Same) + escape(m.t("same")) + "</p><p>" + m.box(!p.Same) + escape(m.t("different")) + "</p>"
		if m.o.Key {
			beside = "<p>" + m.box(true) + escape(m.t("different")) + "</p>"
			if p.Same {
				beside = "<p>" + m.box(true) + escape(m.t("same")) + "</p>"
			}
			beside += element("p", "small", m.own(p.Name)+": "+m.own(p.Why))
		}
		m.row(letter(i), about, h, p.One, &p.Other, false, beside)
	}
	m.right(e)
}

// box is for a tick, which it has in a key where it is right.
func (m *Maker) box(right bool) string {
	if m.o.Key && right {
		return `<span class="box key">×</span>`
	}
	return `<span class="box"></span>`
}

// right leaves room for how many answers were right in the app.
func (m *Maker) right(e *sheet.Exercise) {
	if !m.o.Key {
		m.put(`<p class="answer">`, escape(m.t("In the app, of %d questions right:", e.Questions)), blank, "</p>\n")
	}
}

// limit asks for the value that was reached.
func (m *Maker) limit(e *sheet.Exercise) {
	m.alone(m.t("The sound that is not changed"), e.Target, false)
	q := e.Quantity
	if !m.o.Key {
		m.put(`<p class="answer">`, escape(m.t("The smallest difference that you hear:")), blank, escape(unitOf(m.words.Value(q.Format(q.Start)))), "</p>\n")
		return
	}
	m.put(element("p", "", m.t("The difference begins at %s.", q.Format(q.Start))))
	if p := q.Published; p != nil {
		m.put(element("p", "key", m.t("Published: %s.", q.Format(p.Value))), element("p", "small", m.own(p.Source)))
	}
}

// unitOf is the unit of a quantity: what follows its last space.
func unitOf(quantity string) string {
	if i := strings.LastIndex(quantity, " "); i >= 0 {
		return quantity[i+1:]
	}
	return ""
}

// A shown is one setting that a demonstration pictures.
type shown struct {
	text  string
	sound synth.Sound
}

// shown is what is pictured of a demonstration: its first control at either end, or each choice.
func (m *Maker) shown(e *sheet.Exercise) []shown {
	c := &e.Controls[0]
	values := []float64{c.Min, c.Max}
	if len(c.Field().Choices) > 0 {
		values = nil
		for v := c.Min; v <= c.Max; v++ {
			values = append(values, v)
		}
	}
	all := make([]shown, len(values))
	for i, v := range values {
		s := e.Start()
		c.Set(&s, v)
		all[i] = shown{m.label(c) + ": " + m.words.Value(c.Field().Format(v)), s}
	}
	return all
}

// demonstration shows what a control does.
func (m *Maker) demonstration(e *sheet.Exercise, h int) {
	for _, s := range m.shown(e) {
		m.row("", s.text, h, s.sound, nil, false, element("p", "", s.text))
	}
}

// label is what a control is called.
func (m *Maker) label(c *sheet.Control) string {
	if c.Label != "" {
		return m.own(c.Label)
	}
	return m.own(c.Field().Label)
}
