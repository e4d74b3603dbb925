package view

import (
	"math"

	"partialcredit/game"
	"partialcredit/game/plot"
	"partialcredit/game/ui"
)

// ruler draws a ruled scale: what it is called, its value, the scale with its
// ends, and a drop that hangs from the value.
func (c *canvas) ruler(w *ui.Widget) {
	r, k := w.Rect, &w.Ruler
	x0, x1, y := k.Scale.X, k.Scale.Right(), k.Scale.Y+k.Scale.H/2
	size := min(20, max(14, math.Round(0.2*r.H)))
	base := r.Y + 0.95*size
	ink, faint := c.inks[game.Black], c.inks[game.Faint]

	c.set(k.Text, x1, base, size+1, true, false, game.Right, c.inks[game.Yours])
	label := fit(w.Label, size, true, x1-x0-width(k.Text, size+1, true)-10)
	c.set(label, x0, base, size, true, false, game.Left, ink)

	long := max(4, min(14, y-base-5))
	ticks, longs := k.Ticks()
	for i, pos := range ticks {
		h := long
		if !longs[i] {
			h = math.Round(long / 2)
		}
		c.along(x0+pos*(x1-x0), y-h, y, 1, ink)
	}
	c.across(x0, x1, y, 1.5, ink)
	height := min(30, max(14, r.Bottom()-y-1))
	at := x0 + max(0, min(1, k.Fraction()))*(x1-x0)
	if r.Bottom()-y >= 22 { // the drop hangs where the ends are written: a value at an end is read above
		clear := 0.45 * height
		if at-clear > x0+width(k.MinText, endSize, false) {
			c.set(k.MinText, x0, y+19, endSize, false, false, game.Left, faint)
		}
		if at+clear < x1-width(k.MaxText, endSize, false) {
			c.set(k.MaxText, x1, y+19, endSize, false, false, game.Right, faint)
		}
	}
	c.drop(at, y, height)
}

const endSize = 14 // CSS pixels: of the ends of the scale

// drop draws a handle: a drop of ink with its tip at (x, y).
func (c *canvas) drop(x, y, height float64) {
	radius := 0.4 * height
	c.fill(c.drops(x, y-2.5, height+4, radius+2), c.paper)
	c.fill(c.drops(x, y-0.5, height, radius), c.inks[game.Yours])
}

// drops collects the outline of a drop: a circle and the tangents from its tip.
func (c *canvas) drops(x, y, height, radius float64) []plot.Point {
	away := height - radius // from the tip to the middle
	turn := math.Acos(radius/away) / (math.Pi / 2)
	c.points = append(c.points[:0], point(x*c.scale, y*c.scale))
	c.arc(point(x*c.scale, (y+away)*c.scale), radius*c.scale, turn-1, 3-turn)
	return c.points
}
