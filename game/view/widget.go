package view

import (
	"math"

	"partialcredit/game"
	"partialcredit/game/plot"
	"partialcredit/game/ui"
)

func point(x, y float64) plot.Point { return plot.Point{X: x, Y: y} }

const corner = 10 // radius of the corners of a button

// widgets draws the widgets that lie on the panel, or those that do not; the
// line round the one with the focus comes last, over its neighbours.
func (c *canvas) widgets(s *game.Scene, onPanel bool) {
	var focused *ui.Widget
	for i := range s.Widgets {
		w := &s.Widgets[i]
		if within(w.Rect, s.Panel) != onPanel {
			continue
		}
		c.widget(w)
		if w.ID == s.Focus {
			focused = w
		}
	}
	if focused != nil {
		c.focus(focused)
	}
}

func (c *canvas) widget(w *ui.Widget) {
	switch {
	case w.Role == ui.Ruled:
		c.ruler(w)
	case w.Role == ui.Written:
		c.written(w)
	case w.Round:
		c.numbered(w)
	case w.Plain:
		c.row(w)
	default:
		c.button(w)
	}
}

// caption is what stands on a button.
func caption(w *ui.Widget) string {
	if w.Face != "" {
		return w.Face
	}
	return w.Label
}

// button draws a button: framed; filled with the ink of the learner's own while
// it is on; filled dark where it goes on; faint where it is disabled.
func (c *canvas) button(w *ui.Widget) {
	ink, shape := c.inks[game.Black], c.rounded(w.Rect, corner, 0)
	frame := ink
	switch {
	case w.Disabled:
		ink, frame = c.off, c.fifth
	case w.On:
		frame = c.inks[game.Yours]
		c.fill(shape, frame)
		ink = c.inks[game.Light]
	case w.Primary:
		c.fill(shape, frame)
		ink = c.inks[game.Light]
	default:
		c.fill(shape, c.face)
	}
	c.ring(c.rounded(w.Rect, corner, 0.75), 1.5, frame)
	text := caption(w)
	size := min(max(14, math.Round(0.3*w.Rect.H)), w.Rect.H/2)
	if text == "−" || text == "+" {
		size = 0.5 * w.Rect.H
	}
	for size > 14 && width(text, size, true) > w.Rect.W-12 {
		size--
	}
	text = fit(text, size, true, w.Rect.W-6)
	c.set(text, w.Rect.X+w.Rect.W/2, w.Rect.Y+w.Rect.H/2+0.36*size, size, true, false, game.Middle, ink)
}

// numbered draws the number of an exercise in the margin: ringed while it is
// at work, ticked where it has marks.
func (c *canvas) numbered(w *ui.Widget) {
	x, y := w.Rect.X+w.Rect.W/2, w.Rect.Y+w.Rect.H/2
	radius := min(w.Rect.W, w.Rect.H)/2 - 3
	c.fill(c.circle(x, y, radius), c.face)
	c.ring(c.circle(x, y, radius-0.5), 1.2, c.inks[game.Faint])
	ink := c.inks[game.Black]
	if w.On {
		ink = c.inks[game.Yours]
		c.ring(c.circle(x, y, radius+3), 2.4, ink)
	}
	size := math.Round(0.85 * radius)
	c.set(caption(w), x, y+0.36*size, size, w.On, false, game.Middle, ink)
	if w.Ticked {
		c.stroke(game.Stroke{Kind: game.Tick, X: x + 0.9*radius, Y: y - 0.55*radius, R: 0.5 * radius})
	}
}

// row draws a line of a list.
func (c *canvas) row(w *ui.Widget) {
	r := w.Rect
	size := min(18, max(15, math.Round(0.36*r.H)))
	base := r.Y + r.H/2 + 0.36*size
	ink := c.inks[game.Black]
	if w.On {
		ink = c.inks[game.Yours]
		c.area(ui.Rect{X: r.X, Y: r.Y + 4, W: 3, H: r.H - 8}, ink)
	}
	if w.Disabled {
		ink = c.off
	}
	c.across(r.X, r.Right(), r.Bottom(), 1, c.fifth)
	room := r.W - 20
	if w.Note != "" {
		c.set(w.Note, r.Right()-8, base, size, true, true, game.Right, c.inks[game.Red])
		room -= width(w.Note, size, true) + 12
	}
	c.set(fit(caption(w), size, w.On, room), r.X+12, base, size, w.On, false, game.Left, ink)
}

// focus draws a double line round a widget. Rulers stand close between their
// buttons, so theirs runs along the edge there.
func (c *canvas) focus(w *ui.Widget) {
	black, blue := c.inks[game.Black], c.inks[game.Yours]
	if w.Round {
		x, y, radius := w.Rect.X+w.Rect.W/2, w.Rect.Y+w.Rect.H/2, min(w.Rect.W, w.Rect.H)/2
		c.ring(c.circle(x, y, radius+5), 2.5, black)
		c.ring(c.circle(x, y, radius+2), 1.2, blue)
		return
	}
	r := w.Rect.Inset(-4.5)
	if w.Role == ui.Ruled {
		r.X, r.W = w.Rect.X-1.25, w.Rect.W+2.5
	}
	if w.Role == ui.Written {
		r = w.Field().Inset(-4.5)
	}
	const between = 2.5
	c.ring(c.rounded(r, corner+4, 0), 2.5, black)
	c.ring(c.rounded(r.Inset(between), corner+4-between, 0), 1.2, blue)
}
