package plot

import "math"

// A Mesh is a list of triangles. XYC holds for each vertex x, y and the cover:
// 1 where the ink is full, 0 at the outer edge. Index holds three vertices for
// each triangle.
type Mesh struct {
	XYC   []float32
	Index []uint32
}

// Reset empties the mesh and keeps its memory.
func (m *Mesh) Reset() { m.XYC, m.Index = m.XYC[:0], m.Index[:0] }

func (m *Mesh) vertex(x, y, cover float64) uint32 {
	n := uint32(len(m.XYC) / 3)
	m.XYC = append(m.XYC, float32(x), float32(y), float32(cover))
	return n
}

func (m *Mesh) quad(a, b, c, d uint32) { m.Index = append(m.Index, a, b, c, a, c, d) }

// Fill adds a convex polygon with soft edges. Where two neighbours are the
// same point, one is dropped.
func (m *Mesh) Fill(polygon []Point) {
	const half = feather / 2
	first := uint32(len(m.XYC) / 3)
	turn := 1.0 // which way round
	if area(polygon) < 0 {
		turn = -1
	}
	corners := uint32(0)
	for i, p := range polygon {
		nx, ny, ok := outwards(polygon, i)
		if !ok {
			continue
		}
		m.vertex(p.X+turn*half*nx, p.Y+turn*half*ny, 0)
		m.vertex(p.X-turn*half*nx, p.Y-turn*half*ny, 1)
		corners++
	}
	for i := range corners {
		j := (i + 1) % corners
		m.quad(first+2*i, first+2*i+1, first+2*j+1, first+2*j)
		if i >= 2 {
			m.Index = append(m.Index, first+1, first+2*(i-1)+1, first+2*i+1)
		}
	}
}

// Glow adds a border round a convex polygon that fades from full at its edge
// to nothing a reach outwards.
func (m *Mesh) Glow(polygon []Point, reach float64) {
	if area(polygon) < 0 {
		reach = -reach
	}
	first := uint32(len(m.XYC) / 3)
	count := uint32(0)
	for i, p := range polygon {
		if nx, ny, ok := outwards(polygon, i); ok {
			m.vertex(p.X, p.Y, 1)
			m.vertex(p.X+nx*reach, p.Y+ny*reach, 0)
			count++
		}
	}
	for i := range count {
		j := (i + 1) % count
		m.quad(first+2*i, first+2*i+1, first+2*j+1, first+2*j)
	}
}

// outwards is the way from a corner of a closed line to where its sides meet
// when moved by 1; not ok where the corner is the same point as the one before.
func outwards(closed []Point, i int) (x, y float64, ok bool) {
	n := len(closed)
	ax, ay, ok := normal(closed[(i+n-1)%n], closed[i])
	if !ok {
		return 0, 0, false
	}
	for j := 1; j < n; j++ { // the next that differs
		if bx, by, ok := normal(closed[i], closed[(i+j)%n]); ok {
			x, y = miter(ax, ay, bx, by, 3)
			return x, y, true
		}
	}
	return 0, 0, false
}

// area is twice the signed area.
func area(polygon []Point) float64 {
	sum := 0.0
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum
}

// normal is the unit vector to the right of the way from a to b (y downwards:
// outwards of a polygon whose area is positive); not ok where they coincide.
func normal(a, b Point) (x, y float64, ok bool) {
	dx, dy := b.X-a.X, b.Y-a.Y
	d := math.Sqrt(dx*dx + dy*dy)
	if !(d > 1e-9) {
		return 0, 0, false
	}
	return dy / d, -dx / d, true
}

// miter is the vector from a corner between two sides, given by their normals,
// to where the sides moved outwards by 1 meet, at most limit long.
func miter(ax, ay, bx, by, limit float64) (x, y float64) {
	x, y = ax+bx, ay+by
	square := x*x + y*y
	if square < 1e-9 {
		return ax, ay
	}
	scale := min(2/square, limit/math.Sqrt(square))
	return x * scale, y * scale
}
