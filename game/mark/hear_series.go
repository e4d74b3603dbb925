package mark

import (
	"math"
	"sort"
)

// logSlope is the slope per value of a straight line through the logarithm.
func logSlope(power []float64) float64 {
	y := make([]float64, len(power))
	top := quantile(power, 1)
	for i, p := range power {
		y[i] = math.Log(p + 1e-6*top + 1e-30)
	}
	slope := slopeOf(y)
	if math.Abs(slope)*float64(len(y)) < 1.4 { // 6 dB over the sound
		return 0
	}
	return slope
}

func slopeOf(y []float64) float64 {
	n := float64(len(y))
	var sy, sxy float64
	for i, v := range y {
		x := float64(i) - (n-1)/2
		sy += v
		sxy += x * v
	}
	return sxy / (n * (n*n - 1) / 12)
}

func detrend(e []float64) {
	s := slopeOf(e)
	for i := range e {
		e[i] -= s * (float64(i) - (float64(len(e))-1)/2)
	}
}

func variance(e []float64) float64 {
	sum, mean := 0.0, 0.0
	for _, v := range e {
		mean += v / float64(len(e))
	}
	for _, v := range e {
		sum += (v - mean) * (v - mean) / float64(len(e))
	}
	return sum
}

func quantile(x []float64, q float64) float64 {
	if len(x) == 0 {
		return 0
	}
	s := append([]float64(nil), x...)
	sort.Float64s(s)
	return s[int(q*float64(len(s)-1)+0.5)]
}
