package game

import (
	"math"

	"partialcredit/game/ui"
)

// benchFrame is free play: pictures above, the rulers of one part of the voice
// below, and the parts to choose from.
func (g *Game) benchFrame(p *paper) frame {
	f := frame{title: g.t("Bench"), place: g.t(benchParts[g.bench.part].name), task: ""}
	if p.wide {
		f.task = g.t("Set anything, listen, and look. The sweep moves the ruler that was set last.")
	}
	g.scene.Body = g.t("Everything that the voice can do. Choose a part of it, set its rulers, play it.")
	f.middle = g.layBench
	if p.wide {
		f.height = p.button + p.gap + p.rulersHeight(3)
		f.middle = func(p *paper, r ui.Rect) { g.layBenchRulers(p, r) }
		f.across = false
	} else {
		f.height = 2*finger + 2*p.gap + p.rulersHeight(2)
	}
	f.listening = []ui.Widget{
		{ID: "yours", Label: g.t("Play"), On: g.playing.what == toYours, Keys: "Y"},
		g.sweepButton(g.bench.touched, g.t("Sweep")),
		{ID: "slow", Label: g.t("Slow motion"), Face: g.t("Slow"), On: g.bench.slow, Keys: "M"},
	}
	f.back = ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"}
	f.onward = []ui.Widget{
		{ID: "fresh", Label: g.t("Start afresh"), Face: g.t("Afresh")},
		{ID: "link", Label: g.t("A link to this sound"), Face: g.t("Link")},
	}
	if g.cabinet.Desk.Slot == "" && !g.bench.slow {
		f.extra = ui.Widget{ID: "recording", Label: g.t("Match a recording")}
		f.least = 3*finger + 2*p.gap
	}
	g.benchOfDraft(&f)
	if p.wide {
		f.place = ""
		f.beside = g.layBenchParts
	}
	return f
}

// layBench lays out, where room is short, the part that is shown between buttons
// to the others, and its rulers.
func (g *Game) layBench(p *paper, r ui.Rect) {
	parts := len(benchParts)
	row, rest := r.CutTop(finger, p.gap/2)
	last, next := (g.bench.part+parts-1)%parts, (g.bench.part+1)%parts
	left, right := g.t(benchParts[last].name), g.t(benchParts[next].name)
	p.buttons(row,
		ui.Widget{ID: numberedID("part", last), Label: g.t("Part: %s", left), Face: "‹ " + left},
		ui.Widget{ID: numberedID("part", next), Label: g.t("Part: %s", right), Face: right + " ›"})
	g.layBenchRulers(p, rest)
}

// layBenchParts lays out a button for each part.
func (g *Game) layBenchParts(p *paper, r ui.Rect) {
	const columns = 4
	rows := (len(benchParts) + columns - 1) / columns
	r.H = math.Min(r.H, float64(rows)*p.button+float64(rows-1)*p.gap)
	for i, row := range r.Rows(rows, p.gap) {
		for j, c := range row.Columns(columns, p.gap) {
			if k := i*columns + j; k < len(benchParts) {
				name := g.t(benchParts[k].name)
				p.widget(ui.Widget{ID: numberedID("part", k), Label: g.t("Part: %s", name), Face: name, On: k == g.bench.part, Rect: c})
			}
		}
	}
}

// layBenchRulers lays out the rulers of the part, in turns where they do not fit.
func (g *Game) layBenchRulers(p *paper, r ui.Rect) {
	if g.bench.slow {
		var row ui.Rect
		row, r = r.CutTop(p.rulerHeight(), p.gap/2)
		p.ruled("moment", g.t("Moment of the note"), g.momentRuler(), row)
	}
	controls := g.benchRulers(g.bench.part)
	least := max(finger, p.rulerHeight()*0.75) + p.gap/2
	if fit := max(1, int((r.H+p.gap/2)/least)); fit < len(controls) {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap/2)
		fit = max(1, int((r.H+p.gap/2)/least))
		parts := (len(controls) + fit - 1) / fit
		g.layTurn(p, turn, parts)
		controls = controls[g.part*fit : min(len(controls), (g.part+1)*fit)]
	}
	g.layRulers(p, r, controls)
}

func (g *Game) momentRuler() ui.Ruler {
	long := g.work.yours.Seconds
	text := func(v float64) string { return g.lang.Value(twoDecimals(v) + " s") }
	at := min(g.bench.moment, long)
	return ui.Ruler{Max: long, Value: at, Step: 0.01, Text: text(at), MinText: "0 s", MaxText: text(long)}
}
