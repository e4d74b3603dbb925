package plot

import "math"

// A Frame says which stretch of a sound is drawn, and where.
type Frame struct {
	Start, Span float64 // the left edge shows the time Start, the right edge Start+Span
	X, W        float64 // of the left edge, and the width
	Zero        float64 // the height at which 0 is drawn
	Gain        float64 // pixels upwards for a sample of 1
	Column      float64 // width of a column: nothing narrower is told apart
}

// A Sampler turns stretches of sound into points. It keeps its scratch memory.
type Sampler struct {
	weights [most][taps]float32
	offset  [most]int
}

// most is the largest number of points for each sample: 8 kHz on a wide screen.
const most = 64

// Points appends the trace of the samples to dst. Values are taken at fixed
// times after Start, at least two a sample and about one a column, so that the
// points of a steady sound do not depend on where the samples happen to lie.
// Where several fall into a column, its lowest and its highest stand for all.
func (s *Sampler) Points(dst []Point, samples []float32, f Frame) []Point {
	if len(samples) < 2 || !(f.Span > 0) || !(f.W > 0) || !(f.Start >= 0) || !(f.Column > 0) {
		return dst
	}
	k := int(max(2, min(most, math.Ceil(f.W/f.Column/f.Span))))
	first := math.Floor(f.Start)
	for j := range k {
		at := f.Start - first + float64(j)/float64(k)
		whole := math.Floor(at)
		s.offset[j] = int(first) + int(whole)
		weigh(&s.weights[j], at-whole)
	}
	last := min(f.Start+f.Span, float64(len(samples)-1))
	count := int((last-f.Start)*float64(k)+1e-6) + 1 // a rounding error must not cost a point
	step := f.W / f.Span / float64(k)
	columns := step < f.Column/2
	var c column
	j, n := 0, 0
	for i := range count {
		p := Point{f.X + float64(i)*step, f.Zero - f.Gain*float64(dot(&s.weights[j], samples, s.offset[j]+n))}
		if j++; j == k {
			j, n = 0, n+1
		}
		if !columns {
			dst = append(dst, p)
			continue
		}
		if number := int(float64(i) * step / f.Column); number != c.number {
			dst = c.flush(dst)
			c.number = number
		}
		c.add(p)
	}
	return c.flush(dst)
}

// A column collects the points that share a column of the picture.
type column struct {
	number    int
	count     int
	low, high Point
}

func (c *column) add(p Point) {
	if c.count == 0 || p.Y < c.low.Y {
		c.low = p
	}
	if c.count == 0 || p.Y > c.high.Y {
		c.high = p
	}
	c.count++
}

// flush appends the lowest and the highest point in the order of time.
func (c *column) flush(dst []Point) []Point {
	if c.count == 0 {
		return dst
	}
	a, b := c.low, c.high
	if a.X > b.X {
		a, b = b, a
	}
	c.count = 0
	if a == b {
		return append(dst, a)
	}
	return append(dst, a, b)
}
