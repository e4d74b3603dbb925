package figure

import (
	"math"

	"partialcredit/game/plot"
)

// Trace draws the trace of a sound, two to three periods of it, and dashed over the same time base
// that of a target, which may be nil. Both are made equally loud.
func Trace(o Options, yours Signal, target *Signal) *Drawing {
	p := newPage(o, o.Words.whole().Trace)
	p.trace(p.heading(p.body, "", target != nil), yours, target)
	return p.Drawing
}

// Partials draws the lines of a sound as stems on a logarithmic axis of frequency, numbered by
// partial, or in hertz where a strong line is none; ten decibels are a whole number of squares. A
// target, which may be nil, stands beside it dashed. Both are made equally loud.
func Partials(o Options, yours Signal, target *Signal) *Drawing {
	p := newPage(o, o.Words.whole().Partials)
	p.partials(p.heading(p.body, "", target != nil), yours, target)
	return p.Drawing
}

// Both draws the trace over the partials.
func Both(o Options, yours Signal, target *Signal) *Drawing {
	w := o.Words.whole()
	p := newPage(o, w.Trace+", "+w.Partials)
	half := math.Floor(p.body.H/2/p.square) * p.square
	upper := Box{p.body.X, p.body.Y, p.body.W, half}
	lower := Box{p.body.X, p.body.Y + half, p.body.W, p.body.H - half}
	p.trace(p.heading(upper, w.Trace, target != nil), yours, target)
	p.partials(p.heading(lower, w.Partials, false), yours, target)
	return p.Drawing
}

// timeBase is how many pixels a period takes: a whole number of squares, of fifth lines where
// possible, two to three periods in all.
func (p *page) timeBase(w float64) float64 {
	for _, unit := range [...]float64{5 * p.square, p.square} {
		n := math.Floor(w / unit)
		if k := math.Ceil(n / 3); k >= 1 && w/(k*unit) >= 2 && w/(k*unit) <= 3.2 {
			return k * unit
		}
	}
	return w / 2.5
}

func (p *page) trace(b Box, yours Signal, target *Signal) {
	clock := &yours
	if target != nil {
		clock = target
		if yours.Cycle == nil || target.Cycle == nil { // both begin by the same rule
			other := *target
			yours.Cycle, other.Cycle = nil, nil
			target = &other
		}
	}
	row := math.Ceil(2.2*p.text/p.square) * p.square // for what is written below
	if b.H < 4*row {
		row = 0
	}
	b.H -= row
	base := p.timeBase(b.W)
	seconds := clock.period() / clock.Rate * b.W / base
	lead := 2 * p.square
	gainYours, gainTarget := matched(&yours, target)
	low, high := extent(&yours, gainYours)
	if target != nil {
		l, h := extent(target, gainTarget)
		low, high = min(low, l), max(high, h)
	}
	edge := 4 * p.u
	scale := (b.H - 2*edge) * 0.94 / max(high-low, 1e-6)
	// The middle of what is drawn comes into the middle of the box, zero onto a square.
	zero := b.Y + math.Round((b.H/2+scale*(high+low)/2)/p.square)*p.square
	scale = min(scale, (zero-b.Y-edge)/max(high, 1e-6), (b.Y+b.H-edge-zero)/max(-low, 1e-6))
	p.line(p.c.faint, 0.8, plot.Point{X: b.X, Y: zero}, plot.Point{X: b.X + b.W, Y: zero})
	column := max(0.5, p.u/4)
	if target != nil {
		if points := target.wave(b, seconds*target.Rate, lead, zero, scale*gainTarget, column); len(points) > 1 {
			p.dashed(p.c.target, pencil, points...)
		}
	}
	if points := yours.wave(b, seconds*yours.Rate, lead, zero, scale*gainYours, column); len(points) > 1 {
		if target == nil && p.pencil {
			p.dashed(p.c.target, pencil, points...)
		} else {
			p.line(p.c.yours, inkWidth, points...)
		}
	}
	if row > 0 && clock.Hz > 0 {
		p.period(b, lead, base, clock)
	}
}

// period marks one period and says how long it is.
func (p *page) period(b Box, lead, base float64, clock *Signal) {
	y, tick := b.Y+b.H+0.8*p.square, 0.5*p.square
	from, to := b.X+lead, b.X+lead+base
	at := func(x, y float64) plot.Point { return plot.Point{X: x, Y: y} }
	p.line(p.c.faint, 1.2, at(from, y-tick), at(from, y), at(to, y), at(to, y-tick))
	text := p.words.Period + ": " + p.words.number(1000/clock.Hz, 3) + " ms"
	if wide := width(text, p.text); from+base/2-wide/2 < b.X {
		p.label(b.X, y+1.1*p.text, text, Shape{Colour: p.c.black})
		return
	}
	p.label(from+base/2, y+1.1*p.text, text, Shape{Colour: p.c.black, Align: Middle})
}
