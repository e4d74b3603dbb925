package game

import (
	"fmt"
	"math"

	"partialcredit/game/ui"
)

const finger = 44 // CSS pixels: the least that a finger must hit (WCAG 2.2, 2.5.5)

// rulerHeight is the height of one ruler: label, scale and, where there is
// room, the ends of the scale.
func (p *paper) rulerHeight() float64 {
	switch {
	case p.short || p.H < 600:
		return finger
	case p.H < 700 || p.W < 700:
		return 68
	}
	return 84 * p.label / 17
}

// rulersHeight is the height of n rulers.
func (p *paper) rulersHeight(n int) float64 {
	return float64(n)*p.rulerHeight() + float64(max(0, n-1))*p.gap
}

// allControls are the numbers of all that can be set.
func (g *Game) allControls() []int {
	all := make([]int, len(g.work.controls))
	for i := range all {
		all[i] = i
	}
	return all
}

// layRulers lays out a ruler for each of the controls, between a button for a
// fine step less and one for a fine step more.
func (g *Game) layRulers(p *paper, r ui.Rect, controls []int) {
	n := len(controls)
	h := max(finger, math.Min(p.rulerHeight(), (r.H-float64(n-1)*p.gap)/float64(n)))
	gap := math.Min(p.gap, math.Max(0, (r.H-float64(n)*h)/math.Max(1, float64(n-1))))
	for _, i := range controls {
		var row ui.Rect
		row, r = r.CutTop(h, gap)
		label := g.lang.Value(g.work.controls[i].Label)
		less := ui.Rect{X: row.X, Y: row.Y, W: finger, H: finger}
		more := ui.Rect{X: row.Right() - finger, Y: row.Y, W: finger, H: finger}
		less.Y, more.Y = row.Y+(h-finger)/2, row.Y+(h-finger)/2
		p.ruled(numberedID("control", i), label, g.ruler(i), ui.Rect{X: less.Right() + 4, Y: row.Y, W: row.W - 2*finger - 8, H: h})
		p.widget(ui.Widget{ID: numberedID("less", i), Label: g.t("%s: less", label), Face: "−", Rect: less, NoTab: true})
		p.widget(ui.Widget{ID: numberedID("more", i), Label: g.t("%s: more", label), Face: "+", Rect: more, NoTab: true})
	}
}

// numberedID names one of several widgets that do alike.
func numberedID(name string, i int) string { return fmt.Sprintf("%s %d", name, i) }

// ruled puts a ruler into r.
func (p *paper) ruled(id, label string, ruler ui.Ruler, r ui.Rect) {
	const inset = 14 // half the handle
	line := r.Y + min(p.label*leading+14, r.H-16)
	ruler.Scale = ui.Rect{X: r.X + inset, Y: line, W: r.W - 2*inset}
	if r.Bottom()-line < 30 {
		ruler.MinText, ruler.MaxText = "", ""
	}
	p.widget(ui.Widget{ID: id, Role: ui.Ruled, Label: label, Rect: r, Ruler: ruler})
}

// ruler is the ruler of a control.
func (g *Game) ruler(control int) ui.Ruler {
	c := &g.work.controls[control]
	f := c.Field()
	v := c.Get(&g.work.yours)
	text := func(v float64) string { return g.lang.Value(f.Format(v)) }
	return ui.Ruler{
		Min: c.Min, Max: c.Max, Start: c.Start, Value: v, Step: f.Step, Log: f.Log && c.Min > 0, Whole: f.Whole,
		Text: text(v), MinText: text(c.Min), MaxText: text(c.Max),
	}
}

func (g *Game) volumeRuler() ui.Ruler {
	v := g.kept.Volume
	return ui.Ruler{Max: 1, Start: quiet, Value: v, Step: 0.01, Text: fmt.Sprintf("%.0f %%", 100*v), MinText: g.t("silent"), MaxText: g.t("full")}
}
