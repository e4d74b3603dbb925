package synth

import "math"

// stopband is the attenuation in decibels that the half-band filters are
// designed for. Kaiser's formulas fall short by 7 dB with few taps, which
// leaves 110: ten more than the bound of 100 dB on aliases.
const stopband = 118

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

// A halfband runs a half-band filter in its polyphase form: an output meets the
// side taps with the samples of its own parity, counted from the newest, and
// the middle tap with the others.
type halfband struct {
	h         []float64
	even, odd []float64 // 2m-1 samples that came before and more if it is late, then the block
	side      []float64
}

// newHalfband makes a filter for blocks of n samples of either parity, late by so
// many of them beyond its own delay.
func newHalfband(h []float64, n, late int) *halfband {
	past := 2*len(h) - 1 + late
	return &halfband{h: h, even: make([]float64, past+n), odd: make([]float64, past+n), side: make([]float64, n)}
}

func (f *halfband) reset() {
	clear(f.even)
	clear(f.odd)
}

// push takes a block in and returns half its length.
func (f *halfband) push(in []float64) int {
	n := len(in) / 2
	even, odd := f.even[len(f.even)-n:], f.odd[len(f.odd)-n:]
	copy(f.even, f.even[n:])
	copy(f.odd, f.odd[n:])
	for i := range odd {
		even[i], odd[i] = in[2*i], in[2*i+1]
	}
	return n
}

// decimate halves the sample rate: it writes len(in)/2 samples to out, which
// may be the front of in. Output i is centred on input 2(i-m+1-late).
func (f *halfband) decimate(out, in []float64) {
	n := f.push(in)
	symmetric(out[:n], f.h, f.odd, 2*len(f.h)-1)
	for i, x := range f.even[len(f.h):][:n] {
		out[i] += 0.5 * x
	}
}

// filter keeps the rate and filters a block in place. The delay is 2m-1
// samples.
func (f *halfband) filter(block []float64) {
	n, m := f.push(block), len(f.h)
	symmetric(f.side, f.h, f.even, 2*m-1)
	for i, x := range f.odd[m-1:][:n] {
		block[2*i] = f.side[i] + 0.5*x
	}
	symmetric(f.side, f.h, f.odd, 2*m-1)
	for i, x := range f.even[m:][:n] {
		block[2*i+1] = f.side[i] + 0.5*x
	}
}

// symmetric writes out[i] = Σ h[j]·(x[i+j] + x[i+last-j]), four sums and four taps at
// a time: so each sample is loaded once for several of them. len(out) is a multiple of
// four.
func symmetric(out, h, x []float64, last int) {
	n := len(h)
	for i := 0; i < len(out); i += 4 {
		var a, b, c, d float64
		up, down := x[i:i+n+3], x[i+last-n+1:i+last+4]
		j := 0
		for ; j+4 <= n; j += 4 {
			p, q, t := (*[7]float64)(up[j:]), (*[7]float64)(down[n-4-j:]), (*[4]float64)(h[j:])
			a += t[0] * (p[0] + q[3])
			b += t[0] * (p[1] + q[4])
			c += t[0] * (p[2] + q[5])
			d += t[0] * (p[3] + q[6])
			a += t[1] * (p[1] + q[2])
			b += t[1] * (p[2] + q[3])
			c += t[1] * (p[3] + q[4])
			d += t[1] * (p[4] + q[5])
			a += t[2] * (p[2] + q[1])
			b += t[2] * (p[3] + q[2])
			c += t[2] * (p[4] + q[3])
			d += t[2] * (p[5] + q[4])
			a += t[3] * (p[3] + q[0])
			b += t[3] * (p[4] + q[1])
			c += t[3] * (p[5] + q[2])
			d += t[3] * (p[6] + q[3])
		}
		for ; j < n; j++ {
			p, q := (*[4]float64)(up[j:]), (*[4]float64)(down[n-1-j:])
			a += h[j] * (p[0] + q[0])
			b += h[j] * (p[1] + q[1])
			c += h[j] * (p[2] + q[2])
			d += h[j] * (p[3] + q[3])
		}
		*(*[4]float64)(out[i:]) = [4]float64{a, b, c, d}
	}
}
