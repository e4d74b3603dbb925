package synth

import (
	"math"
	"testing"
)

func fullSine(hz, rate, seconds float64) []float32 {
	x := make([]float32, int(seconds*rate))
	for i := range x {
		x[i] = float32(math.Sin(2 * math.Pi * hz * float64(i) / rate))
	}
	return x
}

// The coefficients of ITU-R BS.1770-4, Tables 1 and 2, for 48 kHz; for 44.1
// kHz those computed in hearing.md 2.
func TestKWeightingCoefficients(t *testing.T) {
	for _, c := range []struct{ rate, b0, b1, b2, a1, a2, h1, h2, tolerance float64 }{
		{48000, 1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585, -1.99004745483398, 0.99007225036621, 1e-13},
		{44100, 1.5308412300503478, -2.6509799951547297, 1.169079079921587, -1.6636551132560204, 0.7125954280732254, -1.989169673629796, 0.9891990357870393, 1e-13},
	} {
		k := newKWeighting(c.rate)
		for _, p := range [][2]float64{
			{k.shelf.b0, c.b0}, {k.shelf.b1, c.b1}, {k.shelf.b2, c.b2}, {k.shelf.a1, c.a1}, {k.shelf.a2, c.a2},
			{k.highpass.b0, 1}, {k.highpass.b1, -2}, {k.highpass.b2, 1}, {k.highpass.a1, c.h1}, {k.highpass.a2, c.h2},
		} {
			if math.Abs(p[0]-p[1]) > c.tolerance {
				t.Errorf("%v Hz: %.15f, want %.15f", c.rate, p[0], p[1])
			}
		}
	}
}

// BS.1770-4: a full-scale sine of 997 Hz in one channel reads -3.01 LKFS; in
// both, as here, 3.01 dB more. At 44.1 kHz one channel reads -3.0075 (hearing.md
// 2). The other frequencies follow from the weighting, K(f) less that at 997
// Hz, hearing.md 2.
func TestLoudnessOfASine(t *testing.T) {
	const both = 3.0103 // 10·log10 2
	for _, c := range []struct{ hz, rate, want, tolerance float64 }{
		{997, 48000, -3.0103 + both, 0.005},
		{997, 44100, -3.0075 + both, 0.005},
		{100, 48000, -3.0103 + both - 1.13 - 0.698, 0.015}, // two digits given
		{1000, 48000, -3.0103 + both + 0.698 - 0.691, 0.015},
		{2000, 48000, -3.0103 + both + 3.07 - 0.698, 0.015},
		{10000, 48000, -3.0103 + both + 4.04 - 0.698, 0.015},
	} {
		m := NewMeter(c.rate)
		m.Write(fullSine(c.hz, c.rate, 2))
		if got := m.Loudness(); math.Abs(got-c.want) > c.tolerance {
			t.Errorf("%v Hz at %v: %.4f LKFS, want %.4f", c.hz, c.rate, got, c.want)
		}
		if got := m.Peak(); math.Abs(got-1) > 0.01 { // between samples
			t.Errorf("%v Hz at %v: peak %v", c.hz, c.rate, got)
		}
	}
}

// Blocks of 400 ms, the loudest counts: a note of 100 ms has a quarter of the
// energy, what is softer before or after does not matter.
func TestLoudnessOfShortAndUnevenSounds(t *testing.T) {
	quarter := powerDecibels(0.25)
	for _, c := range []struct {
		what string
		x    []float32
		want float64
	}{
		{"100 ms", fullSine(997, 48000, 0.1), quarter},
		{"100 ms and silence", append(fullSine(997, 48000, 0.1), make([]float32, 48000)...), quarter},
		{"silence and 400 ms", append(make([]float32, 48000), fullSine(997, 48000, 0.4)...), 0},
		{"400 ms and silence", append(fullSine(997, 48000, 0.4), make([]float32, 96000)...), 0},
		{"850 ms", fullSine(997, 48000, 0.85), 0},
	} {
		m := NewMeter(48000)
		for i := 0; i < len(c.x); i += 100 {
			m.Write(c.x[i:min(i+100, len(c.x))])
		}
		if got := m.Loudness(); math.Abs(got-c.want) > 0.02 { // the filter settles
			t.Errorf("%s: %.3f LKFS, want %.3f", c.what, got, c.want)
		}
	}
	if got := NewMeter(48000).Loudness(); !math.IsInf(got, -1) {
		t.Errorf("nothing: %v", got)
	}
	m := NewMeter(48000)
	m.Write(make([]float32, 48000))
	if got := m.Loudness(); !math.IsInf(got, -1) {
		t.Errorf("silence: %v", got)
	}
}
