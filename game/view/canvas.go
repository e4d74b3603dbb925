package view

import (
	"image"
	"math"

	"github.com/hajimehoshi/ebiten/v2"

	"partialcredit/game/plot"
	"partialcredit/game/ui"
)

// A canvas collects triangles for one image and draws them in one go. Lengths
// are given in CSS pixels; scale turns them into pixels of the device.
type canvas struct {
	*theme
	scale float64
	atlas *atlas
	to    *ebiten.Image

	vertices []ebiten.Vertex
	indices  []uint32
	mesh     plot.Mesh
	points   []plot.Point
	options  ebiten.DrawTrianglesOptions
}

func newCanvas(a *atlas) *canvas {
	c := &canvas{atlas: a}
	c.options.ColorScaleMode = ebiten.ColorScaleModePremultipliedAlpha
	return c
}

// flush draws what has been collected.
func (c *canvas) flush() {
	if len(c.indices) > 0 {
		c.to.DrawTriangles32(c.vertices, c.indices, c.atlas.image, &c.options)
	}
	c.vertices, c.indices = c.vertices[:0], c.indices[:0]
}

// put moves the canvas's own mesh into it, in a colour.
func (c *canvas) put(t tint) {
	c.add(&c.mesh, t)
	c.mesh.Reset()
}

// add adds a mesh in a colour.
func (c *canvas) add(m *plot.Mesh, t tint) {
	first := uint32(len(c.vertices))
	xyc := m.XYC
	for i := 0; i+2 < len(xyc); i += 3 {
		cover := xyc[i+2]
		c.vertices = append(c.vertices, ebiten.Vertex{
			DstX: xyc[i], DstY: xyc[i+1], SrcX: whiteAt, SrcY: whiteAt,
			ColorR: t[0] * cover, ColorG: t[1] * cover, ColorB: t[2] * cover, ColorA: t[3] * cover,
		})
	}
	for _, v := range m.Index {
		c.indices = append(c.indices, first+v)
	}
}

// quad adds a rectangle of the device's pixels from a place in the atlas.
func (c *canvas) quad(x, y, w, h, sx, sy, sw, sh float32, t tint) {
	first := uint32(len(c.vertices))
	for _, corner := range [...][2]float32{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		c.vertices = append(c.vertices, ebiten.Vertex{
			DstX: x + w*corner[0], DstY: y + h*corner[1], SrcX: sx + sw*corner[0], SrcY: sy + sh*corner[1],
			ColorR: t[0], ColorG: t[1], ColorB: t[2], ColorA: t[3],
		})
	}
	c.indices = append(c.indices, first, first+1, first+2, first, first+2, first+3)
}

// snap is the edge between two pixels of the device nearest to a length.
func (c *canvas) snap(v float64) float64 { return math.Round(v * c.scale) }

// pixels is the rectangle of the device's pixels nearest to r.
func (c *canvas) pixels(r ui.Rect) image.Rectangle {
	return image.Rect(int(c.snap(r.X)), int(c.snap(r.Y)), int(c.snap(r.Right())), int(c.snap(r.Bottom())))
}

// area fills a rectangle with sharp edges.
func (c *canvas) area(r ui.Rect, t tint) {
	p := c.pixels(r)
	c.quad(float32(p.Min.X), float32(p.Min.Y), float32(p.Dx()), float32(p.Dy()), whiteAt, whiteAt, 0, 0, t)
}

// hair is the width of a fine line: a whole number of the device's pixels.
func (c *canvas) hair(width float64) float64 { return max(1, math.Round(width*c.scale)) }

// across draws a fine level line, along a fine upright one. They fill whole
// pixels, and lie centred on their place.
func (c *canvas) across(x0, x1, y, width float64, t tint) {
	h := c.hair(width * c.line)
	top := math.Round(y*c.scale - h/2)
	c.quad(float32(c.snap(x0)), float32(top), float32(c.snap(x1)-c.snap(x0)), float32(h), whiteAt, whiteAt, 0, 0, t)
}

func (c *canvas) along(x, y0, y1, width float64, t tint) {
	w := c.hair(width * c.line)
	left := math.Round(x*c.scale - w/2)
	c.quad(float32(left), float32(c.snap(y0)), float32(w), float32(c.snap(y1)-c.snap(y0)), whiteAt, whiteAt, 0, 0, t)
}

// pen is a pen of a width in CSS pixels.
func (c *canvas) pen(width float64) plot.Pen { return plot.Pen{Width: width * c.line * c.scale} }

// rounded collects the points of a rectangle with round corners, inset by d
// CSS pixels; its frame lies on whole pixels.
func (c *canvas) rounded(r ui.Rect, radius, d float64) []plot.Point {
	p := c.pixels(r)
	inset := d * c.scale
	x0, y0 := float64(p.Min.X)+inset, float64(p.Min.Y)+inset
	x1, y1 := float64(p.Max.X)-inset, float64(p.Max.Y)-inset
	rad := max(0, min(radius*c.scale-inset, (x1-x0)/2, (y1-y0)/2))
	c.points = c.points[:0]
	for i, at := range [...]plot.Point{{X: x1 - rad, Y: y0 + rad}, {X: x1 - rad, Y: y1 - rad}, {X: x0 + rad, Y: y1 - rad}, {X: x0 + rad, Y: y0 + rad}} {
		c.arc(at, rad, float64(i)-1, float64(i))
	}
	return c.points
}

// circle collects the points of a circle.
func (c *canvas) circle(x, y, radius float64) []plot.Point {
	c.points = c.points[:0]
	c.arc(plot.Point{X: x * c.scale, Y: y * c.scale}, radius*c.scale, 0, 4)
	return c.points
}

// arc adds points around a middle, from one quarter turn to another.
func (c *canvas) arc(middle plot.Point, radius, from, to float64) {
	n := int(math.Ceil((to - from) * min(12, 2+math.Sqrt(radius)))) // off by less than a tenth of a pixel
	for i := range n + 1 {
		a := math.Pi / 2 * (from + (to-from)*float64(i)/float64(n))
		c.points = append(c.points, plot.Point{X: middle.X + radius*math.Cos(a), Y: middle.Y + radius*math.Sin(a)})
	}
}

// fill fills a shape, and ring draws its outline.
func (c *canvas) fill(shape []plot.Point, t tint) {
	c.mesh.Fill(shape)
	c.put(t)
}

func (c *canvas) ring(shape []plot.Point, width float64, t tint) {
	c.pen(width).Ring(&c.mesh, shape)
	c.put(t)
}
