package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// longSource is the longest source of a published threshold, in characters.
const longSource = 90

// varyBlocks are what differs from question to question in an answer or a pair.
func (g *Game) varyBlocks(p *paper, e *sheet.Exercise) (blocks []block) {
	name := func(i int) string {
		if e.Kind == sheet.Name {
			return e.Answers[i].Name
		}
		return e.Pairs[i].Name
	}
	item := g.cabinet.Desk.Item
	all, s := draft.Varied(e, item)
	if all == nil {
		return []block{g.saying(p, g.t("Nothing can vary yet: add a sound first."), Faint)}
	}
	blocks = g.picks(p, items(e), name)
	blocks = append(blocks, g.saying(p, headed(g.t("%d. %s", item+1, plainly(name(item))), g.t("What you choose is drawn anew for each question, between two values.")), Faint))
	for i := range *all {
		v := &(*all)[i]
		if len(v.Set) == 0 {
			continue
		}
		f, ok := synth.FieldByName(v.Set[0])
		if !ok {
			continue
		}
		label := g.lang.Value(f.Label)
		blocks = append(blocks,
			g.scale(p, numberedID("lower", i), g.t("%s, from", plainly(label)), g.varyRuler(f, v.Between[0])),
			g.scale(p, numberedID("upper", i), g.t("%s, to", plainly(label)), g.varyRuler(f, v.Between[1])))
	}
	var offers []ui.Widget
	for i, f := range g.heardIn(s).varied {
		on := draft.Varies(*all, f.Name)
		offers = append(offers, ui.Widget{ID: numberedID("varies", i), Label: g.lang.Value(f.Label), On: on, Disabled: !on && len(*all) >= draft.MostVaried})
	}
	return append(blocks, g.rows(p, offers)...)
}

func (g *Game) varyRuler(f *synth.Field, v float64) ui.Ruler {
	text := func(v float64) string { return g.lang.Value(f.Format(v)) }
	r := fieldRuler(f)
	r.Value, r.Start = v, f.Default
	r.Text, r.MinText, r.MaxText = text(v), text(f.Min), text(f.Max)
	return r
}

// referenceBlocks are the sound that is heard before each question of a naming.
func (g *Game) referenceBlocks(p *paper, e *sheet.Exercise) []block {
	if e.Reference == nil {
		return []block{g.row(p, ui.Widget{ID: "reference", Label: g.t("No sound before the questions")})}
	}
	return []block{
		g.row(p, ui.Widget{ID: "reference", Label: g.t("A sound before each question"), On: true}),
		g.row(p,
			ui.Widget{ID: "from bench", Label: g.t("Take the sound before from the bench"), Face: g.t("From the bench")},
			ui.Widget{ID: "to bench", Label: g.t("Set the sound before on the bench"), Face: g.t("To the bench")}),
	}
}

// publishedBlocks are the threshold that a learner's limit is compared with.
func (g *Game) publishedBlocks(p *paper, q *sheet.Quantity, most float64) []block {
	if q.Published == nil {
		return []block{g.row(p, ui.Widget{ID: "published", Label: g.t("No published threshold")})}
	}
	return []block{
		g.row(p, ui.Widget{ID: "published", Label: g.t("Beside a published threshold"), On: true}),
		g.scale(p, "published value", g.t("The threshold"), g.quantityRuler(q, q.Published.Value, most)),
		g.field(p, ui.Widget{ID: "source", Label: g.t("Source: who found it, with what sounds"), Text: ui.Text{Value: q.Published.Source, Most: longSource}}),
	}
}
