package spectrum

import (
	"math"
	"testing"
)

// TestRepeats compares with the sums of its definition, one after the other.
func TestRepeats(t *testing.T) {
	x := tone(601, 48000, Line{Hz: 440, Amplitude: 0.5}, Line{Hz: 1330, Amplitude: 0.2})
	var kit Kit
	got := kit.Repeats(x, 400)
	for lag := range got {
		var products, power float64
		for i := 0; i+lag < len(x); i++ {
			a, b := float64(x[i]), float64(x[i+lag])
			products += a * b
			power += a*a + b*b
		}
		if want := 2 * products / power; math.Abs(got[lag]-want) > 1e-9 {
			t.Fatalf("after %d samples %v, want %v", lag, got[lag], want)
		}
	}
	if kit.Repeats(make([]float32, 100), 50) != nil {
		t.Error("silence repeats")
	}
}
