package spectrum

import "slices"

// A Real transforms n real samples. It keeps its buffers: one at a time.
type Real struct {
	n      int
	fft    *fft         // of n/2 values, or of n where n is odd
	turn   []complex128 // exp(-2πi·k/n) for k ≤ n/4, where n is even
	in     []complex128
	second []complex128
	out    []complex128
}

// NewReal prepares a transform of n ≥ 2 real samples. Lengths with no prime
// factor above 5 are fast, even ones twice as fast as odd ones.
func NewReal(n int) *Real {
	r := &Real{n: n, out: make([]complex128, n/2+1)}
	size := n
	if n%2 == 0 {
		size = n / 2
		r.turn = turns(n, n/4+1)
	}
	r.fft, r.in, r.second = newFFT(size), make([]complex128, size), make([]complex128, size)
	return r
}

// Coefficients returns X[k] = Σ x[i]·w[i]·exp(-2πi·ik/n) for 0 ≤ k ≤ n/2,
// unnormalised. A nil w is all ones; an x shorter than n is followed by zeros.
// The slice is overwritten by the next call.
func (r *Real) Coefficients(x []float32, w []float64) []complex128 {
	load(r, x, w)
	return r.transform()
}

// Transform is [Real.Coefficients] of values that are no samples.
func (r *Real) Transform(x, w []float64) []complex128 {
	load(r, x, w)
	return r.transform()
}

// load puts the even samples into the real parts and the odd ones into the
// imaginary parts. An odd number of samples has no imaginary parts.
func load[T float32 | float64](r *Real, x []T, w []float64) {
	n := min(len(x), r.n)
	at := func(i int) float64 {
		switch {
		case i >= n:
			return 0
		case w == nil:
			return float64(x[i])
		}
		return float64(x[i]) * w[i]
	}
	if r.n%2 == 1 {
		for i := range r.in {
			r.in[i] = complex(at(i), 0)
		}
		return
	}
	pairs := r.in[:n/2]
	if w == nil {
		for i := range pairs {
			p := x[2*i:][:2]
			pairs[i] = complex(float64(p[0]), float64(p[1]))
		}
	} else {
		for i := range pairs {
			p, v := x[2*i:][:2], w[2*i:][:2]
			pairs[i] = complex(float64(p[0])*v[0], float64(p[1])*v[1])
		}
	}
	if rest := r.in[n/2:]; len(rest) > 0 {
		clear(rest)
		rest[0] = complex(at(n-n%2), 0)
	}
}

// transform takes the two interleaved transforms apart: of z = even + i·odd
// samples, with h = n/2,
//
//	even[k] = (Z[k] + conj Z[h-k])/2, odd[k] = (Z[k] - conj Z[h-k])/2i
//	X[k] = even[k] + exp(-2πi·k/n)·odd[k], X[h-k] = conj(even[k] - exp(-2πi·k/n)·odd[k])
func (r *Real) transform() []complex128 {
	z := r.fft.forward(r.in, r.second)
	h := len(z)
	if r.n%2 == 1 {
		copy(r.out, z)
		return r.out
	}
	r.out[0], r.out[h] = complex(real(z[0])+imag(z[0]), 0), complex(real(z[0])-imag(z[0]), 0)
	for k := 1; k <= h/2; k++ {
		a, b := z[k], z[h-k]
		even := complex((real(a)+real(b))/2, (imag(a)-imag(b))/2)
		odd := r.turn[k] * complex((imag(a)+imag(b))/2, (real(b)-real(a))/2)
		r.out[k] = even + odd
		r.out[h-k] = complex(real(even)-real(odd), imag(odd)-imag(even))
	}
	return r.out
}

// A Complex transforms n complex values in place, forwards and back. It keeps
// a buffer: one at a time.
type Complex struct {
	fft    *fft
	second []complex128
}

// NewComplex prepares a transform of n ≥ 1 complex values.
func NewComplex(n int) *Complex { return &Complex{newFFT(n), make([]complex128, n)} }

// Forward replaces x by X[k] = Σ x[i]·exp(-2πi·ik/n), unnormalised.
func (c *Complex) Forward(x []complex128) {
	if out := c.fft.forward(x, c.second); &out[0] != &x[0] {
		copy(x, out)
	}
}

// Backward replaces X by x[i] = Σ X[k]·exp(+2πi·ik/n), unnormalised:
// Backward after Forward multiplies by n.
func (c *Complex) Backward(x []complex128) {
	c.Forward(x)
	slices.Reverse(x[1:])
}

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
