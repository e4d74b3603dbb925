package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// envelopeRate is the number of envelope values a second, enough for movement
// up to 60 Hz.
const envelopeRate = 128.0

// smoothing is the standard deviation in hertz of the low-pass over the
// envelopes: the ear follows movement up to 50 to 60 Hz (Viemeister 1979).
const smoothing = 28.0

// A band is one auditory filter of those whose envelopes are followed.
type band struct {
	first  int       // its lowest bin
	weight []float64 // square root of the roex weight per bin
	size   int       // length of its transform
}

// bandsOf makes the 32 bands, every Cam from 2 to 33, each 2.5 ERB to either
// side.
func bandsOf(g *grid) []band {
	var bands []band
	for _, c := range spectrum.Centres(2, 33, 1) {
		reach := 2.5 * spectrum.ERB(c)
		first := max(0, int(math.Ceil((c-reach)/g.spacing)))
		last := min(len(g.weight)-1, int((c+reach)/g.spacing))
		b := band{first: first}
		for k := first; k <= last; k++ {
			b.weight = append(b.weight, math.Sqrt(spectrum.Roex(float64(k)*g.spacing, c)))
		}
		// Room for the band and for a whole number of envelope values.
		b.size = spectrum.FastLength(max(len(b.weight), int(2*envelopeRate*g.seconds)/2))
		bands = append(bands, b)
	}
	return bands
}

// envelope returns the smoothed power of the band over time, at envelopeRate.
func (g *grid) envelope(b *band, x []complex128) []float64 {
	z := make([]complex128, b.size)
	for i, w := range b.weight {
		z[i] = x[b.first+i] * complex(w, 0)
	}
	t := g.transform(b.size)
	t.Backward(z)
	for i, v := range z {
		z[i] = complex(real(v)*real(v)+imag(v)*imag(v), 0)
	}
	t.Forward(z)
	n := int(envelopeRate * g.seconds)
	short := make([]complex128, n)
	for k := -n / 2; k < n/2; k++ {
		hz := float64(k) * g.spacing
		low := math.Exp(-0.5*hz*hz/(smoothing*smoothing)) / float64(b.size)
		short[(k+n)%n] = z[(k+b.size)%b.size] * complex(low, 0)
	}
	g.transform(n).Backward(short)
	e := make([]float64, n)
	for i, v := range short {
		e[i] = math.Max(0, real(v))
	}
	return e
}

// movement is the compressed envelope relative to its mean, less 1: what moves
// in a band, whatever its level. mean is the mean power of the band. The
// exponent 0.3 is that of loudness on power (Stevens, common practice); the
// small terms hide what lies far under the rest.
func movement(e []float64) (x []float64, mean float64) {
	for _, v := range e {
		mean += v
	}
	mean /= float64(len(e))
	x = make([]float64, len(e))
	sum := 0.0
	for i, v := range e {
		x[i] = math.Pow(v+0.003*mean+1e-7, 0.3)
		sum += x[i]
	}
	for i := range x {
		x[i] = x[i]/(sum/float64(len(e))) - 1
	}
	return x, mean
}
