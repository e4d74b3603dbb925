package spectrum

import (
	"math"
	"testing"
)

func tone(n int, rate float64, lines ...Line) []float32 {
	x := make([]float32, n)
	for i := range x {
		v := 0.0
		for _, l := range lines {
			v += l.Amplitude * math.Cos(2*math.Pi*l.Hz*float64(i)/rate+l.Hz)
		}
		x[i] = float32(v)
	}
	return x
}

// Between bins the peak is biased by at most 0.0032 bins and 0.032 dB with
// Blackman-Harris (computed: see Peaks); the tolerance allows twice that for
// the neighbouring lines and float32 samples.
func TestPeaksFindLines(t *testing.T) {
	const n, rate = 8192, 48000.0
	want := []Line{{440, 1}, {661.3, 0.5}, {1003.7, 0.001}, {15000.2, 0.02}}
	x := tone(n, rate, want...)
	r := NewReal(n)
	got := Peaks(nil, r.Coefficients(x, BlackmanHarris.Samples(n)), n, rate, BlackmanHarris, 0.0005)
	if len(got) != len(want) {
		t.Fatalf("%d lines, want %d: %v", len(got), len(want), got)
	}
	for i, w := range want {
		near(t, "frequency", got[i].Hz, w.Hz, 0.0064*rate/n)
		near(t, "level", DB(got[i].Amplitude), DB(w.Amplitude), 0.064)
	}
}

func TestPeaksOfSilence(t *testing.T) {
	if got := Peaks(nil, NewReal(64).Coefficients(nil, nil), 64, 48000, Rectangular, 0); len(got) != 0 {
		t.Errorf("silence has lines: %v", got)
	}
}
