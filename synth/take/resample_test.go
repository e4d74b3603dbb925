package take

import (
	"fmt"
	"math"
	"testing"
)

// A sine comes out as the same sine at the other rate, or, where the other rate
// has no room for it, not at all: 100 dB by Kaiser's formula (see resample.go), 96
// of them held here, for 32-bit samples and the table's own steps.
func TestResampleSines(t *testing.T) {
	for _, c := range []struct {
		from, to, hz float64
		passes       bool
	}{
		{44100, 48000, 20, true}, {44100, 48000, 997, true}, {44100, 48000, 10000, true}, {44100, 48000, 17600, true},
		{48000, 44100, 997, true}, {48000, 44100, 22060, false}, {48000, 44100, 23000, false},
		{96000, 48000, 997, true}, {96000, 48000, 19000, true}, {96000, 48000, 24100, false}, {96000, 48000, 30000, false}, {96000, 48000, 47000, false},
		{88200, 48000, 997, true}, {88200, 48000, 40000, false},
		{192000, 48000, 15000, true}, {192000, 48000, 25000, false}, {192000, 48000, 90000, false},
		{8000, 48000, 997, true}, {8000, 48000, 3100, true}, {11025, 48000, 4000, true}, {22050, 48000, 8000, true},
		{44056, 48000, 997, true}, // of early digital tape
	} {
		x := make([]float32, int(0.2*c.from))
		for i := range x {
			x[i] = float32(math.Sin(2 * math.Pi * c.hz * float64(i) / c.from))
		}
		y := Resample(x, c.from, c.to)
		if want := int(math.Ceil(float64(len(x)) * c.to / c.from)); len(y) != want {
			t.Errorf("%v: %d samples, want %d", c, len(y), want)
		}
		worst := 0.0
		for i := len(y) / 4; i < len(y)*3/4; i++ { // away from the ends, where the sine breaks off
			want := 0.0
			if c.passes {
				want = math.Sin(2 * math.Pi * c.hz * float64(i) / c.to)
			}
			worst = math.Max(worst, math.Abs(float64(y[i])-want))
		}
		if db := 20 * math.Log10(worst); db > -96 {
			t.Errorf("%s: %.1f dB off", fmt.Sprintf("%v Hz from %v to %v", c.hz, c.from, c.to), db)
		}
	}
}

// The modified Bessel function: M. Abramowitz and I. Stegun, Handbook of
// Mathematical Functions, table 9.8 (from memory).
func TestBessel(t *testing.T) {
	for x, want := range map[float64]float64{0: 1, 1: 1.2660658778, 2: 2.2795853023, 5: 27.2398718236, 10: 2815.7166284663} {
		if got := bessel(x); math.Abs(got/want-1) > 1e-9 {
			t.Errorf("I0(%v) = %v, want %v", x, got, want)
		}
	}
}
