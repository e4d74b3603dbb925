package worksheet

import (
	"strings"

	"partialcredit/game/sheet"
)

// match lays out the target and a line for every control.
func (m *Maker) match(e *sheet.Exercise) {
	drawn := m.sheet.Vary && m.o.Key && len(m.o.Names) > 0
	if !drawn {
		m.alone(m.t("The target"), e.Target, true)
	}
	switch {
	case drawn:
		m.targets(e)
	case m.o.Key:
		m.answers(e)
	default:
		m.put(`<p class="answer lines">`)
		for i := range e.Controls {
			c := &e.Controls[i]
			unit, span := m.span(c)
			m.put(`<span class="line control">`, escape(m.label(c)), ":", blank, escape(strings.TrimSpace(unit+" ("+span+")")), "</span> ")
		}
		m.put("</p>\n", `<p class="answer">`, escape(m.t("Marks:")), blank, "</p>\n")
	}
}

// span is the unit that the values of a control have, where they have one in common, and its range in
// words: "3 to 50", or the choices.
func (m *Maker) span(c *sheet.Control) (unit, span string) {
	f := c.Field()
	if len(f.Choices) > 0 {
		var all []string
		for v := c.Min; v <= c.Max; v++ {
			all = append(all, m.words.Value(f.Format(v)))
		}
		return "", strings.Join(all, ", ")
	}
	low, high := f.Format(c.Min), f.Format(c.Max)
	if strings.Contains(low, ".0 ") && strings.Contains(high, ".0 ") {
		low, high = strings.Replace(low, ".0 ", " ", 1), strings.Replace(high, ".0 ", " ", 1)
	}
	low, high = m.words.Value(low), m.words.Value(high)
	if u := unitOf(low); u != "" && u == unitOf(high) && strings.ContainsAny(low[:len(low)-len(u)], "0123456789") {
		unit, low, high = u, strings.TrimSuffix(low, " "+u), strings.TrimSuffix(high, " "+u)
	}
	return unit, m.t("%s to %s", verbatim(low), verbatim(high))
}

// answers tells the values of the target, and how far from each of them most of the marks are left.
func (m *Maker) answers(e *sheet.Exercise) {
	m.put("<ul>\n")
	for i := range e.Controls {
		c := &e.Controls[i]
		m.put(`<li class="control"><span class="key">`, escape(m.label(c)+": "+m.words.Value(c.Field().Format(c.Get(&e.Target)))), "</span>")
		if len(c.Field().Choices) == 0 {
			t := &tolerance{target: e.Target, control: *c, times: m.sheet.Strictness.Times()}
			m.later(func() (string, bool) {
				if !t.step() {
					return "", false
				}
				format := func(v float64) string { return c.Field().Format(v) }
				return escape("; " + m.t("%d marks are left from %s to %s", enough, format(t.low()), format(t.high()))), true
			})
		}
		m.put(".</li>\n")
	}
	m.put("</ul>\n")
	if len(e.Controls) > 1 {
		m.put(element("p", "small", m.t("The marks are those with every other control as in the target.")))
	}
}

// targets is a table of what was drawn for each name.
func (m *Maker) targets(e *sheet.Exercise) {
	m.put("<table>\n<thead><tr>", element("th", "", m.t("Learner")))
	for i := range e.Controls {
		m.put(element("th", "", m.label(&e.Controls[i])))
	}
	m.put("</tr></thead>\n<tbody>\n")
	for _, name := range m.o.Names {
		drawn := m.drawnFor(name, e.ID)
		m.put("<tr>", element("th", "", name))
		for i := range drawn.Controls {
			c := &drawn.Controls[i]
			m.put(element("td", "key", m.words.Value(c.Field().Format(c.Get(&drawn.Target)))))
		}
		m.put("</tr>\n")
	}
	m.put("</tbody>\n</table>\n")
}

// drawnFor is an exercise with the target of a learner.
func (m *Maker) drawnFor(name, id string) *sheet.Exercise {
	s, ok := m.drawn[name]
	if !ok {
		s = m.draw.For(name)
		m.drawn[name] = s
	}
	for i := range s.Exercises {
		if s.Exercises[i].ID == id {
			return &s.Exercises[i]
		}
	}
	return nil
}
