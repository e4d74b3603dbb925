package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// The axis of modulation rates: 24 bins an octave from 0.4 to 60 Hz.
const (
	ratesPer8v = 24
	slowest    = 0.4
	fastest    = 60.0
)

var rates = int(ratesPer8v * math.Log2(fastest/slowest))

// audibleMovement is the relative modulation amplitude of a compressed
// envelope that is just not heard: about a tenth of what 5 % of amplitude
// modulation does to it (design choice of the method).
const audibleMovement = 0.015

// aboveThreshold takes the threshold off the root of a power.
func aboveThreshold(power float64) float64 {
	return math.Sqrt(power+audibleMovement*audibleMovement) - audibleMovement
}

// Blurs of the modulation spectrum: standard deviations in octaves.
var rateBlurs = [3]struct {
	octaves float64
	kernel  kernel
}{
	{0.15, gaussian(0.15 * ratesPer8v)},
	{0.4, gaussian(0.4 * ratesPer8v)},
	{1, gaussian(1 * ratesPer8v)},
}

// padding is by how much the transform of an envelope is longer than it.
const padding = 4

// rateEdges are the edges of the rate bins in bins of that transform.
func (g *tables) rateEdges() []float64 {
	e := make([]float64, rates+1)
	for r := range e {
		e[r] = slowest * math.Exp2(float64(r)/ratesPer8v) * padding * g.seconds
	}
	return e
}

// modulation returns the modulation power per rate bin of a movement: its
// Hann-windowed spectrum, of which the lines sum to their amplitudes squared.
func (g *grid) modulation(x []float64, hann []float64) []float64 {
	n := len(x)
	mean := 0.0
	for i, v := range x {
		mean += v * hann[i]
	}
	mean /= float64(n) * spectrum.Hann.Gain()
	line := make([]float64, n)
	for i, v := range x {
		line[i] = (v - mean) * 4 / float64(n)
	}
	z := g.kit.Real(padding*n).Transform(line, hann)
	power := make([]float64, padding*n/2)
	for k := range power {
		power[k] = (real(z[k])*real(z[k]) + imag(z[k])*imag(z[k])) / (padding * spectrum.Hann.ENBW())
	}
	m := make([]float64, rates)
	gather(m, power, g.rates)
	return m
}

// The strength of movement is followed in these stretches of the sound, as
// fractions of its length: short ones first, where the ear listens for how a
// note begins.
var stretches = []float64{0, 0.1, 0.2, 0.325, 0.475, 0.7, 0.98}

// passBands are the gains per bin of an envelope's transform that pass slow (2.2
// to 14 Hz) and fast (12 to 60 Hz) movement, at positive frequencies only.
func (g *tables) passBands() (slow, fast []float64) {
	n := g.envelopes()
	pass := func(low, high float64) []float64 {
		gain := make([]float64, n/2)
		for k := 1; k < n/2; k++ {
			hz := float64(k) * g.spacing
			gain[k] = 2 / float64(n) / (1 + math.Pow(low/hz, 6)) / (1 + math.Pow(hz/high, 6))
		}
		return gain
	}
	return pass(2.2, 14), pass(12, fastest)
}

// strength returns the root-mean-square strength of slow and of fast movement
// in each stretch, above threshold: of the analytic signal, so that it does not
// hang on where in its cycle a movement stands.
func (g *grid) strength(x []float64) (slow, fast []float64) {
	n := len(x)
	whole, back, z := g.kit.Real(n).Transform(x, nil), g.kit.Complex(n), make([]complex128, n)
	in := func(gain []float64) []float64 {
		clear(z)
		for k, v := range gain {
			z[k] = complex(v*real(whole[k]), v*imag(whole[k]))
		}
		back.Backward(z)
		out := make([]float64, len(stretches)-1)
		for i := range out {
			from, to := int(stretches[i]*float64(n)), int(stretches[i+1]*float64(n))
			power := 0.0
			for _, v := range z[from:to] {
				power += real(v)*real(v) + imag(v)*imag(v)
			}
			out[i] = aboveThreshold(power / float64(to-from))
		}
		return out
	}
	return in(g.slow), in(g.fast)
}
