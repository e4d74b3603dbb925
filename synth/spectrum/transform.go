package spectrum

import "gonum.org/v1/gonum/dsp/fourier"

// A Real transforms n real samples with gonum's FFT (FFTPACK's form). It keeps
// its buffers: one at a time. Known weakness: in WebAssembly it takes several
// times as long as natively, more than other code does.
type Real struct {
	fft *fourier.FFT
	in  []float64
	out []complex128
}

// NewReal prepares a transform of n ≥ 2 real samples. Lengths with no prime
// factor above 5 are fast.
func NewReal(n int) *Real {
	return &Real{fft: fourier.NewFFT(n), in: make([]float64, n), out: make([]complex128, n/2+1)}
}

// Coefficients returns X[k] = Σ x[i]·w[i]·exp(-2πi·ik/n) for 0 ≤ k ≤ n/2,
// unnormalised. A nil w is all ones; an x shorter than n is followed by zeros.
// The slice is overwritten by the next call.
func (r *Real) Coefficients(x []float32, w []float64) []complex128 { return run(r, x, w) }

// Transform is [Real.Coefficients] of values that are no samples.
func (r *Real) Transform(x, w []float64) []complex128 { return run(r, x, w) }

func run[T float32 | float64](r *Real, x []T, w []float64) []complex128 {
	n := min(len(x), len(r.in))
	for i, v := range x[:n] {
		r.in[i] = float64(v)
	}
	if w != nil {
		for i := range r.in[:n] {
			r.in[i] *= w[i]
		}
	}
	clear(r.in[n:])
	return r.fft.Coefficients(r.out, r.in)
}

// A Complex transforms n complex values in place, forwards and back.
type Complex struct{ fft *fourier.CmplxFFT }

// NewComplex prepares a transform of n ≥ 1 complex values.
func NewComplex(n int) *Complex { return &Complex{fourier.NewCmplxFFT(n)} }

// Forward replaces x by X[k] = Σ x[i]·exp(-2πi·ik/n), unnormalised.
func (c *Complex) Forward(x []complex128) { c.fft.Coefficients(x, x) }

// Backward replaces X by x[i] = Σ X[k]·exp(+2πi·ik/n), unnormalised:
// Backward after Forward multiplies by n.
func (c *Complex) Backward(x []complex128) { c.fft.Sequence(x, x) }

// FastLength returns the smallest number ≥ n whose only prime factors are 2, 3
// and 5, a length that transforms fast.
func FastLength(n int) int {
	best := 1
	for best < n {
		best *= 2
	}
	for f5 := 1; f5 < best; f5 *= 5 {
		for f3 := f5; f3 < best; f3 *= 3 {
			f := f3
			for f < n {
				f *= 2
			}
			best = min(best, f)
		}
	}
	return best
}
