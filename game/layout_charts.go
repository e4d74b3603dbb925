package game

import (
	"fmt"
	"math"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layRun draws a run of a limit so far.
func (g *Game) layRun(p *paper, r ui.Rect, e *sheet.Exercise, run *ask.Run) {
	stairs := run.Staircase(e)
	trials := stairs.Run()
	if len(trials) == 0 {
		return
	}
	lo, hi := math.Inf(1), 0.0
	c := Chart{Rect: r, Series: []Series{{Joined: true, Ink: Yours}}}
	for i, t := range trials {
		lo, hi = min(lo, t.Value), max(hi, t.Value)
		mark := DotFilled
		if !t.Right {
			mark = DotCross
		}
		c.Series[0].Points = append(c.Series[0].Points, Dot{X: float64(i + 1), Y: t.Value, Mark: mark, Ringed: t.Reversal})
	}
	if pub := e.Quantity.Published; pub != nil && stairs.Done() {
		lo, hi = min(lo, pub.Value), max(hi, pub.Value)
		c.Levels = append(c.Levels, Level{At: pub.Value, Text: g.t("published: %s", e.Quantity.Format(pub.Value)), Ink: Target, Dashed: true})
	}
	if v, _, ok := stairs.Threshold(); ok {
		c.Levels = append(c.Levels, Level{At: v, Text: g.t("your limit: %s", e.Quantity.Format(v)), Ink: Red})
	}
	c.X = LinearAxis(1, float64(max(10, len(trials))), 8, func(v float64) string { return fmt.Sprintf("%.0f", v) })
	c.X.Label = g.t("trial")
	c.Y = g.quantityAxis(e, lo, hi)
	c.Key = []Sign{
		{Mark: DotFilled, Ink: Yours, Text: g.t("right")}, {Mark: DotCross, Ink: Red, Text: g.t("wrong")},
		{Mark: DotFilled, Ringed: true, Ink: Yours, Text: g.t("turned here")},
	}
	p.Charts = append(p.Charts, c)
}

func (g *Game) quantityAxis(e *sheet.Exercise, lo, hi float64) Axis {
	a := RatioAxis(0.9*lo, 1.1*hi, 6, func(v float64) string { return g.lang.Value(e.Quantity.Format(v)) })
	a.Label = g.t(e.Quantity.Name)
	return a
}

// layTable draws a confusion table, with what it comes to below.
func (g *Game) layTable(p *paper, r ui.Rect, c *practice.Confusion, name string) {
	labels := c.Labels()
	if len(labels) == 0 {
		return
	}
	said := g.transmitted(c)
	h := p.height(said, p.body, false, r.W)
	text := r
	_, r = r.CutBottom(h, p.gap)
	t := Table{Name: name, RowsTitle: g.t("played"), ColumnsTitle: g.t("answered")}
	for _, a := range labels {
		t.Rows = append(t.Rows, g.lang.Value(a))
		row := make([]int, len(labels))
		for j, b := range labels {
			row[j] = c.Count(a, b)
		}
		t.Counts = append(t.Counts, row)
	}
	t.Columns = t.Rows
	r.W = min(r.W, float64(len(labels)+1)*9*p.body)
	r.H = min(r.H, float64(len(labels)+2)*4*p.body)
	t.Rect = r
	p.Tables = append(p.Tables, t)
	_, text = text.CutTop(r.H, p.gap)
	p.paragraph(text, said, p.body, false, Black)
	g.scene.Body += " " + said + " " + g.spelt(c)
}

// transmitted says how much the answers tell of what was played.
func (g *Game) transmitted(c *practice.Confusion) string {
	right, all := c.Right()
	s := g.t("%d of %d right.", right, all)
	if all < 8 {
		return s
	}
	bits, chance := c.Transmitted(), c.Spurious()
	s += " " + g.t("The answers carry %s bits of what was played (%d %%); mere guesses would seem to carry about %s.",
		oneDecimal(bits), int(math.Round(100*c.Relative())), oneDecimal(chance))
	return s
}

// spelt reads the table out.
func (g *Game) spelt(c *practice.Confusion) (s string) {
	for _, a := range c.Labels() {
		for _, b := range c.Labels() {
			if n := c.Count(a, b); n > 0 {
				s += g.t("Played %s, answered %s: %d times. ", a, b, n)
			}
		}
	}
	return s
}

// dayText writes a day on an axis, after ISO 8601, which every language reads.
func dayText(d time.Time, unit DateUnit) string {
	switch unit {
	case Years:
		return d.Format("2006")
	case Months:
		return d.Format("2006-01")
	}
	return d.Format("01-02")
}

func oneDecimal(v float64) string { return fmt.Sprintf("%.1f", v) }

func twoDecimals(v float64) string { return fmt.Sprintf("%.2f", v) }
