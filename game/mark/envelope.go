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
	ratio  int       // samples of its transform per envelope value
	smooth kernel    // the low-pass, in samples of its transform
}

// bandsOf makes the 32 bands, every Cam from 2 to 33, each 2.5 ERB to either
// side.
func bandsOf(g *tables) []band {
	var bands []band
	for _, c := range spectrum.Centres(2, 33, 1) {
		reach := 2.5 * spectrum.ERB(c)
		first := max(0, int(math.Ceil((c-reach)/g.spacing)))
		last := min(len(g.weight)-1, int((c+reach)/g.spacing))
		b := band{first: first}
		for k := first; k <= last; k++ {
			b.weight = append(b.weight, math.Sqrt(spectrum.Roex(float64(k)*g.spacing, c)))
		}
		n := g.envelopes()
		b.ratio = spectrum.FastLength((len(b.weight) + n - 1) / n)
		b.smooth = gaussian(envelopeRate * float64(b.ratio) / (2 * math.Pi * smoothing))
		bands = append(bands, b)
	}
	return bands
}

// envelopes is the number of values of an envelope.
func (g *tables) envelopes() int { return int(math.Round(envelopeRate * g.seconds)) }

// envelope returns the smoothed power of the band over time, at envelopeRate:
// the squared magnitude of the band's analytic signal, as if the sound went
// round in a circle.
func (g *grid) envelope(b *band, x []complex128) []float64 {
	n := g.envelopes()
	z := room(&g.analytic, n*b.ratio)
	for i, v := range x[b.first:][:len(b.weight)] {
		w := b.weight[i]
		z[i] = complex(w*real(v), w*imag(v))
	}
	clear(z[len(b.weight):])
	g.kit.Complex(len(z)).Backward(z)
	// Padded at either end by what the low-pass reaches.
	reach := len(b.smooth) - 1
	power := room(&g.power, len(z)+2*reach)
	for i, v := range z {
		power[reach+i] = real(v)*real(v) + imag(v)*imag(v)
	}
	copy(power[:reach], power[len(z):])
	copy(power[reach+len(z):], power[reach:])
	e := make([]float64, n)
	for m := range e {
		e[m] = b.smooth.at(power[m*b.ratio:])
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
		x[i] = onPower.of(v + 0.003*mean + 1e-7)
		sum += x[i]
	}
	for i := range x {
		x[i] = x[i]/(sum/float64(len(e))) - 1
	}
	return x, mean
}
