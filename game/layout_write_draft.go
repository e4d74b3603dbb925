package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// layDraft lays out an exercise that is being written.
func (g *Game) layDraft(p *paper) {
	w, e := g.written(), g.drafted()
	if e == nil {
		g.page = writePage
		g.layWrite(p)
		return
	}
	desk := &g.cabinet.Desk
	title := e.Title
	if title == "" {
		title = g.t("without a title")
	}
	d := deskPage{title: g.t("%d. %s", desk.Exercise+1, plainly(title)), tabs: g.draftTabs(e)}
	switch desk.Tab {
	case tabKind:
		d.stack = g.kindBlocks(p, e)
	case tabTexts:
		d.stack = g.textBlocks(p, e)
	case tabWhat:
		d.stack = g.whatBlocks(p, e)
	case tabHow:
		d.stack = g.howBlocks(p, w.Sheet(), e)
	case tabVary:
		d.stack = g.varyBlocks(p, e)
	case tabAdvice:
		d.stack = g.adviceBlocks(p)
	}
	if text, ok := draft.Missing(e); !ok {
		d.note, d.ink = g.t("%s", text), Faint
	} else if desk.Tab != tabAdvice {
		d.note, d.ink = g.firstAdvice(desk.Exercise)
	}
	d.foot = []ui.Widget{
		{ID: "sheet page", Label: g.t("Back to the sheet"), Face: g.t("Back")},
		{ID: "undo", Label: g.t("Undo"), Disabled: !w.CanUndo()},
		{ID: "redo", Label: g.t("Redo"), Disabled: !w.CanRedo()},
		{ID: "hear", Label: g.t("Play the sound"), Face: g.t("Play"), On: g.playing.what != silence},
		{ID: "try", Label: g.t("Try it"), Primary: true},
	}
	g.layDesk(p, d)
}

func (g *Game) draftTabs(e *sheet.Exercise) []ui.Widget {
	what, how := g.t("Controls"), g.t("Ranges")
	switch e.Kind {
	case sheet.Name:
		what, how = g.t("Answers"), g.t("Questions")
	case sheet.Same:
		what, how = g.t("Pairs"), g.t("Questions")
	case sheet.Limit:
		what, how = g.t("Quantity"), g.t("Questions")
	}
	tab := func(i int, name string) ui.Widget {
		return ui.Widget{ID: numberedID("tab", i), Label: name, On: i == g.cabinet.Desk.Tab}
	}
	tabs := []ui.Widget{tab(tabKind, g.t("Kind")), tab(tabTexts, g.t("Texts")), tab(tabWhat, what)}
	if varying(e) {
		tabs = append(tabs, tab(tabVary, g.t("Variation")))
	}
	return append(tabs, tab(tabHow, how), tab(tabAdvice, g.t("Advice")))
}

// kindBlocks choose the kind, and the sound that the exercise is about.
func (g *Game) kindBlocks(p *paper, e *sheet.Exercise) []block {
	var kinds []ui.Widget
	for i, k := range draft.Kinds {
		kinds = append(kinds, ui.Widget{ID: numberedID("kind", i), Label: g.kindName(k), On: k == e.Kind})
	}
	columns := 3
	if p.short {
		columns = 2
	}
	blocks := []block{g.grid(p, columns, kinds...), g.saying(p, g.kindText(e.Kind), Faint)}
	if e.Kind == sheet.Name || e.Kind == sheet.Same {
		return blocks
	}
	return append(blocks, g.soundRow(p))
}

// soundRow carries a sound between the exercise and the bench.
func (g *Game) soundRow(p *paper) block {
	return g.row(p,
		ui.Widget{ID: "from bench", Label: g.t("Take the sound from the bench"), Face: g.t("From the bench")},
		ui.Widget{ID: "to bench", Label: g.t("Set the sound on the bench"), Face: g.t("To the bench")})
}

// pairRows do that with the two of a pair.
func (g *Game) pairRows(p *paper) []block {
	return []block{
		g.row(p,
			ui.Widget{ID: "from bench", Label: g.t("Take the first sound from the bench"), Face: g.t("First from bench")},
			ui.Widget{ID: "to bench", Label: g.t("Set the first sound on the bench"), Face: g.t("First to bench")}),
		g.row(p,
			ui.Widget{ID: "from bench 2", Label: g.t("Take the second sound from the bench"), Face: g.t("Second from bench")},
			ui.Widget{ID: "to bench 2", Label: g.t("Set the second sound on the bench"), Face: g.t("Second to bench")}),
	}
}

// textBlocks are what is written of every exercise.
func (g *Game) textBlocks(p *paper, e *sheet.Exercise) []block {
	n := 2
	switch {
	case p.short || p.H < 640:
		n = 1
	case p.H >= 800:
		n = 3
	}
	return []block{
		g.field(p, ui.Widget{ID: "title", Label: g.t("Title: a question"), Text: ui.Text{Value: e.Title, Most: longTitle}}),
		g.field(p, ui.Widget{ID: "task text", Label: g.t("Task: what to do"), Text: ui.Text{Value: e.Task, Most: longTask(e), Lines: n}}),
		g.field(p, ui.Widget{ID: "teach", Label: g.t("Shown afterwards: what to know"), Text: ui.Text{Value: e.Teach, Most: longText, Lines: n}}),
		g.row(p, ui.Widget{ID: "suggest", Label: g.t("Suggest all three anew"), Face: g.t("Suggest anew")}),
	}
}

// whatBlocks are what is asked for.
func (g *Game) whatBlocks(p *paper, e *sheet.Exercise) []block {
	switch e.Kind {
	case sheet.Name:
		return g.answerBlocks(p, e)
	case sheet.Same:
		return g.pairBlocks(p, e)
	case sheet.Limit:
		return g.quantityBlocks(p, e)
	}
	full := len(e.Controls) >= sheet.MaxControls
	blocks := []block{g.saying(p, g.t("What may the learner set? One to four; what cannot be heard in this sound is not offered."), Faint)}
	var offers []ui.Widget
	for i, f := range g.heardIn(e.Target).fields {
		on := draft.Sets(e, f.Name)
		offers = append(offers, ui.Widget{ID: numberedID("offer", i), Label: g.lang.Value(f.Label), On: on, Disabled: full && !on})
	}
	return append(blocks, g.rows(p, offers)...)
}

// rows are buttons two or three side by side, each row a block of its own.
func (g *Game) rows(p *paper, widgets []ui.Widget) (blocks []block) {
	columns := 2
	if p.W >= 1100 || !p.wide && !p.short && p.W >= 560 {
		columns = 3
	}
	for len(widgets) > 0 {
		n := min(columns, len(widgets))
		row := make([]ui.Widget, n)
		copy(row, widgets[:n])
		blocks = append(blocks, block{finger, func(r ui.Rect) {
			for i, c := range r.Columns(columns, p.gap)[:n] {
				row[i].Rect = c
				p.widget(row[i])
			}
		}})
		widgets = widgets[n:]
	}
	return blocks
}

// howBlocks are ranges, or how often and where is asked.
func (g *Game) howBlocks(p *paper, s *sheet.Sheet, e *sheet.Exercise) []block {
	if e.Kind != sheet.Match && e.Kind != sheet.Show {
		return g.questionBlocks(p, e)
	}
	if len(e.Controls) == 0 {
		return nil
	}
	item := min(g.cabinet.Desk.Item, len(e.Controls)-1)
	var picks []ui.Widget
	for i := range e.Controls {
		picks = append(picks, ui.Widget{ID: numberedID("item", i), Label: g.lang.Value(e.Controls[i].Label), On: i == item})
	}
	var blocks []block
	if len(picks) > 1 {
		columns := len(picks)
		if p.W < 480 || p.short || p.wide {
			columns = 2
		}
		blocks = append(blocks, g.grid(p, columns, picks...))
	}
	c := &e.Controls[item]
	name, target := g.lang.Value(c.Label), c.Field().Format(c.Get(&e.Target))
	blocks = append(blocks,
		g.saying(p, g.t("%s of the target: %s.", plainly(name), target), Faint),
		g.scale(p, "start", g.t("At the start"), g.endRuler(e, c, draft.Start)),
		g.scale(p, "lowest", g.t("Least"), g.endRuler(e, c, draft.Lowest)),
		g.scale(p, "highest", g.t("Most"), g.endRuler(e, c, draft.Highest)))
	if s.Vary && e.Kind == sheet.Match {
		blocks = append(blocks,
			g.scale(p, "drawn from", g.t("Targets from"), g.endRuler(e, c, draft.DrawnFrom)),
			g.scale(p, "drawn to", g.t("Targets to"), g.endRuler(e, c, draft.DrawnTo)))
	}
	return append(blocks, g.row(p, ui.Widget{ID: "away", Label: g.t("Move the start away from the target, %s", target), Face: g.t("Start away")}))
}

// endRuler is the ruler of an end of a control, over all of the field's range.
func (g *Game) endRuler(e *sheet.Exercise, c *sheet.Control, end draft.End) ui.Ruler {
	f := c.Field()
	text := func(v float64) string { return g.lang.Value(f.Format(v)) }
	r := fieldRuler(f)
	r.Value, r.Start = draft.Value(c, end), f.Default
	r.Min, r.Max = min(r.Min, r.Value), max(r.Max, r.Value)
	r.Text, r.MinText, r.MaxText = text(r.Value), text(r.Min), text(r.Max)
	return r
}

func fieldRuler(f *synth.Field) ui.Ruler {
	return ui.Ruler{Min: f.Min, Max: f.Max, Step: f.Step, Log: f.Log && f.Min > 0, Whole: f.Whole}
}
