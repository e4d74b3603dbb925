package plot

import "math"

// feather is the width in pixels over which an edge fades, so that it looks
// smooth at every slope.
const feather = 1.0

// mitred is how much longer than the pen is wide a corner may be before it is
// rounded instead.
const mitred = 1.25

// A Pen draws lines.
type Pen struct{ Width float64 }

// Line adds a line through the points to the mesh.
func (p Pen) Line(m *Mesh, points []Point) {
	stroke(m, points, func(int) float64 { return p.Width / 2 })
}

// Press adds a line whose width swells to the pen's in the middle and thins
// towards its ends, as a pen pressed by hand makes it.
func (p Pen) Press(m *Mesh, points []Point) {
	n := float64(len(points) - 1)
	stroke(m, points, func(i int) float64 {
		return p.Width / 2 * (0.62 + 0.38*math.Sin(math.Pi*math.Pow(float64(i)/n, 0.7)))
	})
}

// Ring adds a closed line through the points.
func (p Pen) Ring(m *Mesh, points []Point) {
	first := uint32(len(m.XYC) / 3)
	count := uint32(0)
	for i, q := range points {
		nx, ny, ok := outwards(points, i)
		if !ok {
			continue
		}
		m.station(q, nx, ny, p.Width/2, 1)
		count++
	}
	for i := range count {
		m.span(first+4*i, first+4*((i+1)%count))
	}
}

// Dashed adds a line that is drawn for on pixels of its length and left out
// for off pixels, in turn. scratch is memory to use; it is returned for the
// next time.
func (p Pen) Dashed(m *Mesh, points []Point, on, off float64, scratch []Point) []Point {
	if !(on > 0) || !(off > 0) || len(points) < 2 {
		return scratch
	}
	dash := append(scratch[:0], points[0])
	drawing, left := true, on
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		done := 0.0
		for length-done > left {
			done += left
			at := Point{a.X + (b.X-a.X)*done/length, a.Y + (b.Y-a.Y)*done/length}
			if drawing {
				p.Line(m, append(dash, at))
				left = off
			} else {
				left = on
			}
			drawing = !drawing
			dash = append(dash[:0], at)
		}
		left -= length - done
		if drawing {
			dash = append(dash, b)
		}
	}
	if drawing {
		p.Line(m, dash)
	}
	return dash
}

// stroke lays stations across the line, each with four vertices: the outer and
// inner edge of either side. A gentle corner gets one station, a sharp one two
// round ends.
func stroke(m *Mesh, points []Point, half func(i int) float64) {
	started := false
	var last uint32    // the station before
	var nx, ny float64 // the normal of the piece before
	prev := 0          // the point at its end
	for i := 1; i < len(points); i++ {
		ax, ay, ok := normal(points[prev], points[i])
		if !ok {
			continue
		}
		h := half(prev)
		switch {
		case !started:
			last = m.begin(points[prev], ax, ay, h)
			started = true
		case (1+nx*ax+ny*ay)/2*mitred*mitred >= 1: // half the turn has a cosine of at least 1/mitred
			mx, my := miter(nx, ny, ax, ay, mitred)
			next := m.station(points[prev], mx, my, h, 1)
			m.span(last, next)
			last = next
		default:
			m.end(last, points[prev], nx, ny, h)
			last = m.begin(points[prev], ax, ay, h)
		}
		nx, ny, prev = ax, ay, i
	}
	if started {
		m.end(last, points[prev], nx, ny, half(prev))
	}
}

// station adds four vertices across the line at p. A line thinner than its
// soft edges gets less cover instead.
func (m *Mesh) station(p Point, nx, ny, half, cover float64) uint32 {
	outer, inner := half+feather/2, half-feather/2
	if inner < 0 {
		cover *= 2 * half / outer
		inner = 0
	}
	first := m.vertex(p.X-nx*outer, p.Y-ny*outer, 0)
	m.vertex(p.X-nx*inner, p.Y-ny*inner, cover)
	m.vertex(p.X+nx*inner, p.Y+ny*inner, cover)
	m.vertex(p.X+nx*outer, p.Y+ny*outer, 0)
	return first
}

// span joins two stations.
func (m *Mesh) span(a, b uint32) {
	m.quad(a, a+1, b+1, b)
	m.quad(a+1, a+2, b+2, b+1)
	m.quad(a+2, a+3, b+3, b+2)
}

// An end is half of a hexagon, which looks round at a pen's width, and fades.
const (
	endReach  = 0.87
	endNarrow = 0.5
)

func (m *Mesh) begin(p Point, nx, ny, half float64) uint32 {
	tip, round := m.tip(p, nx, ny, half, -1)
	m.span(tip, round)
	next := m.station(p, nx, ny, half, 1)
	m.span(round, next)
	return next
}

func (m *Mesh) end(last uint32, p Point, nx, ny, half float64) {
	next := m.station(p, nx, ny, half, 1)
	m.span(last, next)
	tip, round := m.tip(p, nx, ny, half, 1)
	m.span(next, round)
	m.span(round, tip)
}

// tip adds the two stations of an end that lies forwards (1) or backwards (-1)
// of p; the way forwards is the normal turned by a quarter.
func (m *Mesh) tip(p Point, nx, ny, half, way float64) (tip, round uint32) {
	dx, dy := -ny*way, nx*way
	near := max(0, endReach*half-feather/2)
	far := endReach*half + feather/2
	round = m.station(Point{p.X + dx*near, p.Y + dy*near}, nx, ny, endNarrow*half, 1)
	tip = m.station(Point{p.X + dx*far, p.Y + dy*far}, nx, ny, endNarrow*half, 0)
	return tip, round
}
