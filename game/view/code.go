package view

import (
	"partialcredit/game"
	"partialcredit/game/code"
	"partialcredit/game/ui"
)

// The colours of a code in every theme: readers want dark on light (ISO/IEC 18004, 9.1), and many
// read nothing else.
var codeDark, codeLight = rgb(0x000000), rgb(0xFFFFFF)

// code draws the scene's QR code, if it has one and it lies there: on the page or over it.
func (c *canvas) code(s *game.Scene, over bool) {
	if s.Code == nil || s.Code.Code.Size == 0 || within(s.Code.Rect, s.Panel) != over {
		return
	}
	x, y, module := c.placed(s.Code.Rect, s.Code.Code.Side())
	side := float32(module * s.Code.Code.Side())
	c.quad(float32(x), float32(y), side, side, whiteAt, whiteAt, 0, 0, codeLight)
	s.Code.Code.Runs(func(col, row, n int) {
		c.quad(float32(x+module*(col+code.Quiet)), float32(y+module*(row+code.Quiet)), float32(module*n), float32(module),
			whiteAt, whiteAt, 0, 0, codeDark)
	})
}

// placed finds the corner and the size of a module for a square of so many, in whole pixels of the
// device, so that every module is as wide as the next.
func (c *canvas) placed(r ui.Rect, modules int) (x, y, module int) {
	p := c.pixels(r)
	module = max(1, min(p.Dx(), p.Dy())/modules)
	return p.Min.X + (p.Dx()-module*modules)/2, p.Min.Y + (p.Dy()-module*modules)/2, module
}
