package game

import (
	"fmt"
	"math"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layMargin draws the margin and, where it is tall enough, the exercises of
// the sheet in it; it returns the page beside it.
func (g *Game) layMargin(p *paper, area ui.Rect) ui.Rect {
	if p.W < 900 {
		return area
	}
	const width = 86
	n := len(g.sheet.Exercises)
	p.Margin = width
	rest := ui.Rect{X: width + p.pad, Y: area.Y, W: p.W - width - 2*p.pad, H: area.H}
	step := math.Min(62, (p.H-2*p.gap)/float64(n))
	if step < finger {
		return rest
	}
	y := (p.H - step*float64(n)) / 2
	for i := range n {
		p.widget(ui.Widget{
			ID: fmt.Sprintf("exercise %d", i), Label: g.exerciseLabel(i), Face: fmt.Sprint(i + 1), Round: true,
			On: i == g.current, Ticked: g.kept.Marks[g.sheet.Exercises[i].ID].Tries > 0, NoTab: true,
			Rect: ui.Rect{X: width/2 - finger/2, Y: y + float64(i)*step + (step-finger)/2, W: finger, H: finger},
		})
	}
	return rest
}

// exerciseLabel is how the contents name an exercise.
func (g *Game) exerciseLabel(i int) string {
	return fmt.Sprintf("%d. %s", i+1, g.sheet.Exercises[i].Title)
}

// layContents lists the exercises with the best marks of each.
func (g *Game) layContents(p *paper) {
	g.scene.Title = g.sheet.Title
	area := ui.Rect{X: p.pad, Y: p.pad, W: p.W - 2*p.pad, H: p.H - 2*p.pad}
	if p.W >= 900 {
		p.Margin = 86
		_, area = area.CutLeft(86, 0)
	}
	done, sum := g.tally()
	total := fmt.Sprintf("%d of %d handed in", done, len(g.sheet.Exercises))
	if done > 0 {
		total += fmt.Sprintf(", %.0f marks on average", sum/float64(done))
	}
	if s := g.sheet.Strictness; s != sheet.Expert {
		total += ", marked for " + s.Whom()
	}
	g.scene.Body = total + ". Marks and settings stay on this device."
	area, _ = p.paragraph(area, g.scene.Title, p.title, true, Black)
	area, _ = p.paragraph(area, g.scene.Body, p.body, false, Faint)
	_, area = area.CutTop(0, p.gap)

	bottom, list := area.CutBottom(p.button, p.gap)
	rest := g.layList(p, list)
	rest.W = min(rest.W, 50*p.body)
	if below, fits := p.paragraph(rest, howTo, p.body, false, Black); fits {
		_, below = below.CutTop(0, p.gap/2)
		p.paragraph(below, caution, p.body, false, Faint)
	}
	parts := bottom.Columns(2, p.gap)
	p.ruled("volume", "Volume", g.volumeRuler(), parts[0])
	p.buttons(parts[1],
		ui.Widget{ID: "theme", Label: "Look: " + themeNames[g.kept.Theme], Face: p.themeFace(g.kept.Theme)},
		ui.Widget{ID: "erase", Label: "Erase all marks", Face: "Erase"})
}

func (p *paper) themeFace(t Theme) string {
	if p.wide {
		return "Look: " + themeNames[t]
	}
	if t == AsSystem {
		return "System" // what the longer name comes to where room is short
	}
	return themeNames[t]
}

var themeNames = map[Theme]string{AsSystem: "As the device", Paper: "Paper", Blackboard: "Blackboard"}

// layList lays the exercises out in one or two columns, in parts where they do
// not fit, and returns what is left below.
func (g *Game) layList(p *paper, r ui.Rect) (rest ui.Rect) {
	columns := 1
	if p.wide || p.short || p.W >= 700 {
		columns = 2
	}
	n := len(g.sheet.Exercises)
	fit := int(r.H/p.row) * columns
	if fit < n {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap)
		fit = max(1, int(r.H/p.row)*columns)
		parts := (n + fit - 1) / fit
		g.pager = max(0, min(parts-1, g.pager))
		p.buttons(turn,
			ui.Widget{ID: "earlier", Label: "Earlier exercises", Face: "Earlier", Disabled: g.pager == 0},
			ui.Widget{ID: "later", Label: "Later exercises", Face: "Later", Disabled: g.pager == parts-1})
	} else {
		g.pager = 0
	}
	from, to := g.pager*fit, min(n, (g.pager+1)*fit)
	perColumn := (to - from + columns - 1) / columns
	row := max(p.row, min(1.4*p.row, (r.H-8*p.body)/float64(perColumn))) // leaving room for the words below
	_, rest = r.CutTop(float64(perColumn)*row, p.gap)
	for c, column := range r.Columns(columns, 2*p.gap) {
		for i := from + c*perColumn; i < min(to, from+(c+1)*perColumn); i++ {
			at := ui.Rect{X: column.X, Y: column.Y + float64(i-from-c*perColumn)*row, W: column.W, H: row - 2}
			note := ""
			if k := g.kept.Marks[g.sheet.Exercises[i].ID]; k.Tries > 0 {
				note = fmt.Sprintf("%.0f", math.Floor(k.Best+0.05))
			}
			p.widget(ui.Widget{ID: fmt.Sprintf("exercise %d", i), Label: g.exerciseLabel(i), Plain: true, Note: note, On: i == g.current, Rect: at})
		}
	}
	return rest
}

// tally counts what was handed in and adds the best marks up.
func (g *Game) tally() (done int, sum float64) {
	for _, e := range g.sheet.Exercises {
		if k := g.kept.Marks[e.ID]; k.Tries > 0 {
			done, sum = done+1, sum+k.Best
		}
	}
	return done, sum
}
