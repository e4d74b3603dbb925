package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// Lengths of texts, in characters: what fits on the smallest phone (as those of the
// course).
const (
	longTitle  = 56
	longText   = 140
	longCue    = 110
	longAnswer = 16
	longPair   = 60
)

// longTask is how long a task may be: many rulers leave less room for it.
func longTask(e *sheet.Exercise) int {
	if len(e.Controls) > 2 {
		return 100
	}
	return longText
}

// layWrite lays out a sheet that is being written.
func (g *Game) layWrite(p *paper) {
	w := g.written()
	if w == nil {
		g.page = teacherPage
		g.layTeacher(p)
		return
	}
	s, desk := w.Sheet(), &g.cabinet.Desk
	d := deskPage{title: g.sheetTitle(s)}
	d.tabs = []ui.Widget{
		{ID: "side 0", Label: g.t("Exercises"), On: desk.Part == 0},
		{ID: "side 1", Label: g.t("About the sheet"), On: desk.Part == 1},
	}
	if desk.Part == 1 {
		d.stack = g.aboutSheet(p, s)
	} else {
		g.layLines(p, &d, s)
	}
	text, at, ok := w.Missing()
	switch {
	case !ok:
		d.note, d.ink = g.t("%s", g.inExercise(at, text)), Faint
	case desk.Part == 0 && len(s.Exercises) > 0:
		d.note, d.ink = g.firstAdvice(desk.Exercise)
	}
	d.foot = []ui.Widget{
		{ID: "teacher", Label: g.t("Back to your sheets"), Face: g.t("Back")},
		{ID: "undo", Label: g.t("Undo"), Disabled: !w.CanUndo()},
		{ID: "redo", Label: g.t("Redo"), Disabled: !w.CanRedo()},
		{ID: "try", Label: g.t("Try it"), Disabled: len(s.Exercises) == 0},
		{ID: "give", Label: g.t("Hand out"), Primary: ok},
	}
	g.layDesk(p, d)
}

// layLines lists the exercises, with what can be done to the one that is chosen.
func (g *Game) layLines(p *paper, d *deskPage, s *sheet.Sheet) {
	at, n := g.cabinet.Desk.Exercise, len(s.Exercises)
	columns := 6
	if p.W < 480 || p.short {
		columns = 3
	}
	d.stack = []block{g.grid(p, columns,
		ui.Widget{ID: "edit", Label: g.t("Write this exercise"), Face: g.t("Write"), Disabled: n == 0},
		ui.Widget{ID: "up", Label: g.t("Move it up"), Face: g.t("Up"), Disabled: at == 0 || n == 0},
		ui.Widget{ID: "down", Label: g.t("Move it down"), Face: g.t("Down"), Disabled: at >= n-1},
		ui.Widget{ID: "add", Label: g.t("Add an exercise of the sound on the bench"), Face: g.t("Add"), Primary: n == 0},
		ui.Widget{ID: "copy", Label: g.t("Copy this exercise"), Face: g.t("Copy"), Disabled: n == 0},
		ui.Widget{ID: "remove", Label: g.t("Remove this exercise"), Face: g.t("Remove"), Disabled: n == 0})}
	d.list = []ui.Widget{}
	for i := range s.Exercises {
		e := &s.Exercises[i]
		title := e.Title
		if title == "" {
			title = g.t("without a title")
		}
		row := ui.Widget{ID: numberedID("line", i), Label: g.t("%d. %s: %s", i+1, g.kindName(e.Kind), plainly(title)), Plain: true, On: i == at, Note: g.sign(i)}
		if _, ok := draft.Missing(e); !ok {
			row.Note = "…"
		}
		d.list = append(d.list, row)
	}
}

// aboutSheet is the title, for whom the sheet is marked, and whether it varies.
func (g *Game) aboutSheet(p *paper, s *sheet.Sheet) []block {
	var whom []ui.Widget
	faces := []string{g.t("Beginners"), g.t("Practised"), g.t("Experts")}
	for i, k := range strictnesses {
		whom = append(whom, ui.Widget{ID: numberedID("for", i), Label: g.t("Marked for %s", k.Whom()), Face: faces[i], On: s.Strictness == k})
	}
	vary, varied := g.t("The same targets for all"), g.t("Every learner works the same targets.")
	if s.Vary {
		vary, varied = g.t("Targets of their own"), g.t("Each learner's targets are drawn by the name on the slip, so that neighbours cannot copy. Set on each control where they are drawn from.")
	}
	return []block{
		g.field(p, ui.Widget{ID: "sheet title", Label: g.t("Title of the sheet"), Text: ui.Text{Value: s.Title, Hint: g.t("Pulses, Tuesday"), Most: longTitle}}),
		g.saying(p, g.t("Marked for whom? A beginner's steps are four times as large as an expert's, those of the practised twice."), Faint),
		g.row(p, whom...),
		g.row(p, ui.Widget{ID: "vary", Label: vary, On: s.Vary}),
		g.saying(p, varied, Faint),
	}
}
