package synth

import "math"

// A droop is a symmetric filter that undoes the fall of sinc¹²(f) which the
// corrections bring, f in cycles per sample. Its coefficients are those with
// the least greatest error of sinc¹² times the filter up to f = 0.293, the end
// of what the half-band filters let through at twice 48 kHz (Lawson's method;
// own design). Known weakness: that error.
type droop struct{ x [2*droopDelay + ticks]float64 }

// droopDelay is the delay of a droop in samples.
const droopDelay = 7

// The coefficients, from the outermost inwards.
var (
	droopTaps   = []float64{-0.00564384370340511, 0.04707514761511138, -0.2162359654425593, 0.7154443525041579, -1.884557437217714, 4.125195693150384, -7.500955537635043}
	droopMiddle = 10.43935518023052
)

// run filters a block in place.
func (d *droop) run(block *[ticks]float64) {
	copy(d.x[:], d.x[ticks:])
	copy(d.x[2*droopDelay:], block[:])
	symmetric(block[:], droopTaps, d.x[:], 2*droopDelay)
	for i, x := range d.x[droopDelay:][:ticks] {
		block[i] += droopMiddle * x
	}
}

// undroop is what a sine of inc cycles per sample must be multiplied by so
// that it leaves the droop with its own amplitude.
func undroop(inc float64) float64 {
	gain := droopMiddle
	for i, e := range droopTaps {
		gain += 2 * e * cosineOf(wrap(inc*float64(droopDelay-i)))
	}
	return 1 / gain
}

// spline is the factor by which the B-spline convolves a sine of inc cycles
// per sample: sinc¹².
func spline(inc float64) float64 {
	if inc == 0 {
		return 1
	}
	s := math.Sin(math.Pi*inc) / (math.Pi * inc)
	s *= s * s
	s *= s
	return s * s
}
