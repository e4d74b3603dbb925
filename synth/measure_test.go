package synth

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"
)

// What the other tests measure with. Frequencies are P·rate/n with odd P, so
// that partials and aliases fall on different bins and no window is needed
// (sound.md 7.1).

const fftLength = 1 << 14

// coherent returns the odd P with P·rate/n next to hz, and that frequency.
func coherent(hz, rate float64, n int) (p int, exact float64) {
	p = 2*int(hz*float64(n)/rate/2) + 1
	return p, float64(p) * rate / float64(n)
}

// oscillators is a description of two bare oscillators of one shape.
func oscillators(how How, shape Shape, duty float64) Sound {
	s := Default()
	s.A.Shape, s.B.Shape = shape, shape
	s.A.Duty, s.B.Duty = duty, duty
	s.Combine.How = how
	return s
}

// steady returns n samples of the two oscillators of s at exactly these
// frequencies at 8 feet, with the ratio of s, after everything has settled:
// without LFO, envelopes, the filter against the mean and the final gain.
func steady(s Sound, rate, hzA, hzB float64, n int) []float64 {
	now := control{
		hzA: hzA, hzB: hzB, ratio: s.Combine.Ratio, balance: s.Combine.Balance,
		dutyA: s.A.Duty, dutyB: s.B.Duty, levelA: s.A.Level, levelB: s.B.Level,
		depth: s.Combine.Depth, index: s.Combine.Index,
	}
	c := newCore(rate)
	c.start(buildOf(&s), s.A.Phase, s.B.Phase, now)
	var x []float64
	settle := tick*c.warm() + n
	for len(x) < settle+n {
		var out [tick]float64
		c.run(&now, &out)
		x = append(x, out[:]...)
	}
	return x[settle:][:n]
}

// spectrum returns c with x = Σ over k of Re(c[k]·e^{j2πk i/n}): the magnitude
// is the amplitude of the partial.
func spectrum(x []float64) []complex128 {
	n := len(x)
	c := fourier.NewFFT(n).Coefficients(nil, x)
	for i := range c {
		c[i] *= complex(2/float64(n), 0)
	}
	c[0] /= 2
	return c
}

// energies splits the energy up to limit Hz into that on multiples of bin p
// and the rest but the mean.
func energies(c []complex128, p int, limit, rate float64) (signal, rest float64) {
	hz := rate / float64(2*(len(c)-1))
	for k := 1; float64(k)*hz <= limit; k++ {
		e := real(c[k])*real(c[k]) + imag(c[k])*imag(c[k])
		if k%p == 0 {
			signal += e
		} else {
			rest += e
		}
	}
	return signal, rest
}

func decibels(ratio float64) float64 { return 20 * math.Log10(ratio) }

func powerDecibels(ratio float64) float64 { return 10 * math.Log10(ratio) }

// blackmanHarris multiplies x by the minimum four-term Blackman-Harris window
// (Harris, Proc. IEEE 66, 1978; coefficients from memory, side lobes at -92
// dB), scaled so that amplitudes stay.
func blackmanHarris(x []float64) []float64 {
	out := make([]float64, len(x))
	for i := range x {
		a := 2 * math.Pi * float64(i) / float64(len(x))
		w := 0.35875 - 0.48829*math.Cos(a) + 0.14128*math.Cos(2*a) - 0.01168*math.Cos(3*a)
		out[i] = x[i] * w / 0.35875
	}
	return out
}

// amplitude is the amplitude of x at a frequency in cycles per sample, seen
// through the window.
func amplitude(x []float64, frequency float64) float64 {
	sum := complex(0, 0)
	for i, y := range blackmanHarris(x) {
		sum += complex(y, 0) * cmplx.Rect(1, -2*math.Pi*frequency*float64(i))
	}
	return 2 * cmplx.Abs(sum) / float64(len(x))
}

// wide turns samples into float64 at the level of the oscillators.
func wide(x []float32) []float64 {
	out := make([]float64, len(x))
	for i, y := range x {
		out[i] = float64(y) / unit
	}
	return out
}

// checkAmplitude fails unless got is within tolerance dB of want; if want is 0,
// unless got is under floor.
func checkAmplitude(t *testing.T, what string, got, want, tolerance, floor float64) {
	t.Helper()
	if want == 0 {
		if !(got < floor) {
			t.Errorf("%s: amplitude %.3g, want none (below %.3g)", what, got, floor)
		}
		return
	}
	if e := decibels(got / want); !(math.Abs(e) <= tolerance) {
		t.Errorf("%s: amplitude %.6f, want %.6f (%.4f dB off, %v allowed)", what, got, want, e, tolerance)
	}
}
