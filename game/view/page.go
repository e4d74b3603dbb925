package view

import (
	"partialcredit/game"
	"partialcredit/game/ui"
)

// square is the side of the squares of the paper, in CSS pixels.
const square = 10

// page draws all of the scene that lies still.
func (c *canvas) page(s *game.Scene, a axis) {
	c.to.Fill(c.paper.color())
	if s.Margin > 0 {
		c.along(s.Margin, 0, s.H, 2, c.margin)
	}
	if s.Trace != nil {
		c.squared(s.Trace.Rect, 0, s.Trace.Rect.H/2)
		c.folded(s.Trace.Rect, s.Trace.Covered)
	}
	if s.Partials != nil {
		c.squared(s.Partials.Rect, 0, a.floor-s.Partials.Rect.Y)
		c.axis(s.Partials.Rect, a)
		c.folded(s.Partials.Rect, s.Partials.Covered)
	}
	for i := range s.Charts {
		c.chart(&s.Charts[i])
	}
	for i := range s.Tables {
		c.table(&s.Tables[i])
	}
	c.code(s, false)
	if m := s.Meter; m.Rect.W > 0 {
		full := m.Rect
		full.W *= m.Level
		c.area(full, c.inks[game.Yours])
		c.ring(c.rounded(m.Rect, 0, 0.5), 1, c.inks[game.Black])
	}
	for _, t := range s.Texts {
		c.text(t)
	}
	for _, k := range s.Strokes {
		c.stroke(k)
	}
	c.widgets(s, false)
	c.flush()
}

// sheet draws the sheet that lies over the page, and what is on it.
func (c *canvas) sheet(s *game.Scene) {
	c.area(ui.Rect{W: s.W, H: s.H}, c.paper.times(0.6))
	shadow := s.Panel
	shadow.Y += 4
	c.mesh.Fill(c.rounded(shadow, 12, 2))
	c.mesh.Glow(c.rounded(shadow, 12, 2), 18*c.scale)
	c.put(c.shadow)
	c.fill(c.rounded(s.Panel, 12, 0), c.face)
	c.ring(c.rounded(s.Panel, 12, 0.5), 1, c.fifth)
	c.code(s, true)
	for _, t := range s.Over {
		c.text(t)
	}
	c.widgets(s, true)
	c.flush()
}

// within reports whether r lies on the panel.
func within(r, panel ui.Rect) bool {
	return panel.W > 0 && panel.Contains(r.X+r.W/2, r.Y+r.H/2)
}

// squared draws squared paper with its fifth lines through a point of the
// rectangle, and a frame.
func (c *canvas) squared(r ui.Rect, x, y float64) {
	for _, fifth := range [...]bool{false, true} {
		t := c.square
		if fifth {
			t = c.fifth
		}
		lines(r.W, x, fifth, func(d float64) { c.along(r.X+d, r.Y, r.Bottom(), 0.8, t) })
		lines(r.H, y, fifth, func(d float64) { c.across(r.X, r.Right(), r.Y+d, 0.8, t) })
	}
	c.along(r.X, r.Y, r.Bottom(), 1, c.fifth)
	c.along(r.Right(), r.Y, r.Bottom(), 1, c.fifth)
	c.across(r.X, r.Right(), r.Y, 1, c.fifth)
	c.across(r.X, r.Right(), r.Bottom(), 1, c.fifth)
}

// lines calls draw at every place from 0 to length that lies whole squares from
// the fifth line at origin: the fifth ones or the others.
func lines(length, origin float64, fifth bool, draw func(float64)) {
	for i := -int(origin / square); origin+float64(i)*square <= length; i++ {
		if (i%5 == 0) == fifth {
			draw(origin + float64(i)*square)
		}
	}
}

// folded draws the turned-down corner of the paper that covers the target.
func (c *canvas) folded(r ui.Rect, covered bool) {
	if !covered {
		return
	}
	const size = 18
	x, y, d := c.snap(r.Right()), c.snap(r.Y), c.hair(size)
	at := func(dx, dy float64) { c.points = append(c.points, point(x-d*dx, y+d*dy)) }
	c.points = c.points[:0]
	at(-0.06, -0.06)
	at(1, -0.06)
	at(-0.06, 1)
	c.fill(c.points, c.paper) // the corner is gone
	c.points = c.points[:0]
	at(1, 0)
	at(1, 1)
	at(0, 1)
	c.fill(c.points, c.face)
	c.ring(c.points, 1.2, c.inks[game.Faint])
}
