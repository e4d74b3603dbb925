package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layTeacher lists the sheets that were written on this device.
func (g *Game) layTeacher(p *paper) {
	c := &g.cabinet
	d := deskPage{title: g.t("For the teacher"), ink: Faint}
	d.stack = []block{g.grid(p, g.across(p, 4),
		ui.Widget{ID: "new sheet", Label: g.t("New sheet"), Primary: len(c.Written) == 0},
		ui.Widget{ID: "open sheet", Label: g.t("Open a sheet from a file"), Face: g.t("Open a file")},
		ui.Widget{ID: "book", Label: g.t("Mark book")},
		ui.Widget{ID: "take", Label: g.t("Recording")})}
	d.list = []ui.Widget{}
	for i, w := range c.Written {
		s := w.Sheet()
		row := ui.Widget{ID: numberedID("written", i), Label: g.counted(s), Plain: true, On: i == c.Desk.Sheet}
		if _, _, ok := w.Missing(); !ok {
			row.Note = "…"
		}
		d.list = append(d.list, row)
	}
	d.note = g.t("The number says how many exercises a sheet has; red dots, that something is still missing.")
	none := len(c.Written) == 0
	if none {
		d.note = g.t("Nothing is written yet. Set a sound on the bench and make an exercise of it, or begin a new sheet. What is written stays on this device until it is handed out.")
	}
	remove := ui.Widget{ID: "remove sheet", Label: g.t("Remove this sheet"), Face: g.t("Remove"), Disabled: none}
	if c.Removed != nil {
		remove = ui.Widget{ID: "restore sheet", Label: g.t("Put it back"), Face: g.t("Put back")}
	}
	d.foot = []ui.Widget{
		{ID: "course", Label: g.t("All sheets"), Face: g.t("Back"), Keys: "C"},
		remove,
		{ID: "copy sheet", Label: g.t("Copy this sheet"), Face: g.t("Copy"), Disabled: none},
		{ID: "write", Label: g.t("Write on this sheet"), Face: g.t("Write"), Primary: !none, Disabled: none},
	}
	g.layDesk(p, d)
}

// across is how many buttons stand side by side.
func (g *Game) across(p *paper, most int) int {
	if p.W < 480 || p.short || p.wide && p.W < 900 {
		return min(2, most)
	}
	return most
}

// sheetTitle is what a sheet that is written is called.
func (g *Game) sheetTitle(s *sheet.Sheet) string {
	if s.Title == "" {
		return g.t("A sheet without a title")
	}
	return s.Title
}

// counted is the title with how many exercises there are.
func (g *Game) counted(s *sheet.Sheet) string {
	return g.t("%s (%d)", plainly(g.sheetTitle(s)), len(s.Exercises))
}

// layMake asks what kind of exercise is made of the sound on the bench, and for which
// sheet.
func (g *Game) layMake(p *paper) {
	d := deskPage{title: g.t("Make an exercise of it"), ink: Faint, note: g.kindText(g.making.kind)}
	var kinds []ui.Widget
	for i, k := range draft.Kinds {
		kinds = append(kinds, ui.Widget{ID: numberedID("of", i), Label: g.kindName(k), On: k == g.making.kind})
	}
	d.stack = []block{g.grid(p, g.across(p, 5), kinds...)}
	d.list = []ui.Widget{{ID: "into 0", Label: g.t("On a new sheet"), Plain: true, On: g.making.into == 0}}
	for i, w := range g.cabinet.Written {
		d.list = append(d.list, ui.Widget{
			ID: numberedID("into", i+1), Label: g.t("On: %s", plainly(g.counted(w.Sheet()))), Face: g.counted(w.Sheet()),
			Plain: true, On: g.making.into == i+1,
		})
	}
	d.foot = []ui.Widget{
		{ID: "bench", Label: g.t("Back to the bench"), Face: g.t("Back")},
		{ID: "make it", Label: g.t("Make the exercise"), Face: g.t("Make it"), Primary: true},
	}
	g.layDesk(p, d)
}

// kindName is what a kind of exercise is called.
func (g *Game) kindName(k sheet.Kind) string {
	switch k {
	case sheet.Name:
		return g.t("Name it")
	case sheet.Same:
		return g.t("Same or not")
	case sheet.Limit:
		return g.t("Limit")
	case sheet.Show:
		return g.t("Demonstration")
	}
	return g.t("Match")
}

// kindText says what a learner does in it.
func (g *Game) kindText(k sheet.Kind) string {
	switch k {
	case sheet.Name:
		return g.t("Name it: a sound is played, and the learner says which of two to six answers it is.")
	case sheet.Same:
		return g.t("Same or not: two sounds are played, and the learner says whether they sound the same.")
	case sheet.Limit:
		return g.t("Limit: one of three sounds differs, by less and less, until the learner's limit is found.")
	case sheet.Show:
		return g.t("Demonstration: the learner hears the sound, sees it and moves its rulers. It has no marks.")
	}
	return g.t("Match: the learner sets rulers until the sound is like the target.")
}

// benchOfDraft puts what is written of the sound on the bench on its page.
func (g *Game) benchOfDraft(f *frame) {
	if g.cabinet.Desk.Slot == "" || g.drafted() == nil {
		f.onward = append(f.onward, ui.Widget{ID: "make", Label: g.t("Make an exercise of it"), Face: g.t("Exercise")})
		return
	}
	f.back = ui.Widget{ID: "draft", Label: g.t("Back to the exercise, without the sound"), Face: g.t("Back")}
	f.onward = append(f.onward[1:], ui.Widget{ID: "bring", Label: g.t("Take the sound into the exercise"), Face: g.t("Take it"), Primary: true})
}

// untryButton ends trying a sheet out.
func (g *Game) untryButton() ui.Widget {
	return ui.Widget{ID: "untry", Label: g.t("Back to writing"), Face: g.t("Write"), Keys: "C"}
}
