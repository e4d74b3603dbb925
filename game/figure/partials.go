package figure

import (
	"math"
	"strconv"

	"partialcredit/game/plot"
)

// levels places levels and frequencies in a box.
type levels struct {
	plot.LogAxis         // hertz
	f0           float64 // 0 where the axis is in hertz
	loudest      float64 // what counts as 0 dB
	top, floor   float64
	decibel      float64 // pixels
}

const (
	leftRoom  = 26.0 // units left of partial 1
	rightRoom = 46.0 // for the numbers of the levels
	clearly   = -40  // dB: a line this strong that is no partial makes the axis one in hertz
)

func (p *page) partials(b Box, yours Signal, target *Signal) {
	gainYours, gainTarget := matched(&yours, target)
	mine := yours.lines(gainYours)
	hz, rate := yours.Hz, yours.Rate
	var wanted []line
	if target != nil {
		wanted = target.lines(gainTarget)
		hz, rate = target.Hz, min(rate, target.Rate)
	}
	a := p.levels(b, hz, rate, mine, wanted)
	p.scale(b, a)
	if target == nil && p.pencil {
		mine, wanted = nil, mine
	}
	p.stems(a, mine, wanted)
}

// levels lays the axes out.
func (p *page) levels(b Box, hz, rate float64, sounds ...[]line) levels {
	a := levels{f0: hz, loudest: math.Inf(-1)}
	for _, lines := range sounds {
		for _, l := range lines {
			a.loudest = max(a.loudest, l.db)
		}
	}
	below := math.Ceil(1.8*p.text/p.square) * p.square
	above := math.Ceil(12*p.u/p.square) * p.square
	squares := math.Floor((b.H - below - above) / p.square / 6)
	a.decibel = p.square * max(0.5, min(5, squares)) / 10
	a.floor = b.Y + b.H - below
	a.top = a.floor - math.Floor((b.H-below-above)/(10*a.decibel))*10*a.decibel

	left, right := leftRoom*p.u, max(rightRoom*p.u, 3.4*p.text)
	if b.W > 40*p.text { // for what is numbered, too
		right = max(right, 1.2*p.text+width(p.words.Partial, p.text))
	}
	a.X, a.W = b.X+left, b.W-left-right
	if hz <= 0 {
		a.Lo, a.Hi, a.f0 = 20, min(highest, rate/2), 0
		return a
	}
	a.Lo = hz
	a.Hi = a.Lo * math.Min(16, math.Max(4, highest/a.Lo))
	if b.W > 700*p.u && 24*a.Lo <= highest {
		a.Hi = a.Lo * 24
	}
	for _, lines := range sounds {
		for _, l := range lines {
			for l.db-a.loudest > clearly && l.hz < 0.9*a.Lo && a.Lo > 20 {
				a.Lo /= 2
			}
		}
	}
	for _, lines := range sounds {
		for _, l := range lines {
			if l.number == 0 && l.db-a.loudest > clearly && a.shows(l.hz) {
				a.f0 = 0
			}
		}
	}
	return a
}

func (a *levels) shows(hz float64) bool { return hz >= 0.97*a.Lo && hz <= 1.03*a.Hi }

// at is where a line is drawn, and whether it is.
func (a *levels) at(l line) (x, y float64, ok bool) {
	y = a.top - (l.db-a.loudest)*a.decibel
	return a.At(l.hz), y, y < a.floor && a.shows(l.hz)
}

// scale draws the floor and the numbers.
func (p *page) scale(b Box, a levels) {
	p.line(p.c.faint, 1.5, plot.Point{X: b.X, Y: a.floor}, plot.Point{X: b.X + b.W, Y: a.floor})
	measure := func(s string) float64 { return width(s, p.text) }
	var numbers []plot.Number
	if a.f0 > 0 {
		numbers = a.PartialNumbers(nil, a.f0, p.u, measure)
	} else {
		numbers = a.HertzNumbers(nil, p.u, measure)
	}
	base := a.floor + 1.3*p.text
	room := b.X + b.W
	if wide := width(p.words.Partial, p.text); a.f0 > 0 && a.X+a.W+p.text+wide < room {
		p.label(room, base, p.words.Partial, Shape{Colour: p.c.faint, Align: Right})
	}
	for _, n := range numbers {
		p.label(n.X, base, n.Text, Shape{Colour: p.c.black, Align: Middle})
	}
	step := 10
	for float64(step)*a.decibel < 1.3*p.text {
		step *= 2
	}
	for db := 0; a.top+float64(db)*a.decibel < a.floor-p.text; db += step {
		text := "0 dB"
		if db > 0 {
			text = "−" + strconv.Itoa(db)
		}
		p.label(room, a.top+float64(db)*a.decibel+0.35*p.text, text, Shape{Colour: p.c.black, Align: Right})
	}
}

// stems draws the lines: yours as stems with filled dots, the target dashed with open circles. Yours
// alone is drawn as yours.
func (p *page) stems(a levels, mine, wanted []line) {
	dot := 5 * p.u
	if gap := min(a.spacing(mine), a.spacing(wanted)); gap < 12*p.u {
		dot = max(2.2*p.u, 0.42*gap)
	}
	for _, l := range wanted {
		if x, y, ok := a.at(l); ok && y+1.4*dot < a.floor {
			p.dashed(p.c.target, pencil, plot.Point{X: x, Y: y + 1.4*dot}, plot.Point{X: x, Y: a.floor})
		}
	}
	for _, l := range mine {
		if x, y, ok := a.at(l); ok {
			stem := min(3.5*p.u, 0.75*dot)
			p.line(p.c.yours, stem/p.u, plot.Point{X: x, Y: y}, plot.Point{X: x, Y: max(y, a.floor-stem/2)})
			p.dot(p.c.yours, x, y, dot)
		}
	}
	for _, l := range wanted {
		if x, y, ok := a.at(l); ok {
			p.ring(p.c.target, x, y, 1.4*dot)
		}
	}
}

// spacing is the least distance between neighbouring lines that are shown. Lines that beat stand in
// one place.
func (a *levels) spacing(lines []line) float64 {
	onePlace := a.W / math.Log2(a.Hi/a.Lo) * 0.045 // less than between partials 24 and 23
	least, before := math.Inf(1), math.Inf(-1)
	for _, l := range lines {
		if x, _, ok := a.at(l); ok {
			if x-before > onePlace {
				least = min(least, x-before)
			}
			before = x
		}
	}
	return least
}
