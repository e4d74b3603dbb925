package paint

import (
	"math"
	"slices"

	"partialcredit/game/plot"
)

// A pen makes outlines of what it draws. All go round the same way, but for holes, so that what
// overlaps is filled once.
type pen struct{ shapes [][]plot.Point }

// line outlines a line of straight pieces with round corners and ends: a box for every piece and a
// circle for every corner.
func (p *pen) line(points []plot.Point, width float64) {
	for i, at := range points {
		p.circle(at, width/2, false)
		if i == 0 {
			continue
		}
		from := points[i-1]
		dx, dy := at.X-from.X, at.Y-from.Y
		long := math.Hypot(dx, dy)
		if long == 0 {
			continue
		}
		dx, dy = dx/long*width/2, dy/long*width/2
		p.shapes = append(p.shapes, []plot.Point{
			{X: from.X + dy, Y: from.Y - dx}, {X: at.X + dy, Y: at.Y - dx}, {X: at.X - dy, Y: at.Y + dx}, {X: from.X - dy, Y: from.Y + dx},
		})
	}
}

// circle outlines a circle, so finely that it is a hundredth of a pixel off at most.
func (p *pen) circle(at plot.Point, r float64, hole bool) {
	if r <= 0 {
		return
	}
	n := max(8, int(math.Ceil(math.Pi/math.Acos(1-min(0.5, 0.01/r)))))
	shape := make([]plot.Point, n)
	for i := range shape {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		shape[i] = plot.Point{X: at.X + r*cos, Y: at.Y + r*sin}
	}
	if hole {
		slices.Reverse(shape)
	}
	p.shapes = append(p.shapes, shape)
}
