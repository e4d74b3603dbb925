package game

import "partialcredit/game/ui"

// mostName is how long a chosen name may be, in characters: a design choice.
const mostName = 40

// laySlip lays out the slip that a learner hands in.
func (g *Game) laySlip(p *paper) {
	area := g.head(p, p.plain(), g.t("Your slip"), g.t("Choose a name by which your teacher knows you. A nickname is best: the slip travels."))
	p.written(area, ui.Widget{ID: "name", Label: g.t("Your name on the slip"),
		Text: ui.Text{Value: g.kept.Name, Hint: g.t("a nickname"), Lines: 1, Most: mostName}})
	bottom, _ := area.CutBottom(p.button, p.gap)
	p.buttons(bottom, ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"})
}

// actOnSlip is for the slip.
func (g *Game) actOnSlip(name string, n int, a ui.Action) bool {
	if name != "name" || !a.Typed {
		return false
	}
	g.kept.Name, g.dirty = a.Text, true
	g.keep()
	return true
}
