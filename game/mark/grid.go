package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// A grid holds what measuring sounds of one length needs: tables and
// transforms. It keeps buffers: one sound at a time.
type grid struct {
	seconds float64
	spacing float64   // Hz between bins, 1/seconds
	weight  []float64 // amplitude weight per bin, 0 beyond the audible
	edges   []float64 // of the cells, in bins
	slope   []float64 // factor per bin for jumps
	bands   []band
	slow    []float64 // see passBands
	fast    []float64
	note    float64 // Hz, at which the target is written

	kit      spectrum.Kit
	analytic []complex128 // of a band: its signal, and
	power    []float64    // the power of it, padded
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
		weight:  make([]float64, int(highestHz*seconds)),
		edges:   edges(1 / seconds),
	}
	for k := range g.weight {
		if hz := float64(k) * g.spacing; hz >= 20 { // the lower limit of hearing
			g.weight[k] = spectrum.Amplitude(loudnessShare * spectrum.AWeight(hz))
		}
	}
	g.slope = slopeWeights(g)
	g.bands = bandsOf(g)
	longest := 0
	for _, b := range g.bands {
		longest = max(longest, g.envelopes()*b.ratio+2*len(b.smooth))
	}
	g.analytic, g.power = make([]complex128, longest), make([]float64, longest)
	g.slow, g.fast = g.passBands()
	return g
}

// listen returns the weighted spectrum of the samples, scaled to a total power
// of 1, until the next call. Silence gives nil.
func (g *grid) listen(samples []float32) []complex128 {
	x := g.kit.Real(int(math.Round(g.seconds*Rate))).Coefficients(samples, nil)[:len(g.weight)]
	sum := 0.0
	for k, w := range g.weight {
		x[k] *= complex(w, 0)
		sum += real(x[k])*real(x[k]) + imag(x[k])*imag(x[k])
	}
	// -120 dB re a full-scale sine is silence on any device (design choice).
	if silent := 1e-6 * float64(len(samples)) / 2; !(sum > silent*silent) {
		return nil
	}
	scale := 1 / math.Sqrt(sum)
	for k := range x {
		x[k] *= complex(scale, 0)
	}
	return x
}
