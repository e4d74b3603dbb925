package synth

import "math"

// stopband is the attenuation in decibels that the half-band filters are
// designed for: ten more than the bound of 100 dB on aliases.
const stopband = 112

// halfbandTaps designs a linear-phase half-band low-pass filter: whole up to
// edge, gone from 0.5-edge on, both as fractions of its sample rate, -6 dB in
// the middle. Every second coefficient is zero but the middle one, which is
// 0.5; returned are the m others of one side, from the outermost inwards, so
// that the whole filter has 4m-1 taps.
//
// An ideal low-pass under a Kaiser window: Kaiser's formulas for the length
// and for beta as in Oppenheim & Schafer, Discrete-Time Signal Processing,
// "Kaiser window method" (from memory). Known weakness: some 10 % longer than
// an equiripple design.
func halfbandTaps(edge float64) []float64 {
	n := (stopband - 7.95) / (14.36 * (0.5 - 2*edge))
	m := int(math.Ceil((n + 2) / 4))
	beta := 0.1102 * (stopband - 8.7)
	h := make([]float64, m)
	sum := 0.0
	for i := range h {
		k := float64(2*(m-i) - 1) // distance from the middle, odd
		r := k / float64(2*m)
		h[i] = math.Sin(math.Pi*k/2) / (math.Pi * k) * bessel0(beta*math.Sqrt(1-r*r)) / bessel0(beta)
		sum += 2 * h[i]
	}
	for i := range h {
		h[i] *= 0.5 / sum
	}
	return h
}

// bessel0 is the modified Bessel function I0 by its power series (Abramowitz &
// Stegun 9.6.12).
func bessel0(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-17*sum; k++ {
		term *= (x / (2 * k)) * (x / (2 * k))
		sum += term
	}
	return sum
}

// A decimator halves the sample rate through a half-band filter in its
// polyphase form: the odd samples meet the side taps, the even ones only the
// middle. Output i is centred on input 2(i-m+1).
type decimator struct {
	h         []float64
	odd, even []float64 // what came before, then the block
}

// newDecimator makes a decimator for blocks of at most n outputs.
func newDecimator(h []float64, n int) *decimator {
	return &decimator{h: h, odd: make([]float64, 2*len(h)-1+n), even: make([]float64, len(h)-1+n)}
}

func (d *decimator) reset() {
	clear(d.odd)
	clear(d.even)
}

// run writes len(in)/2 samples to out. out may be the front of in.
func (d *decimator) run(out, in []float64) {
	m, n := len(d.h), len(in)/2
	odd, even := d.odd[2*m-1:], d.even[m-1:]
	for i := 0; i < n; i++ {
		even[i], odd[i] = in[2*i], in[2*i+1]
	}
	symmetric(out[:n], d.h, d.odd, 1)
	for i, x := range d.even[:n] {
		out[i] += 0.5 * x
	}
	copy(d.odd, d.odd[n:n+2*m-1])
	copy(d.even, d.even[n:n+m-1])
}

// symmetric writes out[i] = Σ h[j]·(x[i+j·stride] + x[i+(2m-1-j)·stride]).
func symmetric(out, h, x []float64, stride int) {
	m := len(h)
	for i := range out {
		acc := 0.0
		lo, hi := i, i+(2*m-1)*stride
		for _, c := range h {
			acc += c * (x[lo] + x[hi])
			lo += stride
			hi -= stride
		}
		out[i] = acc
	}
}

// A lowpass runs a half-band filter without changing the rate. Its delay is
// 2m-1 samples.
type lowpass struct {
	h []float64
	x []float64 // what came before, then the block
}

func newLowpass(h []float64, n int) *lowpass {
	return &lowpass{h: h, x: make([]float64, 4*len(h)-2+n)}
}

func (l *lowpass) reset() { clear(l.x) }

// run filters the block in place.
func (l *lowpass) run(block []float64) {
	past := 4*len(l.h) - 2
	n := len(block)
	copy(l.x[past:], block)
	symmetric(block, l.h, l.x, 2)
	for i, x := range l.x[2*len(l.h)-1 : 2*len(l.h)-1+n] {
		block[i] += 0.5 * x
	}
	copy(l.x, l.x[n:n+past])
}
