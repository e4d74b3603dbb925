package synth

// A discontinuity at an exact time between two samples is made band-limited by
// adding what the convolution with the quintic B-spline changes about it, the
// six samples around it: for a step the integrated spline less the step
// (BLEP), for a corner the twice integrated spline less the ramp (BLAMP).
//
// With B(t) = Σ (-1)^k C(6,k) (t+3-k)₊⁵/5!, the convolution of B with what sets
// in at time 0 as d(t) = step + slope·t is Σ (-1)^k C(6,k) F(t+3-k), where
// F(x) = step·x⁶/6! + slope·x⁷/7! for x > 0. After the discontinuity the same
// is used backwards, so that nothing large cancels.
//
// Välimäki, Pekonen & Nam, JASA 131(1), 974-986, 2012 (BLEP from integrated
// B-splines); Esqueda, Välimäki & Bilbao, DAFx-16 (BLAMP); both stop at the
// cubic spline, the step to the quintic is ours: at four times the rate it
// gains some 35 dB. Known weakness: the whole signal is now convolved with the
// spline, so that it falls by sinc⁶(f/fs): see [droop].

// reach is how many samples a correction spreads before the first sample that
// follows the discontinuity: the delay it needs.
const reach = 3

// near is the samples that a discontinuity touches.
type near [2 * reach]float64

// correct adds the corrections for a discontinuity that lies t samples,
// 0 <= t <= 1, before the sample out[reach]. step is the jump of the value,
// slope the jump of the slope per sample. Where a sine sets in or is cut off,
// w2 is the square of its frequency in radians per sample, which corrects the
// jumps of all higher derivatives as well; otherwise it is 0.
func correct(out *near, t, step, slope, w2 float64) {
	f0 := onset(t, step, slope, w2)
	f1 := onset(1+t, step, slope, w2)
	f2 := onset(2+t, step, slope, w2)
	out[0] += f0
	out[1] += f1 - 6*f0
	out[2] += f2 - 6*f1 + 15*f0
	f0 = onset(1-t, step, -slope, w2)
	f1 = onset(2-t, step, -slope, w2)
	f2 = onset(3-t, step, -slope, w2)
	out[3] -= f2 - 6*f1 + 15*f0
	out[4] -= f1 - 6*f0
	out[5] -= f0
}

// onset is F(x) above. For a sine, d” = -w2·d, and F is the power series
// step·(x⁶/6! - w2·x⁸/8! + …) + slope·(x⁷/7! - w2·x⁹/9! + …).
func onset(x, step, slope, w2 float64) float64 {
	x2 := x * x
	x6 := x2 * x2 * x2
	if w2 != 0 {
		even, odd := onsetSeries(w2 * x2)
		step *= even
		slope *= odd
	}
	return x6 * (step*(1.0/720) + slope*(x*(1.0/5040)))
}

// onsetSeries returns 1 - z/(7·8) + z²/(7·8·9·10) - … and the same from 8·9
// on. z is below 73: the fastest sine turns by 2.83 radians per sample.
func onsetSeries(z float64) (even, odd float64) {
	even, odd = 1, 1
	a, b := 1.0, 1.0
	for k := 7.0; a > 1e-12 || a < -1e-12; k += 2 {
		a *= -z / (k * (k + 1))
		b *= -z / ((k + 1) * (k + 2))
		even += a
		odd += b
	}
	return even, odd
}
