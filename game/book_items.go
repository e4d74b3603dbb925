package game

import (
	"fmt"
	"math"

	"partialcredit/game/book"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

func wholeNumber(v float64) string { return fmt.Sprintf("%.0f", v) }

// layItems draws how hard each exercise was, and says the rest of it below.
func (g *Game) layItems(p *paper, r ui.Rect, t *book.Table) {
	above, below := r.CutTop(max(150, 0.45*r.H), p.gap)
	first, best, chance := Series{Ink: Yours}, Series{Ink: Yours}, Series{Ink: Faint}
	for i := range t.Items {
		item, x := &t.Items[i], float64(i+1)
		if !math.IsNaN(item.Mean) {
			first.Points = append(first.Points, Dot{X: x, Y: item.Mean, Mark: DotFilled, Ringed: item.Hard || item.Easy})
			best.Points = append(best.Points, Dot{X: x, Y: item.Best, Mark: DotOpen})
			if !math.IsNaN(item.Chance) {
				chance.Points = append(chance.Points, Dot{X: x, Y: item.Chance, Mark: DotCross})
			}
		}
	}
	c := Chart{Rect: above, Series: []Series{chance, best, first}, Key: []Sign{
		{Mark: DotFilled, Ink: Yours, Text: g.t("first marks")}, {Mark: DotOpen, Ink: Yours, Text: g.t("best marks")},
		{Mark: DotCross, Ink: Red, Text: g.t("by chance")}, {Mark: DotFilled, Ringed: true, Ink: Yours, Text: g.t("too hard or too easy")},
	}}
	c.X = LinearAxis(0, float64(len(t.Items)+1), 10, func(v float64) string {
		if v < 1 || v > float64(len(t.Items)) || v != math.Round(v) {
			return ""
		}
		return wholeNumber(v)
	})
	c.X.Label = g.t("exercise")
	c.Y = LinearAxis(0, 100, 5, wholeNumber)
	c.Y.Label = g.t("mean of the class")
	p.Charts = append(p.Charts, c)
	d := deskPage{}
	for i := range t.Items {
		said := g.itemText(i, &t.Items[i])
		d.stack = append(d.stack, g.saying(p, said, Black))
	}
	g.layStack(p, below, d)
}

// itemText says what the class did with an exercise.
func (g *Game) itemText(i int, item *book.Item) string {
	return headed(g.t("%d. %s", i+1, plainly(g.t(item.Exercise.Title))), g.itemSaid(item))
}

func (g *Game) itemSaid(item *book.Item) string {
	switch {
	case item.Done == 0:
		return g.t("Nobody has answered it.")
	case item.Exercise.Kind == sheet.Limit && item.Found > 0:
		return g.t("%d found a limit; the middle one is %s.", item.Found, item.Exercise.Quantity.Format(item.Limit))
	case item.Exercise.Kind == sheet.Limit:
		return g.t("Nobody has found a limit.")
	case item.Marked == 0:
		return g.t("Not marked yet.")
	}
	said := g.t("First marks %s, best %s.", wholeMarks(item.Mean), wholeMarks(item.Best))
	switch {
	case item.Hard:
		said += " " + g.t("Too hard.")
	case item.Easy:
		said += " " + g.t("Too easy.")
	}
	if !math.IsNaN(item.Apart) {
		said += " " + g.t("Separates the class: %s (of -1 to 1).", twoDecimals(item.Apart))
	}
	return said
}

// layGroups draws the confusion table of the class, for one group of exercises at a
// time.
func (g *Game) layGroups(p *paper, r ui.Rect, t *book.Table) {
	groups := t.Groups()
	if len(groups) == 0 {
		g.nothing(p, r, g.t("Nobody has answered an exercise of naming or comparing on this sheet."))
		return
	}
	g.part = max(0, min(len(groups)-1, g.part))
	if len(groups) > 1 {
		var turn ui.Rect
		turn, r = r.CutTop(finger, p.gap)
		turn.W = min(turn.W, 30*p.body)
		g.layTurn(p, turn, len(groups))
	}
	group := groups[g.part]
	name := g.t(t.Items[group.Items[0]].Exercise.Title)
	if n := len(group.Items); n > 1 {
		name = g.t("%s, and %d more", plainly(name), n-1)
	}
	g.scene.Body += name + " "
	g.layTable(p, r, group.Table, name)
}

// layFindings writes what the table says in sentences.
func (g *Game) layFindings(p *paper, r ui.Rect, t *book.Table) {
	d := deskPage{}
	for _, f := range t.Findings() {
		said := g.lang.In(f.Text)
		d.stack = append(d.stack, g.saying(p, said, Black))
	}
	g.layStack(p, r, d)
}
