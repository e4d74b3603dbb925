package synth

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"
)

// The product of two rich waveforms against the exact sum over all pairs of
// partials, each operand limited as the engine states: whole up to 20 kHz,
// nothing from rate - 20 kHz on, the half-band filter in between. Bound of
// issue 3: 80 dB.
func TestProductsOfRichWaveformsAreExact(t *testing.T) {
	for _, c := range []struct {
		how    How
		shape  Shape
		hzA    float64
		hzB    float64
		rate   float64
		partOf string
	}{
		{Ring, Sawtooth, 440, 300, 48000, "sound.md 5.4"},
		{Ring, Sawtooth, 1000, 770, 48000, "sound.md 5.4"},
		{Ring, Sawtooth, 2000, 1370, 44100, "sound.md 5.4"},
		{Ring, Pulse, 440, 300, 44100, ""},
		{AM, Sawtooth, 440, 300, 48000, ""},
		{AM, Pulse, 3000, 2111, 48000, ""},
	} {
		a, hzA := coherent(c.hzA, c.rate, fftLength)
		b, hzB := coherent(c.hzB, c.rate, fftLength)
		s := oscillators(c.how, c.shape, 0.3)
		s.Combine.Depth = 0.8
		got := spectrum(steady(s, c.rate, hzA, hzB, fftLength))
		one, depth := complex(0, 0), complex(1, 0)
		if c.how == AM {
			one, depth = 1, 0.8
		}
		// Partials from the straight definition at the same instant.
		partsA, partsB := operand(c.shape, a, c.rate), operand(c.shape, b, c.rate)
		want := make([]complex128, len(got))
		for k, x := range partsA {
			add(want, k*a, one*x)
			for l, y := range partsB {
				add(want, k*a+l*b, depth*x*y/2)
				add(want, k*a-l*b, depth*x*cmplx.Conj(y)/2)
			}
		}
		e := errorBelow(got, want, 20000, c.rate)
		t.Logf("%v of %vs, %.0f and %.0f Hz: error %.1f dB", c.how, c.shape, hzA, hzB, e)
		if e > -80 {
			t.Errorf("%v of %vs, %.0f and %.0f Hz: error %.1f dB", c.how, c.shape, hzA, hzB, e)
		}
	}
}

// add puts a line into a spectrum; a negative frequency folds back.
func add(c []complex128, bin int, line complex128) {
	if bin < 0 {
		bin, line = -bin, cmplx.Conj(line)
	}
	if bin < len(c) {
		c[bin] += line
	}
}

// operand returns the partials at bin p of a shape with duty 0.3 and phase 0
// at the first sample after the settling of steady, as they reach the product:
// the phase is that of sample fftLength.
func operand(shape Shape, p int, rate float64) []complex128 {
	h := halfbandTaps(math.Min(limitEdge, 0.4535*rate) / (2 * rate))
	jumps := synced(shape, 0.3, 1)
	var parts []complex128
	parts = append(parts, 0)
	for n := 1; ; n++ {
		f := float64(n*p) / fftLength // cycles per output sample
		if f > 0.75 {
			return parts
		}
		w := complex(0, 2*math.Pi*float64(n))
		c := complex(0, 0)
		for _, j := range jumps {
			c += (complex(j.step, 0)/w + complex(j.slope, 0)/(w*w)) * cmplx.Exp(-w*complex(j.u, 0))
		}
		gain := 0.5
		for i, x := range h {
			gain += 2 * x * math.Cos(math.Pi*f*float64(2*(len(h)-i)-1))
		}
		gain *= spline(f/4) / undroop(f/4)
		parts = append(parts, 2*c*complex(gain, 0))
	}
}

// A sine as one operand: saw 440 × sine 300 has lines at |440k ± 300| of
// 1/(πk), to -60 dB against the sum without any limit of the operands (row 13b
// of sound.md 9).
func TestRingWithASine(t *testing.T) {
	a, hzA := coherent(440, 48000, fftLength)
	b, hzB := coherent(300, 48000, fftLength)
	s := oscillators(Ring, Sawtooth, 0.5)
	s.B.Shape = Sine
	got := spectrum(steady(s, 48000, hzA, hzB, fftLength))
	want := make([]complex128, len(got))
	for k := 1; k*a < 2*len(got); k++ {
		saw := complex(0, 2/(math.Pi*float64(k))) // -(2/πk) sin
		sine := complex(0, -1)
		add(want, k*a+b, saw*sine/2)
		add(want, k*a-b, saw*cmplx.Conj(sine)/2)
	}
	if e := errorBelow(got, want, 20000, 48000); e > -60 {
		t.Error(fmt.Sprintf("error %.1f dB", e))
	}
}
