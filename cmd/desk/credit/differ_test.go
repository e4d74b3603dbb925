package credit

import (
	"math"
	"testing"

	"partialcredit/synth"
)

// Rms excitation differences between harmonic spectra at 220 Hz, partials up to
// 16 kHz, computed with general-purpose tools: hearing.md 8(c)12 of the
// project's references. Here partials reach 20 kHz, and levels are those of
// the rendered sounds, so half a decibel is allowed.
func TestDifferentShapes(t *testing.T) {
	ear := NewEar()
	listen := func(shape synth.Shape, duty float64) Pattern {
		s := synth.Default()
		s.A.Shape, s.A.Duty = shape, duty
		return ear.Listen(s)
	}
	saw, square, triangle, sine := listen(synth.Sawtooth, 0.5), listen(synth.Pulse, 0.5), listen(synth.Triangle, 0.5), listen(synth.Sine, 0.5)
	for _, c := range []struct {
		name string
		a, b Pattern
		want float64
	}{
		{"sawtooth and square", saw, square, 7.16},
		{"sawtooth and triangle", saw, triangle, 14.80},
		{"sawtooth and sine", saw, sine, 16.60},
		{"square and triangle", square, triangle, 11.16},
		{"triangle and sine", triangle, sine, 4.66},
		{"sawtooth and pulse of 25 %", saw, listen(synth.Pulse, 0.25), 3.43},
		{"pulse of 30 % and of 70 %", listen(synth.Pulse, 0.3), listen(synth.Pulse, 0.7), 0},
	} {
		if got := Different(c.a, c.b); !(math.Abs(got-c.want) <= 0.5) {
			t.Errorf("%s: %.2f dB, want %.2f", c.name, got, c.want)
		}
	}
	if d := Different(nil, saw); !math.IsInf(d, 1) {
		t.Errorf("silence and a sawtooth: %v", d)
	}
}
