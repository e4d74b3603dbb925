package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// A grid holds what measuring sounds of one length needs: tables and
// transforms. It keeps buffers: one sound at a time.
type grid struct {
	seconds float64
	spacing float64 // Hz between bins, 1/seconds
	fft     *spectrum.Real
	weight  []float64 // amplitude weight per bin, 0 beyond the audible
	edges   []float64 // of the cells, in bins
	slope   []float64 // factor per bin for jumps
	bands   []band
	slow    []float64 // see passBands
	fast    []float64
	note    float64 // Hz, at which the target is written
	complex map[int]*spectrum.Complex
}

// loudnessShare is the part of the A-weighting that is applied: 0.6 of its
// decibels, between none and the threshold-like full curve, as the ear at
// moderate levels (design choice of the method, fitted with it).
const loudnessShare = 0.6

func newGrid(seconds, note float64) *grid {
	g := &grid{
		note:    note,
		seconds: seconds,
		spacing: 1 / seconds,
		fft:     spectrum.NewReal(int(math.Round(seconds * Rate))),
		weight:  make([]float64, int(highestHz*seconds)),
		edges:   edges(1 / seconds),
		complex: map[int]*spectrum.Complex{},
	}
	for k := range g.weight {
		if hz := float64(k) * g.spacing; hz >= 20 { // the lower limit of hearing
			g.weight[k] = spectrum.Amplitude(loudnessShare * spectrum.AWeight(hz))
		}
	}
	g.slope = slopeWeights(g)
	g.bands = bandsOf(g)
	g.slow, g.fast = g.passBands()
	return g
}

// transform returns the complex transform of n values, made once.
func (g *grid) transform(n int) *spectrum.Complex {
	c := g.complex[n]
	if c == nil {
		c = spectrum.NewComplex(n)
		g.complex[n] = c
	}
	return c
}

// listen returns the weighted spectrum of the samples, scaled to a total power
// of 1, and the factor it was scaled by. Silence gives nil.
func (g *grid) listen(samples []float32) (x []complex128, scale float64) {
	x = g.fft.Coefficients(samples, nil)[:len(g.weight)]
	sum := 0.0
	for k, w := range g.weight {
		x[k] *= complex(w, 0)
		sum += real(x[k])*real(x[k]) + imag(x[k])*imag(x[k])
	}
	// -120 dB re a full-scale sine is silence on any device (design choice).
	if silent := 1e-6 * float64(len(samples)) / 2; !(sum > silent*silent) {
		return nil, 0
	}
	scale = 1 / math.Sqrt(sum)
	for k := range x {
		x[k] *= complex(scale, 0)
	}
	return x, scale
}
