package game

import "partialcredit/game/ui"

// layTeacher lists the sheets that were written on this device.
func (g *Game) layTeacher(p *paper) { g.stub(p, "For the teacher") }

// layWrite lays out a sheet that is being written.
func (g *Game) layWrite(p *paper) { g.stub(p, "Write a sheet") }

// layDraft lays out an exercise that is being written.
func (g *Game) layDraft(p *paper) { g.stub(p, "Write an exercise") }

func (g *Game) stub(p *paper, title string) {
	area := g.head(p, p.plain(), title, "")
	bottom, _ := area.CutBottom(p.button, p.gap)
	p.buttons(bottom, ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"})
}
