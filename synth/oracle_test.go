package synth

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"
)

// The slow, obvious waveforms: exact Fourier coefficients, independent of the
// engine. A waveform of straight lines is known from its jumps. With a step a
// and a jump b of the slope at u (in periods), c_n = Σ (a/(j2πn) +
// b/(j2πn)²)·e^{-j2πnu}: differentiate until only impulses are left.

// A jumpAt is a discontinuity of a periodic waveform; slope is per period.
type jumpAt struct{ u, step, slope float64 }

// partialOf returns the amplitude of partial n.
func partialOf(jumps []jumpAt, n int) float64 {
	w := complex(0, 2*math.Pi*float64(n))
	c := complex(0, 0)
	for _, j := range jumps {
		c += (complex(j.step, 0)/w + complex(j.slope, 0)/(w*w)) * cmplx.Exp(-w*complex(j.u, 0))
	}
	return 2 * cmplx.Abs(c)
}

// straight returns value and slope per period of a shape in exact form, at a
// phase that lies within a piece: the conventions of doc.go.
func straight(shape Shape, duty, p float64) (value, slope float64) {
	switch shape {
	case Sawtooth:
		return 2*p - 1, 2
	case FallingSawtooth:
		return 1 - 2*p, -2
	case Pulse:
		if p < duty {
			return 2 - 2*duty, 0
		}
		return -2 * duty, 0
	case Triangle:
		switch {
		case p < 0.25:
			return 4 * p, 4
		case p < 0.75:
			return 2 - 4*p, -4
		}
		return 4*p - 4, 4
	}
	panic("not made of straight lines")
}

// synced returns the jumps of a shape that runs r times as fast as its master
// and is sent to phase 0 once per period of the master; r = 1 is the plain
// shape.
func synced(shape Shape, duty, r float64) []jumpAt {
	at := map[Shape][]float64{Sawtooth: {0}, FallingSawtooth: {0}, Pulse: {0, duty}, Triangle: {0.25, 0.75}}[shape]
	ends := []float64{0}
	for k := 0.0; k < r; k++ {
		for _, b := range at {
			if u := (k + b) / r; u > 0 && u < 1 {
				ends = append(ends, u)
			}
		}
	}
	slices.Sort(ends)
	ends = append(ends, 1)
	var jumps []jumpAt
	piece := func(i int) (lo, hi, slope float64) { // values at both ends of piece i
		middle := (ends[i] + ends[i+1]) / 2 * r
		v, s := straight(shape, duty, middle-math.Floor(middle))
		s *= r
		half := (ends[i+1] - ends[i]) / 2 * s
		return v - half, v + half, s
	}
	n := len(ends) - 1
	for i := range n {
		_, before, slopeBefore := piece((i + n - 1) % n)
		after, _, slopeAfter := piece(i)
		jumps = append(jumps, jumpAt{ends[i], after - before, slopeAfter - slopeBefore})
	}
	return jumps
}

// syncedSine is the amplitude of partial n of a sine sent to phase 0 (own
// derivation in sound.md 1.2, checked there by quadrature). r is no whole
// number.
func syncedSine(r float64, n int) float64 {
	s, c := math.Sincos(math.Pi * r)
	k := float64(n)
	return 2 * math.Abs(s) * math.Sqrt(r*r*s*s+k*k*c*c) / (math.Pi * math.Abs(r*r-k*k))
}

// The published series (sound.md 1.1; W3C Web Audio "Oscillator Coefficients"
// for the first three, the pulse from (4/πn)·|sin πnd|) and the synced values
// of sound.md 1.2 hold for the oracle before the engine answers to it.
func TestOracleAgreesWithPublishedSeries(t *testing.T) {
	for _, c := range []struct {
		what string
		got  func(n int) float64
		want map[int]float64
	}{
		{"sawtooth 2/(πn)", func(n int) float64 { return partialOf(synced(Sawtooth, 0, 1), n) }, map[int]float64{1: 0.636620, 2: 0.318310, 3: 0.212207, 4: 0.159155}},
		{"square 4/(πn), n odd", func(n int) float64 { return partialOf(synced(Pulse, 0.5, 1), n) }, map[int]float64{1: 1.273240, 2: 0, 3: 0.424413, 5: 0.254648}},
		{"triangle 8/(πn)², n odd", func(n int) float64 { return partialOf(synced(Triangle, 0, 1), n) }, map[int]float64{1: 0.810569, 2: 0, 3: 0.090063, 5: 0.032423}},
		{"quarter pulse", func(n int) float64 { return partialOf(synced(Pulse, 0.25, 1), n) }, map[int]float64{1: 0.900316, 2: 0.636620, 3: 0.300105, 4: 0, 5: 0.180063}},
		{"tenth pulse", func(n int) float64 { return partialOf(synced(Pulse, 0.1, 1), n) }, map[int]float64{1: 0.393453, 2: 0.374196, 5: 0.254648, 10: 0}},
		{"sync 1.5", func(n int) float64 { return partialOf(synced(Sawtooth, 0, 1.5), n) }, map[int]float64{1: 0.551329, 2: 0.275664, 3: 0.318310, 8: 0.068916}},
		{"sync 2", func(n int) float64 { return partialOf(synced(Sawtooth, 0, 2), n) }, map[int]float64{1: 0, 2: 0.636620, 3: 0, 4: 0.318310}},
		{"sync 2.5", func(n int) float64 { return partialOf(synced(Sawtooth, 0, 2.5), n) }, map[int]float64{1: 0.231266, 2: 0.489829, 5: 0.318310, 6: 0.038544}},
		{"sync 3.7", func(n int) float64 { return partialOf(synced(Sawtooth, 0, 3.7), n) }, map[int]float64{1: 0.120472, 4: 0.504457, 8: 0.146639}},
		{"synced sine 2.5", func(n int) float64 { return syncedSine(2.5, n) }, map[int]float64{1: 0.303152, 2: 0.707355, 3: 0.578745, 4: 0.163236}},
	} {
		for n, want := range c.want {
			if got := c.got(n); math.Abs(got-want) > 6e-7 { // the six digits given
				t.Errorf("%s, partial %d: %.6f, want %.6f", c.what, n, got, want)
			}
		}
	}
}
