package take

import "math"

// clipped says whether the tops of a sound are cut off at the end of the scale:
// in some 50 ms more than 1.5 % of the samples (10 % of those of 8 bits) lie in
// runs of three and more within a step and a half of 16 bits (half a step of 8)
// of the greatest, which is within 1.5 % of full scale. A sine of 33 Hz has 0.5 % there (4 % with
// 8 bits: from the arccosine of a step). A wave of two levels
// only is a pulse and not clipped. Known weakness: what was clipped before the
// converter, or made quieter after it, is not seen.
func clipped(x []float32, rate float64) bool {
	top := 0.0
	coarse := true // 8 bits
	for _, v := range x {
		top = math.Max(top, math.Abs(float64(v)))
		coarse = coarse && v*128 == float32(math.Round(float64(v*128)))
	}
	if top < 0.985 {
		return false
	}
	step, share := 1.5/(1<<15), 0.015
	if coarse {
		step, share = 0.5/(1<<7), 0.1
	}
	block := max(1, int(0.05*rate))
	for from := 0; from < len(x); from += block {
		b := x[from:min(from+block, len(x))]
		high, low := cut(b, top-step, 1), cut(b, top-step, -1)
		if n := high + low; float64(n) > share*float64(block) && float64(n) < 0.9*float64(len(b)) {
			return true
		}
	}
	return false
}

// cut counts the samples in runs of three and more that lie beyond a limit on
// one side.
func cut(x []float32, limit, side float64) int {
	all, run := 0, 0
	for _, v := range x {
		if side*float64(v) < limit {
			run = 0
			continue
		}
		if run++; run == 3 {
			all += 3
		} else if run > 3 {
			all++
		}
	}
	return all
}
