package game

import (
	"math"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// picked are buttons for each answer or pair and one for another.
func (g *Game) picked(p *paper, n, most int, name func(i int) string, more ui.Widget) []block {
	more.Disabled = n >= most
	return append([]block{g.row(p, more)}, g.picks(p, n, name)...)
}

// picks are buttons for each answer or pair.
func (g *Game) picks(p *paper, n int, name func(i int) string) (blocks []block) {
	var picks []ui.Widget
	for i := range n {
		picks = append(picks, ui.Widget{ID: numberedID("item", i), Label: g.t("%d. %s", i+1, plainly(name(i))), Face: g.t("%d", i+1), On: i == g.cabinet.Desk.Item})
	}
	const columns = 6
	for len(picks) > 0 {
		k := min(columns, len(picks))
		row := append([]ui.Widget(nil), picks[:k]...)
		blocks = append(blocks, block{finger, func(r ui.Rect) {
			for i, c := range r.Columns(columns, 4)[:k] {
				row[i].Rect = c
				p.widget(row[i])
			}
		}})
		picks = picks[k:]
	}
	return blocks
}

// answerBlocks are the answers of a naming.
func (g *Game) answerBlocks(p *paper, e *sheet.Exercise) []block {
	more := ui.Widget{ID: "more answers", Label: g.t("Add the sound on the bench as an answer"), Face: g.t("Add from the bench"), Primary: len(e.Answers) < sheet.LeastAnswers}
	blocks := g.picked(p, len(e.Answers), sheet.MostAnswers, func(i int) string { return e.Answers[i].Name }, more)
	item := g.cabinet.Desk.Item
	if item >= len(e.Answers) {
		return blocks
	}
	a := &e.Answers[item]
	return append(blocks,
		g.field(p, ui.Widget{ID: "answer name", Label: g.t("Name of answer %d", item+1), Text: ui.Text{Value: a.Name, Most: longAnswer}}),
		g.field(p, ui.Widget{ID: "cue", Label: g.t("Cue: what to listen for"), Text: ui.Text{Value: a.Cue, Most: longCue}}),
		g.soundRow(p),
		g.row(p, ui.Widget{ID: "less item", Label: g.t("Remove this answer")}))
}

// pairBlocks are the pairs of a comparison.
func (g *Game) pairBlocks(p *paper, e *sheet.Exercise) []block {
	more := ui.Widget{ID: "more pairs", Label: g.t("Add a pair with the sound on the bench"), Face: g.t("Add a pair"), Primary: len(e.Pairs) == 0}
	blocks := g.picked(p, len(e.Pairs), mostPairs, func(i int) string { return e.Pairs[i].Name }, more)
	item := g.cabinet.Desk.Item
	if item >= len(e.Pairs) {
		return blocks
	}
	q := &e.Pairs[item]
	blocks = append(blocks,
		g.row(p,
			ui.Widget{ID: "alike 0", Label: g.t("The same to the ear"), Face: g.t("The same"), On: q.Same},
			ui.Widget{ID: "alike 1", Label: g.t("They differ"), On: !q.Same}),
		g.field(p, ui.Widget{ID: "pair name", Label: g.t("What the two are"), Text: ui.Text{Value: q.Name, Most: longPair}}),
		g.field(p, ui.Widget{ID: "why", Label: g.t("Why they sound so"), Text: ui.Text{Value: q.Why, Most: longText}}))
	return append(append(blocks, g.pairRows(p)...),
		g.row(p, ui.Widget{ID: "less item", Label: g.t("Remove this pair")}))
}

// quantityBlocks choose what a limit is sought of.
func (g *Game) quantityBlocks(p *paper, e *sheet.Exercise) []block {
	var offers []ui.Widget
	for i, f := range g.heardIn(e.Target).measured {
		label, name := g.t("Level"), "level"
		if f != nil {
			label, name = g.lang.Value(f.Label), f.Name
		}
		offers = append(offers, ui.Widget{ID: numberedID("measure", i), Label: label, On: e.Quantity != nil && len(e.Quantity.Set) > 0 && e.Quantity.Set[0] == name})
	}
	var blocks []block
	if q := e.Quantity; q != nil {
		most := draft.Most(q, e.Target)
		blocks = append(blocks,
			g.scale(p, "first", g.t("The difference at the start"), g.quantityRuler(q, q.Start, most)),
			g.scale(p, "smallest", g.t("The least that is asked"), g.quantityRuler(q, q.Least, most)),
			g.scale(p, "largest", g.t("The most that is asked"), g.quantityRuler(q, q.Most, most)))
		blocks = append(blocks, g.publishedBlocks(p, q, most)...)
	}
	return append(blocks, g.rows(p, offers)...)
}

// decades is how far down the ruler of a quantity goes below the most (design choice).
const decades = 1e-4

func (g *Game) quantityRuler(q *sheet.Quantity, v, most float64) ui.Ruler {
	text := func(v float64) string { return g.lang.Value(q.Format(v)) }
	if !(most > 0) || math.IsInf(most, 0) {
		most = max(1, v)
	}
	r := ui.Ruler{Min: min(v, most*decades), Max: max(v, most), Value: v, Start: v, Step: 1.02, Log: true}
	r.Text, r.MinText, r.MaxText = text(v), text(r.Min), text(r.Max)
	return r
}

// questionBlocks are how often and at which notes questions are asked.
func (g *Game) questionBlocks(p *paper, e *sheet.Exercise) []block {
	var blocks []block
	if e.Kind != sheet.Limit {
		n := float64(e.Questions)
		blocks = append(blocks, g.scale(p, "questions", g.t("Questions in a run"), ui.Ruler{
			Min: leastQuestions, Max: mostQuestions, Value: n, Start: sheet.DefaultQuestions, Step: 1, Whole: true,
			Text: g.t("%d", e.Questions), MinText: g.t("%d", leastQuestions), MaxText: g.t("%d", mostQuestions),
		}))
	}
	if e.Kind == sheet.Name {
		blocks = append(blocks, g.referenceBlocks(p, e)...)
	}
	notes := ui.Widget{ID: "notes", Label: g.t("At the note of the sound")}
	if e.Notes != nil {
		notes.Label, notes.On = g.t("Each at a note of its own"), true
	}
	blocks = append(blocks, g.row(p, notes))
	if e.Notes == nil {
		return blocks
	}
	f, _ := synth.FieldByName("note")
	ruler := func(v float64) ui.Ruler {
		r := fieldRuler(f)
		r.Value, r.Start = v, f.Default
		r.Text, r.MinText, r.MaxText = f.Format(v), f.Format(f.Min), f.Format(f.Max)
		return r
	}
	return append(blocks,
		g.scale(p, "lowest note", g.t("The lowest note"), ruler(e.Notes[0])),
		g.scale(p, "highest note", g.t("The highest note"), ruler(e.Notes[1])))
}
