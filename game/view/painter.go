package view

import (
	"image"

	"github.com/hajimehoshi/ebiten/v2"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// A painter draws scenes. It keeps what lies still in two images of the size
// of the screen: the page and, where there is one, the sheet over it.
type painter struct {
	canvas      *canvas
	page, sheet *ebiten.Image
	still       still
	axis        axis
	spectrum    spectrum

	yours, target tracing
	copy          ebiten.DrawImageOptions
}

func newPainter() *painter {
	return &painter{canvas: newCanvas(newAtlas(1024))}
}

// draw brings the screen up to date.
func (p *painter) draw(to *ebiten.Image, s *game.Scene, th *theme, scale float64) {
	c := p.canvas
	size := to.Bounds().Size()
	if p.page == nil || p.page.Bounds().Size() != size {
		p.page = renew(p.page, size)
		p.sheet = renew(p.sheet, image.Point{})
		p.still.valid = false
	}
	moved := false
	if q := s.Partials; q != nil {
		moved = p.spectrum.update(q)
		p.axis = newAxis(q.Rect, q.F0, &p.spectrum, p.axis)
	}
	whole := p.still.update(s, th, scale, p.axis)
	if whole {
		c.theme, c.scale = th, scale
		c.to = p.page
		c.page(s, p.axis)
		p.drawSheet(s, size)
	}
	if whole || p.sheet != nil {
		p.copy.Blend = ebiten.BlendCopy
		p.blit(to, p.page, p.page.Bounds())
	}
	if s.Trace != nil {
		c.to = p.box(to, s.Trace.Rect, whole)
		p.target.trace(c, s.Trace.Rect, &s.Trace.Target, span(s, &s.Trace.Target), true)
		p.yours.trace(c, s.Trace.Rect, &s.Trace.Yours, span(s, &s.Trace.Yours), false)
		c.flush()
	}
	if s.Partials != nil && (moved || whole || p.sheet != nil) {
		c.to = p.box(to, s.Partials.Rect, whole)
		c.partials(&p.spectrum, p.axis)
		c.flush()
	}
	if p.sheet != nil {
		p.copy.Blend = ebiten.BlendSourceOver
		p.blit(to, p.sheet, p.sheet.Bounds())
	}
}

// drawSheet draws the sheet over the page anew, or puts it away.
func (p *painter) drawSheet(s *game.Scene, size image.Point) {
	if s.Panel.W <= 0 {
		p.sheet = renew(p.sheet, image.Point{})
		return
	}
	if p.sheet == nil {
		p.sheet = renew(nil, size)
	}
	p.sheet.Clear()
	p.canvas.to = p.sheet
	p.canvas.sheet(s)
}

// box is the part of the screen a picture is drawn in, its paper clean.
func (p *painter) box(to *ebiten.Image, r ui.Rect, clean bool) *ebiten.Image {
	area := p.canvas.pixels(r)
	if !clean && p.sheet == nil {
		p.copy.Blend = ebiten.BlendCopy
		p.blit(to, p.page, area)
	}
	return to.SubImage(area).(*ebiten.Image)
}

// blit copies an area of an image to the same place.
func (p *painter) blit(to, from *ebiten.Image, area image.Rectangle) {
	p.copy.GeoM.Reset()
	p.copy.GeoM.Translate(float64(area.Min.X), float64(area.Min.Y))
	to.DrawImage(from.SubImage(area).(*ebiten.Image), &p.copy)
}

// renew gives an image back and makes another, none of no size.
func renew(old *ebiten.Image, size image.Point) *ebiten.Image {
	if old != nil {
		old.Deallocate()
	}
	if size.X <= 0 || size.Y <= 0 {
		return nil
	}
	return ebiten.NewImage(size.X, size.Y)
}
