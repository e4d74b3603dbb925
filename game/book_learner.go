package game

import (
	"partialcredit/game/book"
	"partialcredit/game/ui"
)

// layLearner writes what one learner did in each exercise.
func (g *Game) layLearner(p *paper, r ui.Rect, t *book.Table, row *book.Row) {
	e := row.Entry
	d := deskPage{}
	say := func(s string, ink Ink) {
		d.stack = append(d.stack, g.saying(p, s, ink))
	}
	say(g.t("%s. Handed in: %s UTC.", plainly(e.Slip.Name), plainly(e.When())), Black)
	if row.Kept > 0 {
		said := g.t("Other slips of this name that are kept: %d.", row.Kept)
		if row.Shared {
			said += " " + g.t("Their first answers differ: perhaps two learners chose one name.")
		}
		say(said, Red)
	}
	for i := range row.Cells {
		say(g.cellSaid(t, row, i), Black)
	}
	g.layStack(p, r, d)
}

// cellSaid says what a learner did in an exercise.
func (g *Game) cellSaid(t *book.Table, row *book.Row, i int) string {
	c, x := &row.Cells[i], t.Items[i].Exercise
	said := ""
	switch {
	case c.Work == nil:
		said = g.t("Not answered.")
	case !c.Marked:
		said = g.t("Not marked yet.")
	case c.Found:
		said = g.t("Limit: %s.", x.Quantity.Format(c.Limit))
	case c.First != c.First:
		said = g.t("No limit found.")
	default:
		said = g.t("First marks %s, best %s.", wholeMarks(c.First), wholeMarks(c.Best))
	}
	if c.Work != nil {
		said += " " + g.t("Tries: %d, minutes: %s, replays: %d.", c.Work.Tries, oneDecimal(float64(c.Work.Seconds)/60), c.Work.Replays)
	}
	return headed(g.t("%d. %s", i+1, plainly(g.t(x.Title))), said)
}

// layAside lists what was kept aside, and says why.
func (g *Game) layAside(p *paper, r ui.Rect) {
	m := &g.marks
	asides, waiting := m.book.Asides(), waitingSlips(m.book)
	if len(asides)+len(waiting) == 0 {
		g.nothing(p, r, g.t("Nothing is kept aside: every slip could be read, and its sheet is here."))
		return
	}
	m.aside = max(0, min(len(asides)+len(waiting)-1, m.aside))
	var rows []ui.Widget
	why := ""
	for i := range len(asides) + len(waiting) {
		w := ui.Widget{ID: numberedID("aside", i), Plain: true, On: i == m.aside}
		said := ""
		if i < len(asides) {
			a := &asides[i]
			w.Label, w.Note, said = asideName(g, a), g.t("damaged"), g.wrong(a.Why)
		} else {
			e := waiting[i-len(asides)]
			w.Label, w.Note, said = e.Slip.Name, g.t("waits"), g.waits(e)
		}
		if i == m.aside {
			why = said
		}
		g.scene.Body += said + " "
		rows = append(rows, w)
	}
	n := 6.0
	if p.wide {
		n = 3
	}
	var note ui.Rect
	note, r = r.CutTop(lines(int(n), p.body), p.gap)
	g.layNote(p, note, deskPage{note: why, ink: Black})
	list, w := *p, p.W
	list.short, list.wide, p.W = false, false, r.W // as on a screen of that width
	g.layList(&list, r, rows)
	p.W = w
}

// asideName is what there is to know a damaged slip by.
func asideName(g *Game, a *book.Aside) string {
	switch {
	case a.Name != "":
		return a.Name
	case a.From != "" && a.Line > 1:
		return g.t("%s, line %d", plainly(a.From), a.Line)
	case a.From != "":
		return a.From
	}
	return g.t("Without a name")
}
