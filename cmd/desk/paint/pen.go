package paint

import (
	"image"
	"math"
	"slices"

	"partialcredit/game/plot"
)

// A pen makes pieces, which may overlap, of what it draws.
type pen struct{ pieces []piece }

// A piece is what lies within its outlines, none of which crosses itself; a hole goes round the other
// way.
type piece struct{ outlines [][]plot.Point }

// line draws a line of straight parts with round corners and ends.
func (p *pen) line(points []plot.Point, width float64) {
	if len(points) == 1 {
		p.dot(points[0], width/2)
	}
	for i := 1; i < len(points); i++ {
		p.stroke(points[i-1], points[i], width/2)
	}
}

// stroke draws one straight part with round ends: half a circle round either.
func (p *pen) stroke(from, to plot.Point, r float64) {
	turn := math.Atan2(to.Y-from.Y, to.X-from.X)
	n := sides(r) / 2
	outline := make([]plot.Point, 0, 2*n+2)
	for i, at := range [...]plot.Point{to, from} {
		for k := range n + 1 {
			sin, cos := math.Sincos(turn + math.Pi*(float64(i)-0.5+float64(k)/float64(n)))
			outline = append(outline, plot.Point{X: at.X + r*cos, Y: at.Y + r*sin})
		}
	}
	p.pieces = append(p.pieces, piece{[][]plot.Point{outline}})
}

func (p *pen) dot(at plot.Point, r float64) {
	p.pieces = append(p.pieces, piece{[][]plot.Point{circle(at, r)}})
}

func (p *pen) ring(at plot.Point, r, width float64) {
	outlines := [][]plot.Point{circle(at, r+width/2)}
	if inner := r - width/2; inner > 0 {
		hole := circle(at, inner)
		slices.Reverse(hole)
		outlines = append(outlines, hole)
	}
	p.pieces = append(p.pieces, piece{outlines})
}

func circle(at plot.Point, r float64) []plot.Point {
	outline := make([]plot.Point, sides(r))
	for i := range outline {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(outline)))
		outline[i] = plot.Point{X: at.X + r*cos, Y: at.Y + r*sin}
	}
	return outline
}

// sides is an even number of sides with which a circle is a hundredth of a pixel off at most.
func sides(r float64) int {
	return 2 * max(4, int(math.Ceil(math.Pi/2/math.Acos(1-min(0.5, 0.01/max(r, 0.01))))))
}

// bounds are the pixels that a piece may touch.
func (p *piece) bounds() image.Rectangle {
	lo, hi := plot.Point{X: math.Inf(1), Y: math.Inf(1)}, plot.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, at := range p.outlines[0] {
		lo, hi = plot.Point{X: min(lo.X, at.X), Y: min(lo.Y, at.Y)}, plot.Point{X: max(hi.X, at.X), Y: max(hi.Y, at.Y)}
	}
	return image.Rect(int(math.Floor(lo.X)), int(math.Floor(lo.Y)), int(math.Ceil(hi.X)), int(math.Ceil(hi.Y)))
}
