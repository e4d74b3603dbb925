package spectrum

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"
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
	for _, n := range []int{2, 3, 4, 5, 6, 7, 8, 12, 15, 49, 60, 64, 77, 100, 242, 243, 360, 512, 625} {
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

// gonum's transforms are FFTPACK's (P. N. Swarztrauber, 1985): the same at
// lengths for which the definition would take too long.
func TestTransformsAgreeWithGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, n := range []int{675, 900, 8192, 9216, 28800, 96000} {
		x, z := make([]float64, n), make([]complex128, n)
		for i := range x {
			x[i] = r.Float64() - 0.5
			z[i] = complex(r.Float64()-0.5, r.Float64()-0.5)
		}
		far := func(what string, got, want []complex128) {
			for k := range want {
				if cmplx.Abs(got[k]-want[k]) > 1e-14*float64(n) {
					t.Fatalf("%s of %d: bin %d is %v, want %v", what, n, k, got[k], want[k])
				}
			}
		}
		far("Real", NewReal(n).Transform(x, nil), fourier.NewFFT(n).Coefficients(nil, x))
		theirs := fourier.NewCmplxFFT(n)
		forward, back := slices.Clone(z), slices.Clone(z)
		NewComplex(n).Forward(forward)
		NewComplex(n).Backward(back)
		far("Forward", forward, theirs.Coefficients(nil, z))
		far("Backward", back, theirs.Sequence(nil, z))
	}
}

// What is left in the buffers by the transform before must not be seen.
func TestShortInputIsPadded(t *testing.T) {
	full := []float32{9, 8, 7, 6, 5, 4, 3, 2, 1, 9}
	for _, n := range []int{8, 9, 10} {
		r := NewReal(n)
		for short := range n {
			for _, w := range [][]float64{nil, Hann.Samples(n)} {
				padded := make([]float32, n)
				copy(padded, full[:short])
				want := slices.Clone(r.Coefficients(padded, w))
				r.Coefficients(full, nil)
				for k, v := range r.Coefficients(full[:short], w) {
					if v != want[k] {
						t.Fatalf("%d of %d: bin %d is %v, want %v", short, n, k, v, want[k])
					}
				}
			}
		}
	}
}

// Nothing is allocated once the plan is made.
func TestTransformsKeepTheirBuffers(t *testing.T) {
	r, c, x, z := NewReal(60), NewComplex(60), make([]float32, 60), make([]complex128, 60)
	if n := testing.AllocsPerRun(10, func() { r.Coefficients(x, nil); c.Forward(z); c.Backward(z) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestKitKeepsWhatItMakes(t *testing.T) {
	var k Kit
	if k.Real(8) != k.Real(8) || k.Complex(8) != k.Complex(8) || &k.Hann(8)[0] != &k.Hann(8)[0] {
		t.Error("made twice")
	}
	if k.Real(8) == k.Real(9) || len(k.Hann(9)) != 9 {
		t.Error("another length is another transform")
	}
	first := k.Real(8)
	for n := most / 100; n < most/20; n += most / 1000 {
		if k.Hann(n); k.kept > most {
			t.Fatalf("%d values are kept, at most %d wanted", k.kept, most)
		}
	}
	if k.Real(8) == first {
		t.Error("kept for ever")
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
