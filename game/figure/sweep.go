package figure

import (
	"math"
	"strconv"

	"partialcredit/game/plot"
	"partialcredit/synth/spectrum"
)

const (
	cellWide, cellTall = 3, 1.5 // units
	shades             = 20     // of the ink
	sweepRange         = 60.0   // dB, from the strongest to bare paper
)

// Sweep draws a spectrogram of a sound that is moved along a quantity: across lies the quantity,
// upwards the frequency on a logarithmic axis, and the more ink, the more level, from nothing at
// -60 dB to all of it for the strongest line of the whole sweep. at gives the sound at a place, 0 to
// 1; it is asked from left to right.
func Sweep(o Options, along Along, at func(place float64) Signal) *Drawing {
	p := newPage(o, o.Words.whole().Sweep)
	b := p.body
	left, below := 4.2*p.text, 3*p.text
	cw, ch := max(2, math.Round(cellWide*p.u)), max(2, math.Round(cellTall*p.u))
	left = math.Ceil(left/p.square) * p.square
	below = math.Ceil(below/p.square) * p.square
	right := 0.0
	if b.W > 24*p.text {
		right = math.Ceil(4.2*p.text/p.square) * p.square
	}
	field := Box{b.X + left, b.Y, b.W - left - right, b.H - below}
	columns := max(1, int(field.W/cw))
	all := make([]powers, columns)
	for i := range all {
		all[i] = powersOf(at((float64(i) + 0.5) / float64(columns)))
	}
	axis := pitch(all, field)
	rows := max(1, int(field.H/ch))
	p.cells(field, all, axis, rows, cw, ch)
	p.frame(field, along, axis)
	if right > 0 {
		p.shading(field)
	}
	return p.Drawing
}

// powers is the spectrum of one column: level in decibels for each bin.
type powers struct {
	db      []float64
	spacing float64 // Hz
}

func powersOf(s Signal) powers {
	n := fast(len(s.Samples))
	if n < 256 {
		return powers{}
	}
	w := spectrum.BlackmanHarris
	x := spectrum.NewReal(n).Coefficients(s.Samples[len(s.Samples)-n:], w.Samples(n))
	out := powers{make([]float64, len(x)), s.Rate / float64(n)}
	scale := 2 / (float64(n) * w.Gain())
	for k, c := range x {
		out.db[k] = spectrum.PowerDB((real(c)*real(c)+imag(c)*imag(c))*scale*scale + 1e-30)
	}
	return out
}

// between is the greatest level from one frequency to another; where no bin lies between them, that
// of a straight line through the two beside them.
func (q *powers) between(lo, hi float64) float64 {
	from, to := int(math.Ceil(lo/q.spacing)), int(math.Floor(hi/q.spacing))
	if from > to {
		at := (lo + hi) / 2 / q.spacing
		k := int(at)
		if k+1 >= len(q.db) {
			return math.Inf(-1)
		}
		return q.db[k] + (at-float64(k))*(q.db[k+1]-q.db[k])
	}
	most := math.Inf(-1)
	for k := max(0, from); k <= to && k < len(q.db); k++ {
		most = max(most, q.db[k])
	}
	return most
}

// strongest is the greatest level of all.
func strongest(all []powers) float64 {
	most := math.Inf(-1)
	for i := range all {
		most = max(most, all[i].between(lowest, highest))
	}
	return most
}

// pitch is the axis of frequency, upwards from the lower edge of the field: from under the lowest
// line that is strong anywhere to the highest, two octaves at least.
func pitch(all []powers, field Box) plot.LogAxis {
	top := strongest(all)
	lo, hi := highest, lowest
	for i := range all {
		q := &all[i]
		for k, db := range q.db {
			hz := float64(k) * q.spacing
			if hz < lowest || hz > highest {
				continue
			}
			if db > top-30 {
				lo = min(lo, hz)
			}
			if db > top-50 {
				hi = max(hi, hz)
			}
		}
	}
	if lo > hi {
		lo, hi = 50, 16000 // silence
	}
	lo = max(lowest, 0.8*lo)
	hi = min(16000, max(1.1*hi, 4*lo))
	return plot.LogAxis{Lo: min(lo, hi/4), Hi: hi, W: field.H}
}

// cells draws the ink: boxes of each shade at once, alike ones side by side as one.
func (p *page) cells(field Box, all []powers, axis plot.LogAxis, rows int, cw, ch float64) {
	top := strongest(all)
	if math.IsInf(top, -1) || top < -180 {
		return
	}
	by := make([][]Box, shades+1)
	bottom := field.Y + field.H
	edge := func(row int) float64 {
		return axis.Lo * math.Pow(axis.Hi/axis.Lo, math.Min(1, float64(row)*ch/field.H))
	}
	for row := range rows {
		lo, hi := edge(row), edge(row+1)
		before := 0
		for i := range all {
			db := all[i].between(lo, hi) - top
			shade := int(math.Round(shades * max(0, min(1, 1+db/sweepRange))))
			if shade > 0 && shade == before {
				last := &by[shade][len(by[shade])-1]
				last.W += cw
			} else if shade > 0 {
				by[shade] = append(by[shade], Box{field.X + float64(i)*cw, bottom - float64(row+1)*ch, cw, ch})
			}
			before = shade
		}
	}
	for shade, boxes := range by {
		p.boxes(p.c.yours, float64(shade)/shades, boxes...)
	}
}

// frame draws the two axes.
func (p *page) frame(field Box, along Along, axis plot.LogAxis) {
	bottom := field.Y + field.H
	p.line(p.c.faint, 1.2, plot.Point{X: field.X, Y: field.Y}, plot.Point{X: field.X, Y: bottom}, plot.Point{X: field.X + field.W, Y: bottom})
	tick := 0.5 * p.square
	for _, n := range axis.HertzNumbers(nil, p.u, func(string) float64 { return p.text }) {
		y := bottom - n.X
		p.line(p.c.faint, 1.2, plot.Point{X: field.X - tick, Y: y}, plot.Point{X: field.X, Y: y})
		p.label(field.X-1.5*tick, y+0.35*p.text, n.Text, Shape{Colour: p.c.black, Align: Right})
	}
	widest := 0.0
	for _, v := range along.ticks(4) {
		widest = max(widest, width(along.Text(v), p.text))
	}
	for _, v := range along.ticks(max(2, int(field.W/(widest+2*p.text)))) {
		x := field.X + field.W*along.place(v)
		p.line(p.c.faint, 1.2, plot.Point{X: x, Y: bottom}, plot.Point{X: x, Y: bottom + tick})
		p.label(x, bottom+tick+1.1*p.text, along.Text(v), Shape{Colour: p.c.black, Align: Middle})
	}
	p.label(field.X+field.W/2, bottom+tick+2.35*p.text, along.Name, Shape{Colour: p.c.faint, Align: Middle, Bold: true})
}

// shading says which level each shade is.
func (p *page) shading(field Box) {
	x := field.X + field.W + 1.5*p.square
	side := p.square
	step := math.Min(3*side, field.H/4)
	for i, db := range [...]int{0, -20, -40, -60} {
		y := field.Y + float64(i)*step
		if alpha := 1 + float64(db)/sweepRange; alpha > 0 {
			p.boxes(p.c.yours, alpha, Box{x, y, side, side})
		}
		p.line(p.c.faint, 0.6, plot.Point{X: x, Y: y}, plot.Point{X: x + side, Y: y}, plot.Point{X: x + side, Y: y + side}, plot.Point{X: x, Y: y + side}, plot.Point{X: x, Y: y})
		text := "0 dB"
		if db < 0 {
			text = "−" + strconv.Itoa(-db)
		}
		p.label(x+1.3*side, y+side/2+0.35*p.text, text, Shape{Colour: p.c.black})
	}
}
