package take

import (
	"fmt"
	"math"
	"testing"
)

// waves are the Fourier series of the shapes, as sums of partials below 20 kHz
// and half the rate: level and sign of partial k (sawtooth 1/k, square 1/k for
// odd k, triangle ±1/k² for odd k; M. Abramowitz and I. Stegun, Handbook of
// Mathematical Functions, 23.1, or any table of Fourier series).
var waves = []struct {
	name    string
	partial func(k int) float64
}{
	{"sawtooth", func(k int) float64 { return 1 / float64(k) }},
	{"square", func(k int) float64 { return float64(k%2) / float64(k) }},
	{"triangle", func(k int) float64 { return float64(k%2) * float64(1-k%4+1) / float64(k*k) }},
	{"sine", func(k int) float64 { return map[bool]float64{true: 1}[k == 1] }},
	{"pulse of a tenth", func(k int) float64 { return math.Sin(math.Pi*float64(k)*0.1) / float64(k) }},
	{"no fundamental", func(k int) float64 { return map[bool]float64{true: 1 / float64(k)}[k > 1] }},
	{"partials 3 to 6 only", func(k int) float64 { return map[bool]float64{true: 1}[k >= 3 && k <= 6] }},
}

// series is a sum of partials of hz for some seconds, rms 0.1, with 10 ms of
// fade at either end.
func series(partial func(int) float64, hz, seconds, rate float64) []float32 {
	x := make([]float64, int(seconds*rate))
	for k := 1; float64(k)*hz < math.Min(20000, rate/2); k++ {
		a := partial(k)
		if a == 0 {
			continue
		}
		step := 2 * math.Pi * float64(k) * hz / rate
		// sin(n·step) by its recursion 2·cos(step)·s[n-1] - s[n-2].
		c, s1, s2 := 2*math.Cos(step), math.Sin(1.1*float64(k)), math.Sin(1.1*float64(k)-step)
		for i := range x {
			x[i] += a * s1
			s1, s2 = c*s1-s2, s1
		}
	}
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	gain := 0.1 / math.Sqrt(sum/float64(len(x)))
	out := make([]float32, len(x))
	for i, v := range x {
		edge := math.Min(1, math.Min(float64(i), float64(len(x)-1-i))/(0.01*rate))
		out[i] = float32(v * gain * edge)
	}
	return out
}

// dice is a linear congruential generator (Numerical Recipes, 7.1); normal adds
// twelve of its numbers.
type dice uint32

func (d *dice) next() float64 {
	*d = *d*1664525 + 1013904223
	return float64(*d) / (1 << 32)
}

func (d *dice) normal() (sum float64) {
	for range 12 {
		sum += d.next()
	}
	return sum - 6
}

// between is a recording: silence, the sound, silence, with white noise of rms.
func between(x []float32, rate, rms float64) []float32 {
	lead := int(0.3 * rate)
	out := make([]float32, len(x)+2*lead)
	copy(out[lead:], x)
	d := dice(7)
	for i := range out {
		out[i] += float32(rms * d.normal())
	}
	return out
}

// Over five octaves of notes and more, MIDI 24 to 96, the pitch is within 2 cents
// of that of the formula (the demand), in silence and at 20 dB over white
// noise of the whole band, at the rates of recorders.
func TestPitchOfTheSeries(t *testing.T) {
	for i, w := range waves {
		for _, rate := range []float64{44100, 48000, 96000} {
			for _, noise := range []float64{0, 0.01} {
				if rate != 48000 && (i%5 > 0 || noise == 0) {
					continue // the sawtooth and that without its fundamental stand for the others
				}
				name := fmt.Sprintf("%s, %.1f kHz", w.name, rate/1000)
				if noise > 0 {
					name += ", in noise at 20 dB"
				}
				t.Run(name, func(t *testing.T) {
					worst, at := 0.0, 0.0
					for note := 24.0; note <= 96; note += 9 {
						hz := 440 * math.Exp2((note-69+0.13)/12)
						k, err := Find(between(series(w.partial, hz, 0.8, rate), rate, noise), rate)
						if err != nil {
							t.Errorf("note %v: %v", note, err)
							continue
						}
						cents := 1200 * math.Log2(k.Hz/hz)
						if !(math.Abs(cents) <= math.Abs(worst)) {
							worst, at = cents, note
						}
					}
					t.Logf("at most %.3f cents off, at note %v", worst, at)
					if !(math.Abs(worst) <= 2) {
						t.Errorf("%.2f cents off at note %v", worst, at)
					}
				})
			}
		}
	}
}
