// Package paint turns the shapes of a drawing into pixels.
package paint

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	"partialcredit/game/figure"
	"partialcredit/game/plot"
)

// Image paints a drawing, one pixel for each of its own. Where it has no ground the image is
// transparent.
func Image(d *figure.Drawing) (*image.NRGBA, error) {
	c := &canvas{on: image.NewRGBA(image.Rect(0, 0, d.W, d.H)), faces: map[face]letters{}}
	for i := range d.Shapes {
		if err := c.shape(&d.Shapes[i]); err != nil {
			return nil, err
		}
	}
	out := image.NewNRGBA(c.on.Bounds())
	draw.Draw(out, out.Bounds(), c.on, image.Point{}, draw.Src)
	return out, nil
}

type canvas struct {
	on     *image.RGBA
	pen    pen
	raster vector.Rasterizer
	one    image.Alpha // the cover of one piece
	faces  map[face]letters
}

func (c *canvas) shape(s *figure.Shape) error {
	switch s.Kind {
	case figure.Boxes:
		c.boxes(s)
	case figure.Label:
		return c.label(s)
	case figure.Line:
		if s.Dash[0] <= 0 {
			c.pen.line(s.Points, s.Width)
		} else {
			for _, dash := range dashes(s.Points, s.Dash) {
				c.pen.line(dash, s.Width)
			}
		}
	case figure.Dot:
		c.pen.dot(s.Points[0], s.R)
	case figure.Ring:
		c.pen.ring(s.Points[0], s.R, s.Width)
	default:
		return fmt.Errorf("there is no shape of kind %d", s.Kind)
	}
	c.fill(s)
	return nil
}

func ink(s *figure.Shape) color.NRGBA {
	return color.NRGBA{uint8(s.Colour >> 16), uint8(s.Colour >> 8), uint8(s.Colour), uint8(math.Round(255 * s.Alpha))}
}

// boxes fills boxes without soft edges, so that those side by side leave no seams.
func (c *canvas) boxes(s *figure.Shape) {
	source := image.NewUniform(ink(s))
	for _, b := range s.Boxes {
		at := func(v float64) int { return int(math.Round(v)) }
		draw.Draw(c.on, image.Rect(at(b.X), at(b.Y), at(b.X+b.W), at(b.Y+b.H)), source, image.Point{}, draw.Over)
	}
}

// fill fills what the pen has drawn. Each piece is worked out by itself and the greatest cover
// counts: the covers of pieces that overlap at an edge must not add up, or it would be hard.
func (c *canvas) fill(s *figure.Shape) {
	outer := image.Rectangle{}
	for i := range c.pen.pieces {
		outer = outer.Union(c.pen.pieces[i].bounds())
	}
	outer = outer.Intersect(c.on.Bounds())
	mask := image.NewAlpha(outer)
	for i := range c.pen.pieces {
		c.cover(mask, &c.pen.pieces[i])
	}
	draw.DrawMask(c.on, outer, image.NewUniform(ink(s)), image.Point{}, mask, outer.Min, draw.Over)
	c.pen.pieces = c.pen.pieces[:0]
}

// cover puts one piece into the mask.
func (c *canvas) cover(mask *image.Alpha, p *piece) {
	b := p.bounds().Intersect(mask.Rect)
	if b.Empty() {
		return
	}
	c.raster.Reset(b.Dx(), b.Dy())
	for _, outline := range p.outlines {
		for i, at := range outline {
			x, y := float32(at.X-float64(b.Min.X)), float32(at.Y-float64(b.Min.Y))
			if i == 0 {
				c.raster.MoveTo(x, y)
			} else {
				c.raster.LineTo(x, y)
			}
		}
		c.raster.ClosePath()
	}
	if n := b.Dx() * b.Dy(); cap(c.one.Pix) < n {
		c.one.Pix = make([]uint8, n)
	}
	c.one.Pix, c.one.Stride, c.one.Rect = c.one.Pix[:b.Dx()*b.Dy()], b.Dx(), image.Rect(0, 0, b.Dx(), b.Dy())
	c.raster.DrawOp = draw.Src
	c.raster.Draw(&c.one, c.one.Rect, image.Opaque, image.Point{})
	for y := range b.Dy() {
		row := mask.Pix[mask.PixOffset(b.Min.X, b.Min.Y+y):][:b.Dx()]
		for x, v := range c.one.Pix[y*c.one.Stride:][:b.Dx()] {
			row[x] = max(row[x], v)
		}
	}
}

type face struct {
	bold bool
	size float64
}

// letters is a font at a size, and the font, which knows what it lacks.
type letters struct {
	face font.Face
	font *opentype.Font
}

// missing says which character of a text the font has no glyph for.
func (l *letters) missing(s string) error {
	for _, r := range s {
		if g, err := l.font.GlyphIndex(nil, r); err != nil || g == 0 {
			return fmt.Errorf("a PNG is lettered with the Go fonts, which have Latin, Greek and Cyrillic letters but no %q. Write an .svg instead: the program that shows it brings fonts of its own", r)
		}
	}
	return nil
}

func (c *canvas) label(s *figure.Shape) error {
	key := face{s.Bold, s.Size}
	f, ok := c.faces[key]
	if !ok {
		data := goregular.TTF
		if s.Bold {
			data = gobold.TTF
		}
		parsed, err := opentype.Parse(data)
		if err != nil {
			return err
		}
		f.font = parsed
		if f.face, err = opentype.NewFace(parsed, &opentype.FaceOptions{Size: s.Size, DPI: 72, Hinting: font.HintingNone}); err != nil {
			return err
		}
		c.faces[key] = f
	}
	if err := f.missing(s.Text); err != nil {
		return err
	}
	text := &font.Drawer{Dst: c.on, Src: image.NewUniform(ink(s)), Face: f.face}
	x, y := s.Points[0].X, s.Points[0].Y
	back := 0.0
	wide := float64(text.MeasureString(s.Text)) / 64
	switch s.Align {
	case figure.Middle:
		back = wide / 2
	case figure.Right:
		back = wide
	}
	if s.Turned {
		return c.turned(text, s.Text, x, y, wide, back, s.Size)
	}
	text.Dot = fixed.Point26_6{X: fixed.Int26_6(math.Round(64 * (x - back))), Y: fixed.Int26_6(math.Round(64 * y))}
	text.DrawString(s.Text)
	return nil
}

// turned writes text that reads upwards: on an image of its own, then turned.
func (c *canvas) turned(text *font.Drawer, s string, x, y, wide, back, size float64) error {
	flat := image.NewRGBA(image.Rect(0, 0, int(wide)+2, int(2*size)))
	base := int(1.4 * size)
	text.Dst, text.Dot = flat, fixed.P(0, base)
	text.DrawString(s)
	b := flat.Bounds()
	turned := image.NewRGBA(image.Rect(0, 0, b.Dy(), b.Dx()))
	for j := range b.Dy() {
		for i := range b.Dx() {
			turned.SetRGBA(j, b.Dx()-1-i, flat.RGBAAt(i, j))
		}
	}
	at := image.Pt(int(math.Round(x))-base, int(math.Round(y+back))-b.Dx())
	draw.Draw(c.on, turned.Bounds().Add(at), turned, image.Point{}, draw.Over)
	return nil
}

// dashes cuts a line into its dashes.
func dashes(points []plot.Point, dash [2]float64) [][]plot.Point {
	var out [][]plot.Point
	on, left := true, dash[0]
	now := []plot.Point{points[0]}
	for i := 1; i < len(points); i++ {
		from, to := points[i-1], points[i]
		long := math.Hypot(to.X-from.X, to.Y-from.Y)
		for gone := 0.0; gone < long; {
			step := min(left, long-gone)
			gone, left = gone+step, left-step
			at := plot.Point{X: from.X + (to.X-from.X)*gone/long, Y: from.Y + (to.Y-from.Y)*gone/long}
			if on {
				now = append(now, at)
			}
			if left > 0 {
				continue
			}
			if on {
				out, now, left = append(out, now), nil, dash[1]
			} else {
				now, left = []plot.Point{at}, dash[0]
			}
			on = !on
		}
	}
	if on && len(now) > 1 {
		out = append(out, now)
	}
	return out
}
