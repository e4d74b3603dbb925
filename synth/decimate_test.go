package synth

import (
	"math"
	"testing"
)

// A sine through the decimation, against the sine at the new rate itself: what is below 0.45 of it
// comes through as it was, what is above half of it does not come through.
func TestDecimateAgainstSines(t *testing.T) {
	for _, by := range []int{2, 3, 4, 6} {
		const n = 12000
		in := make([]float32, n)
		for _, f := range []float64{0.01, 0.1, 0.3, 0.4, 0.449, 0.5, 0.51, 0.55, 0.6, 0.75, 0.99, 1, 1.3, 0.49 * float64(by)} { // of the new rate
			for i := range in {
				in[i] = float32(math.Sin(2*math.Pi*f*float64(i)/float64(by) + 0.5))
			}
			out := Decimate(in, by)
			if len(out) != n/by {
				t.Fatalf("%d samples, want %d", len(out), n/by)
			}
			worst := 0.0
			for i := 400; i < len(out)-400; i++ {
				want := 0.0
				if f < 0.45 {
					want = math.Sin(2*math.Pi*f*float64(i) + 0.5)
				}
				worst = math.Max(worst, math.Abs(float64(out[i])-want))
			}
			// 100 dB down; the samples are rounded to 24 bits.
			if db := 20 * math.Log10(worst); db > -100 && !(f > 0.45 && f < 0.5) {
				t.Errorf("by %d at %.3f of the new rate: an error of %.1f dB", by, f, db)
			}
		}
	}
}

// At low rates a note is that of the app, without what has no room. The reference is made at 48 kHz.
func TestLowRatesHoldTheSoundOfTheApp(t *testing.T) {
	s := Default()
	s.Seconds = 0.5
	s.Combine.How, s.Combine.Ratio, s.B.Shape = Ring, 1.5, Pulse
	whole := Render(s, 48000)
	low := RenderBandLimited(s, 8000)
	if len(low) != (len(whole)+5)/6 {
		t.Fatalf("%d samples for %d", len(low), len(whole))
	}
	// The level at frequencies below and above what 8 kHz hold whole, by sums over whole periods of
	// both (110 Hz), in the steady part.
	level := func(x []float32, rate, hz float64) float64 {
		re, im, n := 0.0, 0.0, int(rate/110*40)
		from := int(0.1 * rate)
		for i := range n {
			w := 1 - math.Cos(2*math.Pi*float64(i)/float64(n))
			sin, cos := math.Sincos(2 * math.Pi * hz * float64(i) / rate)
			re += w * cos * float64(x[from+i])
			im += w * sin * float64(x[from+i])
		}
		return 20 * math.Log10(2*math.Hypot(re, im)/float64(n))
	}
	for k := 1; k <= 32; k++ { // to 3520 Hz
		hz := 110 * float64(k)
		a, b := level(whole, 48000, hz), level(low, 8000, hz)
		if a > -90 && math.Abs(a-b) > 0.01 {
			t.Errorf("%v Hz: %.3f dB, want %.3f", hz, b, a)
		}
	}
}
