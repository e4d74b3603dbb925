package spectrum

import "math"

// A Window is a sum of cosines, w(x) = Σ (-1)^k·a[k]·cos(2πkx) for 0 ≤ x < 1,
// given by its coefficients a (F. J. Harris, Proc. IEEE 66(1):51, 1978).
type Window []float64

// Windows, with the level of their highest side lobe and the half width of
// their main lobe in bins.
var (
	Rectangular    = Window{1}                                  // -13.3 dB, 1
	Hann           = Window{0.5, 0.5}                           // -31.5 dB, 2
	Hamming        = Window{0.54, 0.46}                         // -42.7 dB, 2
	Blackman       = Window{0.42, 0.5, 0.08}                    // -58.1 dB, 3
	BlackmanHarris = Window{0.35875, 0.48829, 0.14128, 0.01168} // -92.0 dB, 4: the minimum 4-term window
)

// Samples returns n ≥ 1 samples of the window over one period ("DFT-even"), so
// that a window of n samples joins the next without a doubled end.
func (w Window) Samples(n int) []float64 {
	s := make([]float64, n)
	for i, t := range turns(n, n/2+1) {
		// -cos x, and from it (-1)^k·cos kx by Chebyshev's recurrence.
		c := -real(t)
		last, now := c, 1.0
		for _, a := range w {
			s[i] += a * now
			last, now = now, 2*c*now-last
		}
		s[(n-i)%n] = s[i]
	}
	return s
}

// Gain is the coherent gain, the mean of the window: the factor by which it
// scales the amplitude of a line that falls on a bin.
func (w Window) Gain() float64 { return w[0] }

// ENBW is the equivalent noise bandwidth in bins, N·Σw²/(Σw)². For a sum of
// cosines it is 1 + ½·Σ(a[k]/a[0])², k ≥ 1.
func (w Window) ENBW() float64 {
	sum := 1.0
	for _, a := range w[1:] {
		sum += (a / w[0]) * (a / w[0]) / 2
	}
	return sum
}

// Response is the amplitude response at an offset in bins from a line, 1 on
// the line, for windows many samples long.
func (w Window) Response(bins float64) float64 {
	sum := w[0] * sinc(bins)
	for k, a := range w[1:] {
		m := float64(k + 1)
		// The sign (-1)^m of the coefficient meets the sign (-1)^m that comes of
		// the window being centred.
		sum += a / 2 * (sinc(bins-m) + sinc(bins+m))
	}
	return sum / w[0]
}

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}
