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
	rows, extra := 1, 0
	switch e.Kind {
	case sheet.Name:
		rows, extra = len(e.Answers), 4
		if e.Reference != nil {
			rows++
		}
		if m.o.Key {
			extra += 36
		}
	case sheet.Same:
		rows, extra = len(e.Pairs), 34
		if m.o.Key {
			extra += 18
		}
	case sheet.Show:
		rows, extra = len(m.shown(e)), 24
	}
	h, fits := fitting(rows, extra)
	class := "exercise"
	if !fits {
		class += " long"
	}
	m.put(`<section class="`, class, `">`, "\n", element("h2", "", strconv.Itoa(i+1)+". "+m.own(e.Title)), element("p", "", m.own(e.Task)))
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

// naming lays out lettered pictures and the names that belong to them.
func (m *Maker) naming(e *sheet.Exercise, name string, h int) {
	if e.Reference != nil {
		m.put(element("p", "", m.t("Compare with this sound:")))
		m.pictures(`<span class="letter"></span>`, m.t("The sound to compare with"), h, *e.Reference, nil, true)
	}
	order := m.order(e, name, len(e.Answers))
	letters := make([]string, len(order))
	for i, at := range order {
		letters[at] = letter(i)
		m.pictures(element("span", "letter", letter(i)), m.t("Sound %s", verbatim(letter(i))), h, e.Answers[at].Sound, nil, false)
		if a := &e.Answers[at]; m.o.Key {
			m.put(`<p class="small"><span class="key">`, escape(letter(i)+": "+m.own(a.Name)), "</span>. ", escape(m.own(a.Cue)), "</p>\n")
		}
	}
	if m.o.Key {
		return
	}
	m.put(element("p", "", m.t("Which sound is which? Write its letter.")), `<p class="answer lines">`)
	for i := range e.Answers {
		m.put(`<span class="line">`, escape(m.own(e.Answers[i].Name)), ":", blank, "</span> ")
	}
	m.put("</p>\n")
	m.right(e)
}

// comparison lays out pairs of sounds, one over the other.
func (m *Maker) comparison(e *sheet.Exercise, name string, h int) {
	m.put(element("p", "small", m.t("The first sound is solid with filled dots, the second dashed with open circles. Do they sound the same?")))
	for i, at := range m.order(e, name, len(e.Pairs)) {
		p := &e.Pairs[at]
		about := m.t("Pair %s: the first sound solid with filled dots, the second dashed with open circles", verbatim(letter(i)))
		m.put(`<div class="pair">`)
		m.pictures(element("span", "letter", letter(i)), about, h, p.One, &p.Other, false)
		m.put("<p>", m.box(p.Same), escape(m.t("same")), m.box(!p.Same), escape(m.t("different")))
		if m.o.Key {
			m.put(" · ", escape(m.own(p.Name)+": "+m.own(p.Why)))
		}
		m.put("</p></div>\n")
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
	m.pictures("", m.t("The sound that is not changed"), high, e.Target, nil, false)
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
		m.put(`<div class="pair">`, element("p", "", s.text))
		m.pictures("", s.text, h, s.sound, nil, false)
		m.put("</div>\n")
	}
}

// label is what a control is called.
func (m *Maker) label(c *sheet.Control) string {
	if c.Label != "" {
		return m.own(c.Label)
	}
	return m.own(c.Field().Label)
}
