package synth

import "math"

// sineOf returns sin 2πp for p in [0, 1].
//
// The argument is folded to a quarter period and put into an odd polynomial of
// degree 11 in the least-maximum sense (coefficients fitted by Chebyshev
// interpolation; common practice). Known weakness: an error of up to 3e-11,
// 211 dB under the sine, and a p outside [0, 1] gives nonsense.
func sineOf(p float64) float64 {
	u := 0.5 - p
	return math.Copysign(quarterSine(0.25-math.Abs(math.Abs(u)-0.25)), u)
}

// sinesOf is [sineOf] for a whole tick, in place: the compiler keeps this loop
// free of calls.
func sinesOf(p *[ticks]float64) {
	for i, x := range p {
		u := 0.5 - x
		p[i] = math.Copysign(quarterSine(0.25-math.Abs(math.Abs(u)-0.25)), u)
	}
}

// quarterSine returns sin 2πw for w in [0, 1/4].
func quarterSine(w float64) float64 {
	x := w * w
	return w * (sin1 + x*(sin3+x*(sin5+x*(sin7+x*(sin9+x*sin11)))))
}

// cosineOf returns cos 2πp for p in [0, 1]; see [sineOf].
func cosineOf(p float64) float64 {
	p += 0.25
	if p >= 1 {
		p--
	}
	return sineOf(p)
}

// wrap returns the fractional part of p, in [0, 1).
func wrap(p float64) float64 {
	p -= math.Floor(p)
	if p >= 1 { // -1e-20 rounds up to 1
		return 0
	}
	return p
}

// The coefficients of [quarterSine].
const (
	sin1  = 6.283185307072264
	sin3  = -41.341702116744
	sin5  = 81.60522617402967
	sin7  = -76.70427987604262
	sin9  = 42.009779303153906
	sin11 = -14.393966295455941
)
