package view

import (
	"math"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// An imprint is a number that stands for charts and tables down to their dots:
// when it is another, one of them has changed. It takes less code than to copy
// and compare them, and no memory. Each step is one-to-one, so a single change
// always shows; several hide with a chance of 2^-64.
type imprint uint64

func printOf(charts []game.Chart, tables []game.Table) imprint {
	p := imprint(len(charts))
	for i := range charts {
		p.chart(&charts[i])
	}
	for i := range tables {
		p.table(&tables[i])
	}
	return p
}

func (p *imprint) number(v uint64) {
	h := (uint64(*p) ^ v) * 0x9E3779B97F4A7C15 // odd, 2^64 over the golden ratio
	*p = imprint(h ^ h>>32)
}

func (p *imprint) float(v float64) { p.number(math.Float64bits(v)) }

func (p *imprint) text(s string) {
	p.number(uint64(len(s)))
	for i := range len(s) {
		p.number(uint64(s[i]))
	}
}

func (p *imprint) flag(on bool) {
	if on {
		p.number(1)
	} else {
		p.number(0)
	}
}

func (p *imprint) rect(r ui.Rect) {
	p.float(r.X)
	p.float(r.Y)
	p.float(r.W)
	p.float(r.H)
}

func (p *imprint) chart(c *game.Chart) {
	p.rect(c.Rect)
	p.text(c.Name)
	p.axis(&c.X)
	p.axis(&c.Y)
	p.number(uint64(len(c.Levels)))
	for _, l := range c.Levels {
		p.float(l.At)
		p.text(l.Text)
		p.number(uint64(l.Ink))
		p.flag(l.Dashed)
	}
	p.number(uint64(len(c.Key)))
	for _, k := range c.Key {
		p.number(uint64(k.Mark))
		p.flag(k.Ringed)
		p.number(uint64(k.Ink))
		p.text(k.Text)
	}
	p.number(uint64(len(c.Series)))
	for i := range c.Series {
		s := &c.Series[i]
		p.flag(s.Joined)
		p.flag(s.Dashed)
		p.number(uint64(s.Ink))
		p.number(uint64(len(s.Points)))
		for _, d := range s.Points {
			p.float(d.X)
			p.float(d.Y)
			p.number(uint64(d.Mark))
			p.flag(d.Ringed)
		}
	}
}

func (p *imprint) axis(a *game.Axis) {
	p.float(a.Lo)
	p.float(a.Hi)
	p.flag(a.Log)
	p.text(a.Label)
	p.number(uint64(len(a.Ticks)))
	for _, t := range a.Ticks {
		p.float(t.At)
		p.text(t.Text)
	}
}

func (p *imprint) table(t *game.Table) {
	p.rect(t.Rect)
	p.text(t.Name)
	p.text(t.RowsTitle)
	p.text(t.ColumnsTitle)
	for _, names := range [...][]string{t.Rows, t.Columns} {
		p.number(uint64(len(names)))
		for _, s := range names {
			p.text(s)
		}
	}
	p.number(uint64(len(t.Counts)))
	for _, row := range t.Counts {
		p.number(uint64(len(row)))
		for _, n := range row {
			p.number(uint64(n))
		}
	}
}
