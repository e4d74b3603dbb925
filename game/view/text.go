package view

import (
	"math"

	"partialcredit/game"
)

// text sets a line of text.
func (c *canvas) text(t game.Text) {
	c.set(t.String, t.X, t.Y, t.Size, t.Bold, t.Slant, t.Align, c.inks[t.Ink])
}

// set sets a line of text with its baseline on whole pixels.
func (c *canvas) set(s string, x, y, size float64, isBold, slanted bool, align game.Align, t tint) {
	cut := cut{isBold, slanted, int(math.Round(4 * size * c.scale))}
	c.atlas.use(cut)
	switch align {
	case game.Middle:
		x -= width(s, size, isBold) / 2
	case game.Right:
		x -= width(s, size, isBold)
	}
	pen, base := x*c.scale, float32(c.snap(y))
	pieces := letters.lay(s, isBold)
	for i := range pieces {
		p := &pieces[i]
		places := 1.0
		if p.fine() {
			places = float64(cut.places())
		}
		place := math.Floor(pen*places + 0.5)
		whole := math.Floor(place / places)
		within := int(place - whole*places)
		sprite, ok := c.atlas.piece(cut, p, within)
		if !ok { // full: draw what there is, and begin anew
			c.flush()
			c.atlas.renew()
			sprite, _ = c.atlas.piece(cut, p, within)
		}
		if sprite.w > 0 {
			ink := t
			if sprite.coloured {
				ink = t.own()
			}
			c.quad(float32(whole)+sprite.dx, base+sprite.dy, sprite.w, sprite.h, sprite.x, sprite.y, sprite.w, sprite.h, ink)
		}
		pen += p.advance * size * c.scale
	}
}
