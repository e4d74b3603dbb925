package view

import (
	"image"
	"image/draw"
	"math"

	"github.com/hajimehoshi/ebiten/v2"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// slant is how far a handwritten figure leans: x for each y (design choice, 12°).
const slant = 0.21

// A cut is one form of a typeface: what glyphs are kept by.
type cut struct {
	bold, slanted bool
	size          int // of the em in quarters of a pixel of the device
}

func (c cut) em() float64 { return float64(c.size) / 4 }

// places is how many horizontal places within a pixel a glyph is kept for:
// small letters need more for even spacing.
func (c cut) places() int {
	switch em := c.em(); {
	case em < 20:
		return 4
	case em < 40:
		return 2
	}
	return 1
}

type glyphKey struct {
	cut   cut
	glyph glyphID
	place int
}

// A sprite is where a glyph lies in the atlas, and where its corner stands
// from the origin of the glyph.
type sprite struct {
	x, y, w, h float32
	dx, dy     float32
	coloured   bool // and wants no ink
}

// An atlas is the texture from which everything is drawn: a white dot in its
// corner, then glyphs, shelf by shelf.
type atlas struct {
	image       *ebiten.Image
	side        int
	sprites     map[glyphKey]sprite
	lettered    map[letteredKey]sprite
	x, y, shelf int // where the next glyph goes, and how tall this shelf is

	used    map[cut]bool
	warming []warming // cuts whose glyphs are not all made

	raster vector.Rasterizer
	alpha  *image.Alpha
	pixels []byte
}

// whiteAt is the middle of the white dot.
const whiteAt = 2

func newAtlas(side int) *atlas {
	a := &atlas{image: ebiten.NewImage(side, side), side: side, used: map[cut]bool{}}
	a.clear()
	return a
}

// mostSide is how large an atlas grows: a full page of words on a phone with three pixels to each of
// CSS has room in it (design choice; WebGL 2 has at least 2048).
const mostSide = 2048

// renew empties the atlas when it was full, and makes it larger. What was drawn from it before must be
// on its way.
func (a *atlas) renew() {
	if a.side < mostSide {
		a.side *= 2
		a.image.Deallocate()
		a.image = ebiten.NewImage(a.side, a.side)
	}
	a.clear()
}

// clear empties the atlas. What was drawn from it before must be on its way.
func (a *atlas) clear() {
	a.sprites, a.lettered = map[glyphKey]sprite{}, map[letteredKey]sprite{}
	a.x, a.y, a.shelf = 2*whiteAt+1, 0, 2*whiteAt+1
	a.pixels = append(a.pixels[:0], make([]byte, 4*4*whiteAt*whiteAt)...)
	for i := range a.pixels {
		a.pixels[i] = 255
	}
	a.image.SubImage(image.Rect(0, 0, 2*whiteAt, 2*whiteAt)).(*ebiten.Image).WritePixels(a.pixels)
}

// sprite finds a glyph, or makes it. It fails where the atlas is full.
func (a *atlas) sprite(k glyphKey) (sprite, bool) {
	if s, ok := a.sprites[k]; ok {
		return s, true
	}
	s, ok := a.make(k)
	if ok {
		a.sprites[k] = s
	}
	return s, ok
}

func (a *atlas) make(k glyphKey) (sprite, bool) {
	f := face(k.cut.bold)
	t := scaler{scale: k.cut.em() / f.em}
	if k.cut.slanted {
		t.lean = slant
	}
	t.trace(f.outline(k.glyph))
	if t.empty() {
		return sprite{}, true
	}
	within := float64(k.place) / float64(k.cut.places())
	x0, y0 := math.Floor(t.left+within), math.Floor(t.top)
	w, h := int(math.Ceil(t.right+within)-x0), int(math.Ceil(t.bottom)-y0)
	at, ok := a.place(w, h)
	if !ok {
		return sprite{}, false
	}
	a.raster.Reset(w, h)
	t.to, t.dx, t.dy = &a.raster, within-x0, -y0
	t.trace(f.outline(k.glyph))
	a.write(at)
	return spriteAt(at, int(x0), int(y0)), true
}

// place finds room for a sprite, with a gap beside it.
func (a *atlas) place(w, h int) (at image.Rectangle, ok bool) {
	if a.x+w > a.side { // a new shelf
		a.x, a.y, a.shelf = 0, a.y+a.shelf, 0
	}
	if a.y+h > a.side || w > a.side {
		return image.Rectangle{}, false
	}
	at = image.Rect(a.x, a.y, a.x+w, a.y+h)
	a.x, a.shelf = a.x+w+1, max(a.shelf, h+1)
	return at, true
}

func spriteAt(at image.Rectangle, dx, dy int) sprite {
	return sprite{
		x: float32(at.Min.X), y: float32(at.Min.Y), w: float32(at.Dx()), h: float32(at.Dy()),
		dx: float32(dx), dy: float32(dy),
	}
}

// write rasterizes into the atlas.
func (a *atlas) write(at image.Rectangle) {
	w, h := at.Dx(), at.Dy()
	if a.alpha == nil || len(a.alpha.Pix) < w*h {
		a.alpha = image.NewAlpha(image.Rect(0, 0, w, h))
	}
	a.alpha.Stride, a.alpha.Rect = w, image.Rect(0, 0, w, h)
	clear(a.alpha.Pix[:w*h])
	a.raster.DrawOp = draw.Src
	a.raster.Draw(a.alpha, a.alpha.Rect, image.Opaque, image.Point{})
	a.pixels = a.pixels[:0]
	for _, v := range a.alpha.Pix[:w*h] {
		a.pixels = append(a.pixels, v, v, v, v)
	}
	a.image.SubImage(at).(*ebiten.Image).WritePixels(a.pixels)
}

// A scaler turns the outline of a glyph into pixels. Without a rasterizer it
// finds the bounds, of the control points too.
type scaler struct {
	scale, lean              float64
	left, top, right, bottom float64
	seen                     bool
	to                       *vector.Rasterizer
	dx, dy                   float64
}

func (s *scaler) empty() bool { return !s.seen }

func (s *scaler) at(p fixed.Point26_6) (px, py float32) {
	x, y := float64(p.X)/64, float64(p.Y)/64
	fx, fy := (x-s.lean*y)*s.scale, y*s.scale
	if !s.seen {
		s.left, s.right, s.top, s.bottom, s.seen = fx, fx, fy, fy, true
	}
	s.left, s.right = min(s.left, fx), max(s.right, fx)
	s.top, s.bottom = min(s.top, fy), max(s.bottom, fy)
	return float32(fx + s.dx), float32(fy + s.dy)
}

// trace walks an outline of lines and quadratic curves, as TrueType has them.
func (s *scaler) trace(outline sfnt.Segments) {
	for i, segment := range outline {
		x, y := s.at(segment.Args[0])
		x2, y2 := x, y
		if segment.Op == sfnt.SegmentOpQuadTo {
			x2, y2 = s.at(segment.Args[1])
		}
		if s.to == nil {
			continue
		}
		switch segment.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				s.to.ClosePath()
			}
			s.to.MoveTo(x, y)
		case sfnt.SegmentOpLineTo:
			s.to.LineTo(x, y)
		case sfnt.SegmentOpQuadTo:
			s.to.QuadTo(x, y, x2, y2)
		}
	}
	if s.to != nil {
		s.to.ClosePath()
	}
}
