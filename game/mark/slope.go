package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// The slope of a waveform keeps its jumps and corners: a sawtooth becomes one
// pulse a period, a pulse wave of duty d two of opposite sign that lie d apart,
// a synced wave one for each restart. The autocorrelation of the slope, which
// the power spectrum alone determines, tells how far apart they lie whatever
// the phases are:
//
//	r(τ) = Σ P(f)·f²·cos 2πfτ
//
// Its integral over τ, compared by area between two sounds, is the earth
// mover's distance between their jumps. It is in proportion to a difference of
// duty or sync ratio from the smallest to the largest, where levels of
// partials only say that something is different; and it tells a sawtooth from
// every pulse.

const (
	slopeSpacing = 5.0    // Hz between the bins it is computed from: lags to 1/10 s
	slopeBins    = 8192   // lags are 1/(slopeBins·slopeSpacing) apart, 24 µs
	slopeTaper   = 5000.0 // Hz, standard deviation of the Gaussian that rounds the jumps (design choice)
	slopeLags    = 64     // kept, over half a period of the target
)

// slopeWeights are the factors of the power per bin, f²·exp(-f²/2·taper²) with
// f in kHz.
func slopeWeights(g *tables) []float64 {
	w := make([]float64, len(g.weight))
	for k := range w {
		hz := float64(k) * g.spacing
		w[k] = hz * hz / 1e6 * math.Exp(-0.5*hz*hz/(slopeTaper*slopeTaper))
	}
	return w
}

// jumps returns the integral of the autocorrelation of the slope, which is 1
// at lag 0, at [slopeLags] lags of up to half a period of f0 (Hz).
func (g *grid) jumps(power []float64, f0 float64) []float64 {
	z := make([]float64, slopeBins)
	total := 0.0
	for k, w := range g.slope {
		v := w * power[k]
		total += v
		i, part := math.Modf(float64(k) * g.spacing / slopeSpacing)
		z[int(i)] += v * (1 - part)
		z[int(i)+1] += v * part
	}
	z[0] = 0
	for i := 1; i < len(z); i++ {
		z[i] /= 2 * math.Pi * slopeSpacing * float64(i)
	}
	sines := g.kit.Real(slopeBins).Transform(z, nil) // the imaginary parts are -Σ z·sin
	out := make([]float64, slopeLags)
	for m := range out {
		lag := 0.5 / f0 * (float64(m) + 0.5) / slopeLags // s
		i, part := math.Modf(math.Min(lag*slopeBins*slopeSpacing, slopeBins/2-2))
		out[m] = -(imag(sines[int(i)])*(1-part) + imag(sines[int(i)+1])*part) / total
	}
	return out
}

// jumpDistance is the area between the integrals relative to the larger area
// under either. One may be scaled by up to looseGain for the best fit: how
// strong the highest partials are against the rest, which the scale hangs on,
// is for the other differences to say.
func (p *pair) jumpDistance() float64 {
	best := math.Inf(1)
	for db := -looseGain; db <= looseGain; db += 0.5 {
		gain := spectrum.Amplitude(db)
		apart, t, y := 0.0, 0.0, 0.0
		for i := range p.t.jumps {
			a, b := p.t.jumps[i], gain*p.y.jumps[i]
			apart += math.Abs(a - b)
			t += math.Abs(a)
			y += math.Abs(b)
		}
		if most := math.Max(t, y); most > 0 {
			best = math.Min(best, apart/most)
		} else {
			best = 0
		}
	}
	return best
}

const looseGain = 2.0 // dB (design choice: with 0 a level step of an octave's balance costs half the marks)
