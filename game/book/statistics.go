package book

import (
	"math"
	"slices"
)

// mean is the arithmetic mean; NaN of nothing.
func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// median is the middle value, or the mean of the two in the middle; NaN of nothing.
func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	s := slices.Sorted(slices.Values(v))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// correlation is Pearson's product-moment correlation, -1 to 1:
//
//	r = Σ (x-x̄)(y-ȳ) / √(Σ (x-x̄)² Σ (y-ȳ)²)
//
// NaN where one of the two does not vary, for then nothing can be said. It has to be
// told from rounding: a spread below a billionth of a mark is none.
func correlation(x, y []float64) float64 {
	mx, my := mean(x), mean(y)
	var xx, yy, xy float64
	for i := range x {
		dx, dy := x[i]-mx, y[i]-my
		xx, yy, xy = xx+dx*dx, yy+dy*dy, xy+dx*dy
	}
	if least := 1e-18 * float64(len(x)); !(xx > least && yy > least) {
		return math.NaN()
	}
	return max(-1, min(1, xy/math.Sqrt(xx*yy)))
}
