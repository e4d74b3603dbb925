package game

import (
	"fmt"
	"slices"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// The views of the progress.
const (
	viewMarks = iota
	viewTables
	viewLimits
)

// layProgress draws what was reached: marks over time, what was taken for what,
// limits over time.
func (g *Game) layProgress(p *paper) {
	area := g.head(p, p.plain(), g.t("Progress"), "")
	views := []string{g.t("Marks"), g.t("Confusions"), g.t("Limits")}
	top, area := area.CutTop(p.button, p.gap)
	var buttons []ui.Widget
	for i, name := range views {
		buttons = append(buttons, ui.Widget{ID: numberedID("view", i), Label: name, On: i == g.view})
	}
	p.buttons(top, buttons...)
	bottom, rest := area.CutBottom(p.button, p.gap)
	switch g.view {
	case viewTables:
		g.layConfusions(p, rest)
	case viewLimits:
		g.layLimits(p, rest)
	default:
		g.layHistory(p, rest)
	}
	p.buttons(bottom,
		ui.Widget{ID: "course", Label: g.t("All sheets"), Face: g.t("Back"), Keys: "C"},
		ui.Widget{ID: "export", Label: g.t("Export to a file"), Face: g.t("Export")},
		ui.Widget{ID: "import", Label: g.t("Import from a file"), Face: g.t("Import")},
		ui.Widget{ID: "erase", Label: g.t("Erase all marks"), Face: g.t("Erase")})
}

// nothing says that a view is empty as yet.
func (g *Game) nothing(p *paper, r ui.Rect, s string) {
	p.paragraph(r, s, p.body, false, Faint)
	g.scene.Body += s
}

// layHistory draws marks over time: a dot for every hand-in, and a line through the
// mean of each day.
func (g *Game) layHistory(p *paper, r ui.Rect) {
	h := slices.Clone(g.kept.History)
	slices.SortStableFunc(h, func(a, b handIn) int { return a.Day - b.Day }) // a clock may have been set back
	if len(h) == 0 {
		g.nothing(p, r, g.t("No marks yet. Hand something in, and it is drawn here."))
		return
	}
	dots, means := Series{Ink: Yours}, Series{Joined: true, Ink: Yours}
	sum, n := 0.0, 0
	for i, e := range h {
		x := Date(date(e.Day))
		dots.Points = append(dots.Points, Dot{X: x, Y: e.Marks, Mark: DotOpen})
		sum, n = sum+e.Marks, n+1
		if i+1 == len(h) || h[i+1].Day != e.Day {
			means.Points = append(means.Points, Dot{X: x, Y: sum / float64(n), Mark: DotFilled})
			sum, n = 0, 0
		}
	}
	c := Chart{Rect: r, Series: []Series{dots, means}, Key: []Sign{
		{Mark: DotOpen, Ink: Yours, Text: g.t("a hand-in")}, {Mark: DotFilled, Ink: Yours, Text: g.t("mean of the day")},
	}}
	c.X = g.days(h[0].Day, h[len(h)-1].Day)
	c.Y = LinearAxis(0, 100, 5, func(v float64) string { return fmt.Sprintf("%.0f", v) })
	c.Y.Label = g.t("marks")
	p.Charts = append(p.Charts, c)
	last := means.Points[len(means.Points)-1].Y
	g.scene.Body += g.t("%d hand-ins. Mean of the last day: %.0f marks of 100.", len(h), last)
}

// days is an axis from one day to another.
func (g *Game) days(from, to int) Axis {
	a := DateAxis(date(from), date(to), 6, func(d time.Time, u DateUnit) string { return dayText(d, u) })
	a.Label = g.t("day")
	return a
}

// layConfusions draws the confusion table of one exercise.
func (g *Game) layConfusions(p *paper, r ui.Rect) {
	some := g.exercises(func(e *sheet.Exercise) bool { return g.kept.Tables[e.ID] != nil })
	e, r := g.choice(p, r, some)
	if e == nil {
		g.nothing(p, r, g.t("Nothing has been answered yet. Name a sound, and what you took for what is drawn here."))
		return
	}
	g.scene.Body += g.t(e.Title) + " "
	g.layTable(p, r, g.kept.Tables[e.ID], g.t(e.Title))
}

// layLimits draws one limit over time, beside the published threshold.
func (g *Game) layLimits(p *paper, r ui.Rect) {
	some := g.exercises(func(e *sheet.Exercise) bool { return e.Kind == sheet.Limit && len(g.kept.Limits[e.ID]) > 0 })
	e, r := g.choice(p, r, some)
	if e == nil {
		g.nothing(p, r, g.t("No limit has been measured yet. Each one you find is drawn here."))
		return
	}
	runs := slices.Clone(g.kept.Limits[e.ID])
	slices.SortStableFunc(runs, func(a, b limitRun) int { return a.Day - b.Day })
	c := Chart{Rect: r, Name: g.t(e.Title)}
	s := Series{Joined: true, Ink: Yours}
	lo, hi := runs[0].Value, runs[0].Value
	g.scene.Body += g.t(e.Title) + " "
	for _, run := range runs {
		mark := DotFilled
		if !run.Found {
			mark = DotOpen
		}
		lo, hi = min(lo, run.Value), max(hi, run.Value)
		s.Points = append(s.Points, Dot{X: Date(date(run.Day)), Y: run.Value, Mark: mark})
		g.scene.Body += g.t("%s: %s. ", date(run.Day).Format(time.DateOnly), e.Quantity.Format(run.Value))
	}
	c.Key = []Sign{{Mark: DotFilled, Ink: Yours, Text: g.t("limit found")}, {Mark: DotOpen, Ink: Yours, Text: g.t("beyond what is asked")}}
	if pub := e.Quantity.Published; pub != nil {
		lo, hi = min(lo, pub.Value), max(hi, pub.Value)
		c.Levels = append(c.Levels, Level{At: pub.Value, Text: g.t("published: %s", e.Quantity.Format(pub.Value)), Ink: Target, Dashed: true})
		g.scene.Body += g.t("Published: %s (%s).", e.Quantity.Format(pub.Value), pub.Source)
	}
	c.Series = []Series{s}
	c.X, c.Y = g.days(runs[0].Day, runs[len(runs)-1].Day), g.quantityAxis(e, lo, hi)
	p.Charts = append(p.Charts, c)
}

// choice shows which of the exercises is drawn, with buttons to the others.
func (g *Game) choice(p *paper, r ui.Rect, some []*sheet.Exercise) (*sheet.Exercise, ui.Rect) {
	if len(some) == 0 {
		return nil, r
	}
	g.part = max(0, min(len(some)-1, g.part))
	if len(some) > 1 {
		var turn ui.Rect
		turn, r = r.CutTop(finger, p.gap)
		g.layTurn(p, turn, len(some))
	}
	return some[g.part], r
}

// exercises are all of the course that are wanted, those of the present sheet
// first.
func (g *Game) exercises(wanted func(*sheet.Exercise) bool) (some []*sheet.Exercise) {
	order := slices.Concat(g.course[g.at.sheet:], g.course[:g.at.sheet])
	for _, s := range order {
		for i := range s.Exercises {
			if wanted(&s.Exercises[i]) {
				some = append(some, &s.Exercises[i])
			}
		}
	}
	return some
}
