package synth

import (
	"testing"

	"partialcredit/synth/exact"
)

// A sawtooth whose phase a sine modulates is not band-limited, and where its
// phase turns back the sum over Bessel functions hardly converges. Bound of issue 3: 80 dB,
// within the limit that doc.go states: the modulator up to 3.6 kHz, carrier +
// index·modulator up to 38 kHz.
func TestFrequencyModulatedSawtoothIsExact(t *testing.T) {
	const rate = 48000.0
	for _, c := range []struct {
		a, b  int // 151 is 442 Hz
		index float64
	}{{151, 101, 0.5}, {151, 101, 2}, {151, 101, 5}, {151, 101, 10}, {701, 1201, 1}, {301, 1201, 10}, {1201, 1201, 10}} {
		a, b, index := c.a, c.b, c.index
		s := oscillators(FM, Sawtooth, 0.5)
		s.B.Shape, s.Combine.Index = Sine, index
		got := spectrum(steady(s, rate, float64(a)*rate/fftLength, float64(b)*rate/fftLength, fftLength))
		want := exact.ModulatedSawtooth(len(got), a, b, index)
		e := errorBelow(got, want, 20000, rate)
		t.Logf("%+v: error %.1f dB", c, e)
		if e > -80 {
			t.Errorf("%+v: error %.1f dB", c, e)
		}
	}
}
