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
	c := &canvas{on: image.NewRGBA(image.Rect(0, 0, d.W, d.H)), faces: map[face]font.Face{}}
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
	on    *image.RGBA
	pen   pen
	faces map[face]font.Face
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
		c.pen.circle(s.Points[0], s.R, false)
	case figure.Ring:
		c.pen.circle(s.Points[0], s.R+s.Width/2, false)
		c.pen.circle(s.Points[0], s.R-s.Width/2, true)
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

// fill fills what the pen has drawn: what lies within the bounds of the image, for the time that
// takes goes with the area.
func (c *canvas) fill(s *figure.Shape) {
	var outer image.Rectangle
	for _, shape := range c.pen.shapes {
		for _, p := range shape {
			x, y := int(math.Floor(p.X)), int(math.Floor(p.Y))
			outer = outer.Union(image.Rect(x, y, x+2, y+2))
		}
	}
	outer = outer.Intersect(c.on.Bounds())
	if !outer.Empty() {
		r := vector.NewRasterizer(outer.Dx(), outer.Dy())
		for _, shape := range c.pen.shapes {
			for i, p := range shape {
				x, y := float32(p.X-float64(outer.Min.X)), float32(p.Y-float64(outer.Min.Y))
				if i == 0 {
					r.MoveTo(x, y)
				} else {
					r.LineTo(x, y)
				}
			}
			r.ClosePath()
		}
		r.Draw(c.on, outer, image.NewUniform(ink(s)), image.Point{})
	}
	c.pen.shapes = c.pen.shapes[:0]
}

type face struct {
	bold bool
	size float64
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
		if f, err = opentype.NewFace(parsed, &opentype.FaceOptions{Size: s.Size, DPI: 72, Hinting: font.HintingNone}); err != nil {
			return err
		}
		c.faces[key] = f
	}
	text := &font.Drawer{Dst: c.on, Src: image.NewUniform(ink(s)), Face: f}
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
