package view

import (
	"math"
	"strconv"

	"partialcredit/game"
	"partialcredit/game/plot"
	"partialcredit/game/ui"
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
	faintly    = -50  // dB: below this it is forgotten
)

// newAxis lays the axis out. before is the one of the last frame: a line that
// comes and goes must not turn the numbers over and over.
func newAxis(r ui.Rect, f0 float64, k *spectrum, before axis) axis {
	a := axis{f0: f0}
	a.levels = r.H >= 150 && r.W >= 280
	right := rightRoom
	if a.levels {
		right = levelRoom
	}
	a.X, a.W = r.X+leftRoom, r.W-leftRoom-right
	a.scaleLevels(r)

	a.Lo = max(20, f0)
	a.Hi = a.Lo * math.Min(16, math.Max(4, 20000/a.Lo))
	if r.W > 700 && 24*a.Lo <= 20000 {
		a.Hi = a.Lo * 24
	}
	for lowest := k.lowest(clearly); lowest < 0.9*a.Lo && a.Lo > 20; { // octaves, so that it seldom moves
		a.Lo /= 2
	}
	bound := float64(clearly)
	if before.f0 == 0 && before.W > 0 {
		bound = faintly
	}
	if k.odd(a, bound) {
		a.f0 = 0
	}
	return a
}

// scaleLevels makes ten decibels a whole number of squares, as many as leave
// room for 50; the floor lies whole tens under 0 dB.
func (a *axis) scaleLevels(r ui.Rect) {
	below, above := 30.0, 30.0 // for the numbers, and for the marks over a partial
	if r.H < 120 {
		below, above = 22, 20
	}
	squares := math.Floor((r.H - below - above) / square / 5)
	a.decibel = square * max(0.8, min(5, squares)) / 10
	a.floor = r.Bottom() - below
	tens := math.Floor((r.H - below - above) / (10 * a.decibel))
	a.top = a.floor - tens*10*a.decibel
}

// height is where a level is drawn, and whether it is above the floor.
func (a axis) height(db float64) (y float64, ok bool) {
	y = a.top - db*a.decibel
	return min(y, a.floor), y < a.floor
}

func (a axis) shows(hz float64) bool { return hz >= 0.97*a.Lo && hz <= 1.03*a.Hi }

// axis draws the floor and the numbers.
func (c *canvas) axis(r ui.Rect, a axis) {
	ink := c.inks[game.Black]
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
		c.set(n.Text, n.X, base, numberSize, false, false, game.Middle, ink)
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
		c.set(text, r.Right()-5, a.top+float64(db)*a.decibel+5, numberSize, false, false, game.Right, ink)
	}
}
