package mark

import (
	"math"
	"testing"

	"partialcredit/synth/spectrum"
)

// kit is for tests that run one after the other.
var kit spectrum.Kit

// additive sums sinusoids: the slow twin that what is heard answers to. hz and
// amplitude are functions of the time in seconds, for partial n of count.
func additive(seconds float64, count int, hz func(n int, t float64) float64, amplitude func(n int, t float64) float64) []float32 {
	x := make([]float32, int(seconds*Rate))
	for n := 1; n <= count; n++ {
		phase := 0.13 * float64(n*n%17)
		for i := range x {
			t := float64(i) / Rate
			f := hz(n, t)
			if f < Rate/2 {
				x[i] += float32(0.1 * amplitude(n, t) * math.Sin(2*math.Pi*phase))
			}
			_, phase = math.Modf(phase + f/Rate)
		}
	}
	for i := range min(480, len(x)) { // 10 ms at either end, as every note has
		w := float32(0.5 - 0.5*math.Cos(math.Pi*float64(i)/480))
		x[i] *= w
		x[len(x)-1-i] *= w
	}
	return x
}

func steadyHz(f0 float64) func(int, float64) float64 {
	return func(n int, _ float64) float64 { return float64(n) * f0 }
}

// still1 asks for each partial once: it stands still, and additive takes them one after the other.
func still1(f func(n int) float64) func(int, float64) float64 {
	last, v := 0, 0.0
	return func(n int, _ float64) float64 {
		if n != last {
			last, v = n, f(n)
		}
		return v
	}
}

func saw(n int) float64 { return 1 / float64(n) }

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.4f, want %.4f ± %.4f", what, got, want, tolerance)
	}
}
