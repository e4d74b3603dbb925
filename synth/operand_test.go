package synth

import (
	"fmt"
	"testing"

	"partialcredit/synth/exact"
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
		one, depth := 0.0, 1.0
		if c.how == AM {
			one, depth = 1, 0.8
		}
		wave := exact.Named(c.shape.String(), 0.3)
		want := exact.Product(len(got), a, b, exact.Limited(wave, hzA, c.rate), exact.Limited(wave, hzB, c.rate), one, depth)
		e := errorBelow(got, want, 20000, c.rate)
		t.Logf("%v of %vs, %.0f and %.0f Hz: error %.1f dB", c.how, c.shape, hzA, hzB, e)
		if e > -80 {
			t.Errorf("%v of %vs, %.0f and %.0f Hz: error %.1f dB", c.how, c.shape, hzA, hzB, e)
		}
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
	want := exact.Product(len(got), a, b, exact.Named("sawtooth", 0).Partials(2*len(got)/a), exact.Named("sine", 0).Partials(1), 0, 1)
	if e := errorBelow(got, want, 20000, 48000); e > -60 {
		t.Error(fmt.Sprintf("error %.1f dB", e))
	}
}
