package measure

import (
	"math"

	"partialcredit/synth/exact"
)

// An oscillator returns a waveform at a phase in periods that moves by inc a sample.
type oscillator func(u, inc float64) float64

// naive samples the waveform as it is.
func naive(w exact.Wave) oscillator {
	return func(u, _ float64) float64 { return w.At(u) }
}

// polyBLEP corrects the samples on either side of each step by the integrated triangle: two-point
// polynomial BLEP (Välimäki & Huovilainen, IEEE SPM 24(2), 116-125, 2007).
func polyBLEP(w exact.Wave) oscillator {
	jumps := w.Jumps()
	return func(u, inc float64) float64 {
		y := w.At(u)
		for _, j := range jumps {
			y += j.Step * residual(u-j.U, inc)
		}
		return y
	}
}

// residual is the correction of a step of 1 at a distance in phase, modulo 1. Where the phase runs
// backwards the step is down.
func residual(distance, inc float64) float64 {
	t := (distance - math.Round(distance)) / inc // samples since
	switch {
	case t >= 0 && t < 1:
		return -math.Copysign((1-t)*(1-t)/2, inc)
	case t > -1 && t < 0:
		return math.Copysign((1+t)*(1+t)/2, inc)
	}
	return 0
}

// play runs an oscillator steadily at line p of a tone.
func play(osc oscillator, t tone, p int) []float64 {
	x := make([]float64, t.n)
	inc := float64(p) / float64(t.n)
	for i := range x {
		x[i] = osc(float64(i*p%t.n)/float64(t.n), inc)
	}
	return x
}

// product returns a·(one + depth·b).
func product(a, b []float64, one, depth float64) []float64 {
	x := make([]float64, len(a))
	for i := range x {
		x[i] = a[i] * (one + depth*b[i])
	}
	return x
}

// modulatePhase runs an oscillator whose phase a sine at line b moves by index radians.
func modulatePhase(osc oscillator, t tone, b int, index float64) []float64 {
	x := make([]float64, t.n)
	for i := range x {
		s, c := math.Sincos(2 * math.Pi * float64(i*b%t.n) / float64(t.n))
		u := float64(i*t.p%t.n)/float64(t.n) + index/(2*math.Pi)*s
		x[i] = osc(u, (float64(t.p)+index*float64(b)*c)/float64(t.n))
	}
	return x
}

// modulateWidth runs a pulse, as the difference of two sawtooths, whose duty moves about a half by
// depth: in a triangle, or in a sawtooth, at line b.
func modulateWidth(sawtooth oscillator, steep bool, t tone, b int, depth float64) []float64 {
	lfo, rate := exact.Named("triangle", 0), 4*depth*float64(b)/float64(t.n)
	if steep {
		lfo, rate = exact.Named("sawtooth", 0), 2*depth*float64(b)/float64(t.n)
	}
	x := make([]float64, t.n)
	inc := float64(t.p) / float64(t.n)
	for i := range x {
		v, slope := float64(i*b%t.n)/float64(t.n), rate
		if !steep && v > 0.25 && v < 0.75 {
			slope = -rate
		}
		u, d := float64(i*t.p%t.n)/float64(t.n), 0.5+depth*lfo.At(v)
		x[i] = sawtooth(u-d, inc-slope) - sawtooth(u, inc)
	}
	return x
}
