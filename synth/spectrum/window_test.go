package spectrum

import (
	"math"
	"testing"
)

// ENBW in bins and scallop loss in dB. Sources: F. J. Harris, Proc. IEEE
// 66(1):51, 1978, Table I (from memory) and G. Heinzel, A. Rüdiger and R.
// Schilling 2002 as coded in LTPDA's win_*.m; both agree with the figures
// computed for N = 4096 to the digits given.
func TestWindows(t *testing.T) {
	for _, c := range []struct {
		name          string
		w             Window
		enbw, scallop float64
		mainLobe      float64 // half width, bins
		sideLobe      float64 // dB
	}{
		{"rectangular", Rectangular, 1.000, 3.92, 1, -13.3},
		{"Hann", Hann, 1.500, 1.42, 2, -31.5},
		{"Hamming", Hamming, 1.363, 1.75, 2, -42.7},
		{"Blackman", Blackman, 1.727, 1.10, 3, -58.1},
		{"Blackman-Harris", BlackmanHarris, 2.004, 0.83, 4, -92.0},
	} {
		s := c.w.Samples(4096)
		var sum, squares float64
		for _, v := range s {
			sum += v
			squares += v * v
		}
		near(t, c.name+" gain", sum/4096, c.w.Gain(), 1e-12)
		near(t, c.name+" ENBW sampled", 4096*squares/(sum*sum), c.enbw, 0.0006)
		near(t, c.name+" ENBW", c.w.ENBW(), c.enbw, 0.0006)
		near(t, c.name+" scallop", -DB(c.w.Response(0.5)), c.scallop, 0.006)
		side := 0.0
		for b := c.mainLobe; b < c.mainLobe+10; b += 0.005 {
			side = math.Max(side, math.Abs(c.w.Response(b)))
		}
		near(t, c.name+" side lobe", DB(side), c.sideLobe, 0.06)
	}
}

// Samples goes another way than the definition, of which this is one line.
func TestWindowSamples(t *testing.T) {
	for _, n := range []int{1, 2, 3, 8, 45} {
		for i, v := range BlackmanHarris.Samples(n) {
			want, sign := 0.0, 1.0
			for k, a := range BlackmanHarris {
				want += sign * a * math.Cos(2*math.Pi*float64(k*i)/float64(n))
				sign = -sign
			}
			near(t, "sample", v, want, 1e-15)
		}
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tolerance)
	}
}
