package view

import (
	"fmt"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// written draws the label of a text field and the frame round it: the field itself
// is the page's own.
func (c *canvas) written(w *ui.Widget) {
	const size = 15
	ink, frame := c.inks[game.Black], c.inks[game.Faint]
	if w.Disabled {
		ink, frame = c.off, c.fifth
	}
	label := fit(caption(w), size, true, w.Rect.W)
	c.set(label, w.Rect.X, w.Rect.Y+ui.TextLabel-10, size, true, false, game.Left, ink)
	c.fill(c.rounded(w.Field(), corner, 0), c.face)
	c.ring(c.rounded(w.Field(), corner, 0.75), 1.5, frame)
}

// Field gives the colours of a text field as they are written in style sheets: its
// ground, what is written, and the hint where nothing is.
func Field(dark, strong bool) (ground, ink, hint string) {
	t := themeOf(dark, strong)
	return t.face.hex(), t.inks[game.Black].hex(), t.inks[game.Faint].hex()
}

// hex is the inverse of rgb.
func (t tint) hex() string {
	part := func(v float32) uint8 { return uint8(v*255 + 0.5) }
	return fmt.Sprintf("#%02X%02X%02X", part(t[0]), part(t[1]), part(t[2]))
}
