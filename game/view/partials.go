package view

import (
	"math"
	"strconv"

	"partialcredit/game"
	"partialcredit/game/mark"
	"partialcredit/game/plot"
)

// An axis is how partials are placed in their box. It is compared from frame to
// frame, so it holds plain values only.
type axis struct {
	plot.LogAxis         // hertz to CSS pixels
	f0           float64 // numbered by partial, in hertz where 0
	floor, top   float64 // of the stems, and the height of 0 dB
	decibel      float64 // CSS pixels
	levels       bool    // there is room for the numbers of the levels
}

const (
	numberSize = 14.0
	leftRoom   = 26.0 // CSS pixels left of partial 1
	rightRoom  = 20.0
	levelRoom  = 46.0 // for the numbers of the levels
	clearly    = -40  // dB: a line this strong that is no partial makes the axis one in hertz
	onePlace   = 2.0  // CSS pixels
	faintly    = -50  // dB: below this it is forgotten
)

// newAxis lays the axis out. before is the one of the last frame: a line that
// comes and goes must not turn the numbers over and over.
func newAxis(p *game.Partials, before axis) axis {
	r := p.Rect
	a := axis{f0: p.F0}
	below, above := 30.0, 30.0
	if r.H < 120 {
		below, above = 22, 20
	}
	// Ten decibels are a whole number of squares, as many as leave room for 50.
	squares := math.Floor((r.H - below - above) / square / 5)
	a.decibel = square * max(0.8, min(5, squares)) / 10
	a.floor, a.top = r.Bottom()-below, r.Y+above
	// The floor lies whole tens under 0 dB, on a line of the paper.
	tens := math.Floor((a.floor - a.top) / (10 * a.decibel))
	a.top = a.floor - tens*10*a.decibel
	a.levels = r.H >= 150 && r.W >= 280
	right := rightRoom
	if a.levels {
		right = levelRoom
	}
	a.X, a.W = r.X+leftRoom, r.W-leftRoom-right

	a.Lo = max(20, p.F0)
	a.Hi = a.Lo * math.Min(16, math.Max(4, 20000/a.Lo))
	if r.W > 700 && 24*a.Lo <= 20000 {
		a.Hi = a.Lo * 24
	}
	for lowest := lowest(p); lowest < 0.9*a.Lo && a.Lo > 20; { // octaves, so that it seldom moves
		a.Lo /= 2
	}
	bound := float64(clearly)
	if before.f0 == 0 && before.W > 0 {
		bound = faintly
	}
	if a.odd(p.Yours, bound) || a.odd(p.Target, bound) {
		a.f0 = 0
	}
	return a
}

// odd reports whether a line above the bound is no partial.
func (a axis) odd(lines []mark.Line, bound float64) bool {
	for _, l := range lines {
		if l.Number == 0 && l.DB > bound && a.shows(l.Hz) {
			return true
		}
	}
	return false
}

// lowest is the lowest frequency that is clearly there.
func lowest(p *game.Partials) float64 {
	hz := math.Inf(1)
	for _, lines := range [...][]mark.Line{p.Yours, p.Target} {
		for _, l := range lines {
			if l.DB > clearly {
				hz = min(hz, l.Hz)
			}
		}
	}
	return hz
}

// height is where a level is drawn, and whether it is above the floor.
func (a axis) height(db float64) (y float64, ok bool) {
	y = a.top - db*a.decibel
	return min(y, a.floor), y < a.floor
}

func (a axis) shows(hz float64) bool { return hz >= 0.97*a.Lo && hz <= 1.03*a.Hi }

// axis draws the floor and the numbers.
func (c *canvas) axis(p *game.Partials, a axis) {
	r := p.Rect
	c.across(r.X, r.Right(), a.floor, 1.5, c.inks[game.Faint])
	measure := func(s string) float64 { return width(s, numberSize, false) }
	var numbers []plot.Number
	if a.f0 > 0 {
		numbers = a.PartialNumbers(nil, a.f0, 1, measure)
	} else {
		numbers = a.HertzNumbers(nil, 1, measure)
	}
	base := min(a.floor+19, r.Bottom()-4)
	for _, n := range numbers {
		c.set(n.Text, n.X, base, numberSize, false, false, game.Middle, c.inks[game.Black])
	}
	if !a.levels {
		return
	}
	step := 10
	for float64(step)*a.decibel < 1.6*numberSize {
		step += 10
	}
	for db := 0; a.top+float64(db)*a.decibel < a.floor-numberSize; db += step {
		text := "0 dB"
		if db > 0 {
			text = "−" + strconv.Itoa(db)
		}
		c.set(text, r.Right()-5, a.top+float64(db)*a.decibel+5, numberSize, false, false, game.Right, c.inks[game.Black])
	}
}

// partials draws the lines of both sounds and the marks over them.
func (c *canvas) partials(p *game.Partials, a axis) {
	dot := 5.0
	if gap := spacing(a, p.Yours, p.Target); gap < 12 {
		dot = max(2.2, gap*0.42)
	}
	blue, grey := c.inks[game.Yours], c.inks[game.Target]
	for _, l := range p.Yours {
		if y, ok := a.height(l.DB); ok && a.shows(l.Hz) {
			x := c.scale * a.At(l.Hz)
			stem := min(3.5, 0.75*dot)
			c.points = append(c.points[:0], point(x, c.scale*y), point(x, c.scale*(a.floor-stem/2)))
			c.pen(stem).Line(&c.mesh, c.points)
			c.mesh.Fill(c.circle(a.At(l.Hz), y, dot))
		}
	}
	c.put(blue)
	for _, l := range p.Target {
		if y, ok := a.height(l.DB); ok && a.shows(l.Hz) {
			c.pen(1.7).Ring(&c.mesh, c.circle(a.At(l.Hz), y, 1.4*dot))
		}
	}
	c.put(grey)
	for _, m := range p.Marked {
		if !a.shows(m.Hz) {
			continue
		}
		y, _ := a.height(max(loudest(p.Yours, m.Hz), loudest(p.Target, m.Hz)))
		kind := game.Cross
		if m.Within {
			kind = game.Tick
		}
		c.stroke(game.Stroke{Kind: kind, X: a.At(m.Hz), Y: y - 2*dot - 7, R: max(3.5, 1.3*dot)})
	}
}

// loudest is the level of what is drawn at a frequency or right beside it.
func loudest(lines []mark.Line, hz float64) float64 {
	db := math.Inf(-1)
	for _, l := range lines {
		if math.Abs(l.Hz/hz-1) < 0.015 { // a quarter of the spacing at partial 16
			db = max(db, l.DB)
		}
	}
	return db
}

// spacing is the least distance between neighbouring lines of one sound. Lines
// that beat stand in one place.
func spacing(a axis, sounds ...[]mark.Line) float64 {
	least := math.Inf(1)
	for _, lines := range sounds {
		before := math.Inf(-1)
		for _, l := range lines {
			if _, ok := a.height(l.DB); ok && a.shows(l.Hz) {
				x := a.At(l.Hz)
				if x-before > onePlace {
					least = min(least, x-before)
				}
				before = x
			}
		}
	}
	return least
}
