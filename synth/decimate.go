package synth

import "math"

// fullRate is the least sample rate at which a voice sounds as it does in the app: from here on all
// of the audible range is whole, and the limits of doc.go lie above it.
const fullRate = 44100

// RenderBandLimited is [Render] for files of any sample rate from 8000 Hz on. Below 44.1 kHz the
// note is made at a multiple of the rate that is not, and brought down by [Decimate], so that what
// is left of it is the sound of the app up to 0.45 times the rate, and nothing else.
func RenderBandLimited(s Sound, rate int) []float32 {
	by := (fullRate + rate - 1) / rate
	if rate >= fullRate || rate <= 0 {
		return Render(s, float64(rate))
	}
	return Decimate(Render(s, float64(rate*by)), by)
}

// Decimate divides the sample rate by a whole number. What lies above half the new rate is taken
// off first, by a sinc under a Kaiser window,
//
//	h(t) = 2f·sinc(2ft)·I0(β·sqrt(1-(t/T)²))/I0(β), |t| < T
//
// whole up to 0.45 times the new rate and gone from half of it on, f in the middle: within 0.001
// dB and by 100 dB (Kaiser's formulas for length and β as in Oppenheim & Schafer, Discrete-Time
// Signal Processing, from memory, designed for 110 dB; the tests measure it). It is centred: nothing
// is delayed. Beyond its ends the sound is silent.
func Decimate(samples []float32, by int) []float32 {
	if by <= 1 {
		return append([]float32(nil), samples...)
	}
	const down = 110
	width := 0.05 / float64(by) // of the transition, in cycles a sample
	half := int(math.Ceil((down-7.95)/(14.36*width)/2)) + 1
	beta := 0.1102 * (down - 8.7)
	corner := 0.475 / float64(by)
	h := make([]float64, half+1)
	sum := 0.0
	for i := range h {
		r := float64(i) / float64(half)
		h[i] = 2 * corner * bessel0(beta*math.Sqrt(1-r*r)) / bessel0(beta)
		if i > 0 {
			x := 2 * math.Pi * corner * float64(i)
			h[i] *= math.Sin(x) / x
			sum += h[i]
		}
		sum += h[i]
	}
	out := make([]float32, (len(samples)+by-1)/by)
	for n := range out {
		at := n * by
		y := 0.0
		for i := max(0, at-half); i <= min(len(samples)-1, at+half); i++ {
			y += h[max(i-at, at-i)] * float64(samples[i])
		}
		out[n] = float32(y / sum)
	}
	return out
}
