package plot

import "math"

// A sound counts as having been low once it was a tenth of its peak under zero: ripples smaller than that do not trigger. (Design choice; common
// oscilloscopes use 5 to 10 % of the screen.)
const hysteresis = 0.1

// smooth appends the sound after a low-pass of first order to dst:
//
//	y[n] = y[n-1] + a·(x[n] - y[n-1]),  a = 1 - exp(-2π·corner)
//
// with the corner in cycles a sample. It takes the ripples off that would cross
// zero more than once; it delays every cycle alike.
func smooth(dst, samples []float32, corner float64) []float32 {
	a := float32(1 - math.Exp(-2*math.Pi*corner))
	y := float32(0)
	for _, x := range samples {
		y += a * (x - y)
		dst = append(dst, y)
	}
	return dst
}

// crossings yields the instants at which the sound rises through zero, newest
// first.
func crossings(samples []float32, newest float64) source {
	low := float32(0)
	for _, s := range samples {
		low = min(low, -hysteresis*s, hysteresis*s)
	}
	i := int(newest)
	return func() (float64, bool) {
		crossing := -1
		for ; i > reach; i-- {
			if samples[i-1] < 0 && samples[i] >= 0 {
				crossing = i
			}
			// Going back in time, a crossing counts once the sound is seen low before it.
			if crossing >= 0 && samples[i-1] < low {
				i--
				return refine(samples, crossing), true
			}
			if samples[i-1] > -low {
				crossing = -1 // it never was low: a ripple on a high stretch
			}
		}
		return 0, false
	}
}

// refine finds where, between the samples n-1 and n, the interpolated sound
// passes zero: by halving, to a thousandth of a sample.
func refine(samples []float32, n int) float64 {
	below, above := float64(n-1), float64(n)
	for range 10 {
		mid := (below + above) / 2
		if valueAt(samples, mid) < 0 {
			below = mid
		} else {
			above = mid
		}
	}
	return (below + above) / 2
}
