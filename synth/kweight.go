package synth

import "math"

// A biquad is a second-order filter in transposed direct form II:
// y = (b0 + b1 z⁻¹ + b2 z⁻²) / (1 + a1 z⁻¹ + a2 z⁻²) · x.
type biquad struct {
	b0, b1, b2, a1, a2 float64
	s1, s2             float64
}

func (f *biquad) run(x float64) float64 {
	y := f.b0*x + f.s1
	f.s1 = f.b1*x - f.a1*y + f.s2
	f.s2 = f.b2*x - f.a2*y
	return y
}

// A kWeighting is the frequency weighting of ITU-R BS.1770-4: a shelf for the
// effect of the head and a high-pass filter.
type kWeighting struct{ shelf, highpass biquad }

// newKWeighting makes the filter for any sample rate from the analogue
// prototype behind the coefficients that BS.1770-4 gives for 48 kHz
// (hearing.md 2: it reproduces them to 1e-14).
func newKWeighting(rate float64) kWeighting {
	const (
		shelfHz = 1681.974450955533
		shelfDB = 3.999843853973347
		shelfQ  = 0.7071752369554196
		passHz  = 38.13547087602444
		passQ   = 0.5003270373238773
	)
	k := math.Tan(math.Pi * shelfHz / rate)
	vh := math.Pow(10, shelfDB/20)
	vb := math.Pow(vh, 0.4996667741545416)
	a0 := 1 + k/shelfQ + k*k
	shelf := biquad{
		b0: (vh + vb*k/shelfQ + k*k) / a0,
		b1: 2 * (k*k - vh) / a0,
		b2: (vh - vb*k/shelfQ + k*k) / a0,
		a1: 2 * (k*k - 1) / a0,
		a2: (1 - k/shelfQ + k*k) / a0,
	}
	k = math.Tan(math.Pi * passHz / rate)
	a0 = 1 + k/passQ + k*k
	highpass := biquad{b0: 1, b1: -2, b2: 1, a1: 2 * (k*k - 1) / a0, a2: (1 - k/passQ + k*k) / a0}
	return kWeighting{shelf: shelf, highpass: highpass}
}

func (k *kWeighting) run(x float64) float64 { return k.highpass.run(k.shelf.run(x)) }
