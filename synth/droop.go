package synth

import "math"

// A droop is a symmetric filter that undoes the fall of sinc¹²(f) which the
// corrections bring, f in cycles per sample. Known weakness: an error of up to
// 5e-5 where it is made to hold, and a gain of 20 to 40 beyond.
type droop struct {
	taps []float64 // from the outermost inwards; of the middle one half
	x    [2*droopMost + ticks]float64
}

// droopMost is the greatest delay of a droop in samples.
const droopMost = 7

// The coefficients with the least greatest error of sinc¹² times the filter up
// to a frequency f (Lawson's method; own design).
var (
	// f = 0.227: 20 kHz at twice 44.1 kHz.
	droopPlain = []float64{-0.01560082767500551, 0.1412135276717271, -0.6600232106517872, 2.076776253931494, -4.737466554941246, 7.390201621753485 / 2}
	// f = 0.293: the operands of a product matter to 28 kHz at twice 48 kHz.
	droopProduct = []float64{-0.00564384370340511, 0.04707514761511138, -0.2162359654425593, 0.7154443525041579, -1.884557437217714, 4.125195693150384, -7.500955537635043, 10.43935518023052 / 2}
	// f = 0.147: 28 kHz at four times 48 kHz.
	droopFourfold = []float64{0.02318323685709904, -0.2285219879718994, 1.080195963037089, -3.134863471574237, 5.52001251951005 / 2}
)

func (d *droop) reset() { clear(d.x[:]) }

// delay is the delay of the filter in samples.
func (d *droop) delay() int { return len(d.taps) - 1 }

// run filters a block in place.
func (d *droop) run(block *[ticks]float64) {
	past := 2 * d.delay()
	copy(d.x[:past], d.x[ticks:])
	copy(d.x[past:], block[:])
	symmetric(block[:], d.taps, d.x[:past+ticks], past)
}

// undo is what a sine of inc cycles per sample must be multiplied by so that it
// leaves the filter with its own amplitude.
func (d *droop) undo(inc float64) float64 {
	gain := 0.0
	for i, e := range d.taps {
		gain += 2 * e * cosineOf(wrap(inc*float64(d.delay()-i)))
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
