package plot

import "math"

// Simplify drops, in place, the points that a line between those that are kept
// passes within the tolerance, measured upwards. A ramp keeps its two ends.
//
// From each kept point it narrows the cone of slopes that pass all points
// since; where the cone closes, the point before is kept (the cone method of
// Williams 1978 and Sklansky & Gonzalez 1980). x must rise.
func Simplify(points []Point, tolerance float64) []Point {
	if len(points) < 3 {
		return points
	}
	kept := 1
	from := points[0]
	low, high := math.Inf(-1), math.Inf(1)
	for i := 1; i < len(points); i++ {
		p := points[i]
		dx := p.X - from.X
		slope := (p.Y - from.Y) / dx
		if dx > 0 && slope >= low && slope <= high {
			low = max(low, slope-tolerance/dx)
			high = min(high, slope+tolerance/dx)
			continue
		}
		if i > 1 && points[i-1] != from {
			from = points[i-1]
			points[kept] = from
			kept++
		}
		dx = p.X - from.X
		low, high = math.Inf(-1), math.Inf(1)
		if dx > 0 {
			slope = (p.Y - from.Y) / dx
			low, high = slope-tolerance/dx, slope+tolerance/dx
		} else {
			low, high = 1, -1 // straight up: nothing follows within the cone
		}
	}
	points[kept] = points[len(points)-1]
	return points[:kept+1]
}
