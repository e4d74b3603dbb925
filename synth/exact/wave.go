// Package exact knows the exact spectra of waveforms, synced waveforms,
// products, and modulated phases and widths: closed forms or slow sums from the
// definitions, which share no code with what they judge. A waveform is a
// function of the phase u in periods, in the conventions of package synth.
//
// Lines and partials are phasors: c at frequency n means Re(c·e^{j2πnu}).
package exact

import (
	"math"
	"math/cmplx"
	"slices"
)

// A Wave is a periodic waveform of straight pieces, or a sine; either may be
// synced.
type Wave struct {
	pieces []piece // none: a sine
	ratio  float64 // of its frequency to that of the period
}

// A piece starts at a phase, with a value and a slope per period.
type piece struct{ from, value, slope float64 }

// A Jump is a discontinuity of a waveform: at phase U its value jumps by Step
// and its slope, per period, by Slope.
type Jump struct{ U, Step, Slope float64 }

// Named returns a waveform by the name of its shape in a description. duty is
// that of a pulse, which has no mean.
func Named(shape string, duty float64) Wave {
	w := Wave{ratio: 1}
	switch shape {
	case "sawtooth":
		w.pieces = []piece{{0, -1, 2}}
	case "falling sawtooth":
		w.pieces = []piece{{0, 1, -2}}
	case "triangle":
		w.pieces = []piece{{0, 0, 4}, {0.25, 1, -4}, {0.75, -1, 4}}
	case "pulse":
		w.pieces = []piece{{0, 2 - 2*duty, 0}, {duty, -2 * duty, 0}}
	case "sine":
	default:
		panic("exact: no shape is called " + shape)
	}
	return w
}

// Synced returns the waveform run ratio times as fast and sent to phase 0 once
// per period.
func (w Wave) Synced(ratio float64) Wave {
	w.ratio = ratio
	return w
}

// At returns the value at phase u.
func (w Wave) At(u float64) float64 {
	p := (u - math.Floor(u)) * w.ratio
	p -= math.Floor(p)
	if w.pieces == nil {
		return math.Sin(2 * math.Pi * p)
	}
	c := w.pieceAt(p)
	return c.value + c.slope*(p-c.from)
}

func (w Wave) pieceAt(p float64) piece {
	i := len(w.pieces) - 1
	for w.pieces[i].from > p {
		i--
	}
	return w.pieces[i]
}

// Jumps returns the discontinuities within a period; of a sine only the one in
// its value.
func (w Wave) Jumps() []Jump {
	if w.pieces == nil {
		return []Jump{{U: 0, Step: -math.Sin(2 * math.Pi * w.ratio)}}
	}
	ends := []float64{0}
	for k := 0.0; k < w.ratio; k++ {
		for _, c := range w.pieces {
			if u := (k + c.from) / w.ratio; u > 0 && u < 1 {
				ends = append(ends, u)
			}
		}
	}
	slices.Sort(ends)
	ends = append(ends, 1)
	ends = slices.Compact(ends)
	straight := func(i int) (first, last, slope float64) {
		middle, half := (ends[i]+ends[i+1])/2, (ends[i+1]-ends[i])/2
		p := middle * w.ratio
		slope = w.pieceAt(p-math.Floor(p)).slope * w.ratio
		return w.At(middle) - half*slope, w.At(middle) + half*slope, slope
	}
	n := len(ends) - 1
	jumps := make([]Jump, n)
	for i := range jumps {
		_, before, slopeBefore := straight((i + n - 1) % n)
		after, _, slopeAfter := straight(i)
		jumps[i] = Jump{ends[i], after - before, slopeAfter - slopeBefore}
	}
	return jumps
}

// Partials returns the first n partials, the first of them at index 1; the mean
// is left out. A waveform of straight lines is known from its jumps: a
// step s and a jump d of the slope at u add 2(s/(j2πn) + d/(j2πn)²)·e^{-j2πnu}
// (differentiate until only impulses are left).
func (w Wave) Partials(n int) []complex128 {
	c := make([]complex128, n+1)
	if w.pieces == nil {
		for k := 1; k <= n; k++ {
			c[k] = w.sinePartial(float64(k))
		}
		return c
	}
	for _, j := range w.Jumps() {
		for k := 1; k <= n; k++ {
			s := complex(0, 2*math.Pi*float64(k))
			c[k] += 2 * (complex(j.Step, 0)/s + complex(j.Slope, 0)/(s*s)) * cmplx.Exp(-s*complex(j.U, 0))
		}
	}
	return c
}

// sinePartial is 2∫sin(2πru)·e^{-j2πku} du over a period, by ∫e^{j2πxu} du =
// e^{jπx}·sinc x (sound.md 1.2 has its magnitude).
func (w Wave) sinePartial(k float64) complex128 {
	integral := func(x float64) complex128 {
		if x == 0 {
			return 1
		}
		return cmplx.Rect(math.Sin(math.Pi*x)/(math.Pi*x), math.Pi*x)
	}
	return complex(0, -1) * (integral(w.ratio-k) - integral(-w.ratio-k))
}
