package spectrum

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"
)

// naive is the discrete Fourier transform as it is defined.
func naive(x []complex128, sign float64) []complex128 {
	n := len(x)
	out := make([]complex128, n)
	for k := range out {
		for i, v := range x {
			out[k] += v * cmplx.Rect(1, sign*2*math.Pi*float64(i*k%n)/float64(n))
		}
	}
	return out
}

// 1e-13 of the sum of magnitudes is several times the rounding of either way.
func TestTransformsAgreeWithTheDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	w := BlackmanHarris
	for _, n := range []int{2, 3, 4, 5, 7, 8, 12, 15, 60, 64, 100, 243, 360, 512} {
		x, windowed, z := make([]float32, n), make([]complex128, n), make([]complex128, n)
		win := w.Samples(n)
		for i := range x {
			x[i] = float32(r.Float64() - 0.5)
			windowed[i] = complex(float64(x[i])*win[i], 0)
			z[i] = complex(r.Float64()-0.5, r.Float64()-0.5)
		}
		tolerance := 1e-13 * float64(n)
		far := func(what string, got, want []complex128) {
			for k := range got {
				if cmplx.Abs(got[k]-want[k]) > tolerance {
					t.Fatalf("%s of %d: bin %d is %v, want %v", what, n, k, got[k], want[k])
				}
			}
		}
		far("Real", NewReal(n).Coefficients(x, win), naive(windowed, -1))
		c := NewComplex(n)
		got := append([]complex128(nil), z...)
		c.Forward(got)
		far("Forward", got, naive(z, -1))
		c.Backward(got)
		for i := range got {
			got[i] /= complex(float64(n), 0)
		}
		far("Backward", got, z)
	}
}

func TestShortInputIsPadded(t *testing.T) {
	r := NewReal(8)
	r.Coefficients([]float32{9, 9, 9, 9, 9, 9, 9, 9}, nil)
	for k, v := range r.Coefficients([]float32{1}, nil) {
		if cmplx.Abs(v-1) > 1e-15 {
			t.Errorf("bin %d is %v, want 1", k, v)
		}
	}
}

func TestFastLength(t *testing.T) {
	for _, c := range []struct{ n, want int }{
		{1, 1}, {2, 2}, {7, 8}, {11, 12}, {17, 18}, {31, 32}, {1201, 1215}, {95999, 96000}, {96001, 97200},
	} {
		if got := FastLength(c.n); got != c.want {
			t.Errorf("FastLength(%d) = %d, want %d", c.n, got, c.want)
		}
	}
}
