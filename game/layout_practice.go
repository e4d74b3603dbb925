package game

import (
	"partialcredit/game/ui"
)

// layPractice lays out what stands before a set of practice and after it.
func (g *Game) layPractice(p *paper) {
	due, all := len(g.kept.Boxes.Due(g.today())), len(g.kept.Boxes)
	text := []string{g.t("Practice asks again what you have met in the exercises: what you missed comes back soon, what you know comes back later, and what you confuse comes side by side.")}
	begin := ui.Widget{ID: "begin", Label: g.t("Begin"), Primary: true, Keys: "N"}
	switch {
	case g.session.rested:
		text = []string{g.practised(), g.t("Ears get tired before we notice: a set lasts eight to ten minutes. If your ears ring or sounds seem dull, stop for today.")}
		begin.Label = g.t("Another set")
	case all > 0 && g.keptSet() != nil:
		k := g.keptSet()
		text = append(text, g.t("A set is not at its end: %d of %d right so far, in %d minutes. Go on, or rest.", k.Right, k.Asked, int(k.Seconds/60+0.5)))
		begin.Label = g.t("Go on")
	case all == 0:
		text = append(text, g.t("Nothing is in the boxes yet: do some exercises first."))
		begin.Disabled = true
	case due == 0:
		text = append(text, g.t("Nothing is due today. You may practise all the same: %d things have been met.", all))
	default:
		text = append(text, g.t("%d of %d things are due today. A set lasts eight to ten minutes.", due, all))
	}
	area := g.head(p, p.plain(), g.t("Practice"), text[0])
	for _, s := range text[1:] {
		area, _ = p.paragraph(area, s, p.body, false, Black)
		_, area = area.CutTop(0, p.gap/2)
		g.scene.Body += " " + s
	}
	bottom, rest := area.CutBottom(p.button, p.gap)
	g.layBoxes(p, rest)
	p.buttons(bottom, ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"}, begin)
}

// layBoxes draws how many things lie in each of the boxes.
func (g *Game) layBoxes(p *paper, r ui.Rect) {
	if len(g.kept.Boxes) == 0 || r.H < 3*p.title {
		return
	}
	counts := g.kept.Boxes.Counts()
	r.W, r.H = min(r.W, 40*p.body), min(r.H, 8*p.body)
	for i, c := range r.Columns(len(counts), p.gap) {
		p.line(ui.Rect{X: c.X, Y: c.Y, W: c.W, H: p.title}, g.t("%d", counts[i]), p.title, true, Yours, Middle)
		label := g.t("box %d", i+1)
		if c.W < p.measure(label, p.body, false) {
			label = g.t("%d", i+1)
		}
		p.line(ui.Rect{X: c.X, Y: c.Y + 1.4*p.title, W: c.W, H: p.body}, label, p.body, false, Faint, Middle)
		g.scene.Body += " " + g.t("Box %d: %d.", i+1, counts[i])
	}
}
