package spectrum

import "math"

// A Line is a sinusoidal component of a sound.
type Line struct {
	Hz        float64
	Amplitude float64 // peak value of the sine, linear
}

// Peaks appends to dst the lines that stand out as local maxima of a
// transform of n samples at rate: X holds the bins 0 ≤ k ≤ n/2, unnormalised,
// taken with the window w. Lines under floor (linear amplitude) are left out.
// Frequency and amplitude come from a parabola through the levels in decibels
// of the highest bin and its neighbours: with Blackman-Harris the bias is at
// most 0.0032 bins and 0.03 dB (computed; J. O. Smith, Spectral Audio Signal
// Processing, ch. 5).
func Peaks(dst []Line, X []complex128, n int, rate float64, w Window, floor float64) []Line {
	scale := 2 / (float64(n) * w.Gain())
	limit := floor / scale
	limit *= limit
	power := func(k int) float64 { return real(X[k])*real(X[k]) + imag(X[k])*imag(X[k]) }
	if len(X) < 3 {
		return dst
	}
	below, here := power(0), power(1)
	for k := 1; k < len(X)-1; k++ {
		above := power(k + 1)
		if here > limit && here > below && here >= above {
			shift, gain := vertex(below, here, above)
			dst = append(dst, Line{
				Hz:        (float64(k) + shift) * rate / float64(n),
				Amplitude: scale * math.Sqrt(here) * gain,
			})
		}
		below, here = here, above
	}
	return dst
}

// vertex fits a parabola to the logarithms of three powers, the middle one the
// highest, and returns its vertex: the offset from the middle in bins and the
// amplitude relative to the middle.
func vertex(below, here, above float64) (shift, gain float64) {
	const tiny = 1e-300 // keeps the logarithm of an empty bin finite
	a, b, c := math.Log(below+tiny), math.Log(here), math.Log(above+tiny)
	curve := a - 2*b + c
	if curve >= 0 {
		return 0, 1
	}
	shift = (a - c) / (2 * curve)
	return shift, math.Exp(-(a - c) * shift / 8)
}
