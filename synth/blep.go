package synth

// A discontinuity at an exact time between two samples is made band-limited by
// adding what the convolution with the cubic B-spline changes about it, the
// four samples around it: for a step the integrated spline less the step
// (BLEP), for a corner the twice integrated spline less the ramp (BLAMP).
//
// Välimäki, Pekonen & Nam, JASA 131(1), 974-986, 2012 (four-point polynomial
// BLEP); Esqueda, Välimäki & Bilbao, DAFx-16, Table 1 (BLAMP). Known weakness:
// a jump in the second derivative (the reset of a synced sine) is left alone,
// and the whole signal is now convolved with the spline, so that it falls by
// sinc⁴(f/fs): see droop.go.

// reach is how many samples a correction spreads before the first sample that
// follows the discontinuity: the delay it needs.
const reach = 2

// correct adds the corrections for a discontinuity that lies t samples,
// 0 <= t <= 1, before the sample at out[reach]. step is the jump of the value,
// slope the jump of the slope per sample.
func correct(out *[4]float64, t, step, slope float64) {
	t2 := t * t
	t3 := t2 * t
	t4 := t2 * t2
	e := 1 - t
	e2 := e * e
	e4 := e2 * e2
	if step != 0 {
		step *= 1.0 / 24
		out[0] += step * t4
		out[1] += step * (-3*t4 + 4*t3 + 6*t2 + 4*t + 1)
		out[2] += step * (3*t4 - 8*t3 + 16*t - 12)
		out[3] -= step * e4
	}
	if slope != 0 {
		t5 := t4 * t
		slope *= 1.0 / 120
		out[0] += slope * t5
		out[1] += slope * (-3*t5 + 5*t4 + 10*t3 + 10*t2 + 5*t + 1)
		out[2] += slope * (3*t5 - 10*t4 + 40*t2 - 60*t + 28)
		out[3] += slope * e4 * e
	}
}
