package advice

import (
	"math"
	"math/cmplx"
	"testing"

	"partialcredit/synth"
	"partialcredit/synth/exact"
	"partialcredit/synth/spectrum"
)

// What a small loudspeaker loses of a sine and of a sawtooth follows from their spectra
// (a sawtooth has partials of 1/n) and the closed form of a second-order Butterworth
// high-pass, |H|² = r⁴/(1 + r⁴). The weighting is held to IEC 61672-1 in synth/spectrum.
func TestLossAgreesWithClosedForm(t *testing.T) {
	var kit spectrum.Kit
	for _, note := range []float64{33, 45, 57, 69} {
		s := synth.Default()
		s.Note = note
		f, _ := s.Hz()
		loss := func(partials int) float64 {
			all, left := 0.0, 0.0
			for n := 1; n <= partials && float64(n)*f < 20000; n++ {
				hz := float64(n) * f
				p := spectrum.Power(spectrum.AWeight(hz)) / float64(n*n)
				r := hz / 300
				all, left = all+p, left+p*r*r*r*r/(1+r*r*r*r)
			}
			return 10 * math.Log10(all/left)
		}
		for _, c := range []struct {
			shape synth.Shape
			want  float64
		}{{synth.Sine, loss(1)}, {synth.Sawtooth, loss(1000)}} {
			s.A.Shape = c.shape
			b := listen(&kit, s)
			if math.Abs(b.lost-c.want) > 0.15 { // dB; the window spreads a line over 3 bins, the attack a little more
				t.Errorf("%v at %.0f Hz loses %.2f dB, want %.2f", c.shape, f, b.lost, c.want)
			}
			if c.shape == synth.Sine && math.Abs(b.lowest-f) > 1.5 {
				t.Errorf("the lowest strong line of a sine of %.1f Hz lies at %.1f Hz", f, b.lowest)
			}
		}
	}
	// A sine: peak 0 dBFS; K-weighted 0.0 LKFS at 997 Hz in both channels (ITU-R BS.1770-4).
	s := synth.Default()
	s.Note, s.A.Shape = 83, synth.Sine // 987.8 Hz
	if b := listen(&kit, s); math.Abs(b.crest) > 0.05 {
		t.Errorf("the peak of a sine of 1 kHz lies %.2f dB above its loudness, want 0", b.crest)
	}
}

// The other right answers that the examples find are right by their exact spectra: d and
// 1 - d, and the directions of a sawtooth, have the same magnitudes. And where a
// sawtooth and a pulse of any duty, both from the start of the period, are added, the
// jump of one cancels a jump of the other: a sawtooth is left, only later. So
// unheard-in-sum is right too.
func TestEquivalencesAreExact(t *testing.T) {
	const partials = 64
	lines := func(w exact.Wave) []complex128 { return w.Partials(partials) }
	same := func(what string, a, b []complex128) {
		t.Helper()
		if len(a) < 2 || len(a) != len(b) {
			t.Fatalf("%s: %d and %d partials", what, len(a), len(b))
		}
		for n := 1; n < len(a); n++ {
			if math.Abs(cmplx.Abs(a[n])-cmplx.Abs(b[n])) > 1e-12 {
				t.Errorf("%s: partial %d is %v and %v", what, n, cmplx.Abs(a[n]), cmplx.Abs(b[n]))
			}
		}
	}
	same("duty", lines(exact.Named("pulse", 0.25)), lines(exact.Named("pulse", 0.75)))
	same("direction", lines(exact.Named("sawtooth", 0)), lines(exact.Named("falling sawtooth", 0)))
	for _, duty := range []float64{0.03, 0.2, 0.5, 0.97} {
		sum := lines(exact.Named("pulse", duty))
		for n, x := range lines(exact.Named("sawtooth", 0)) {
			sum[n] += x
		}
		same("sum", sum, lines(exact.Named("sawtooth", 0)))
	}
}

// The model of what comes out is a model: it is told only of what is much softer.
func TestLowIsToldBetweenTheSizes(t *testing.T) {
	// 10 dB are lost where r⁴ = 1/9, at 173 Hz; between F3 (174.6 Hz) and E3 (164.8 Hz).
	var kit spectrum.Kit
	s := synth.Default()
	s.A.Shape = synth.Sine
	for note, told := range map[float64]bool{53: false, 52: true} {
		s.Note = note
		if b := listen(&kit, s); (b.lost > mostLost) != told {
			t.Errorf("a sine at note %v loses %.2f dB", note, b.lost)
		}
	}
}
