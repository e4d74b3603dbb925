package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// features is what the distance compares of a sound. All of it is taken from
// magnitudes of the weighted spectrum scaled to a total power of 1, so level,
// polarity, DC and phase are gone from the start.
type features struct {
	seconds float64        // of the sound
	power   []float64      // per bin: Hann spectrum without the weighting, for the partials
	fine    []float64      // per cell: Hann spectrum blurred by 15 cents, compressed
	coarse  []float64      // per cell: the same blurred by 40 cents
	profile []float64      // per filter: power
	place   []float64      // per filter: audible power, sum 1
	level   []float64      // per filter: dB, broadly blurred
	jumps   []float64      // per lag: where the jumps of the waveform lie
	mean    []float64      // per band: mean power
	rate    [2][][]float64 // per blur, band and rate: modulation amplitude above threshold
	overall []float64      // per rate: modulation amplitude over all bands, broadly blurred
	depth   []float64      // per band: modulation amplitude over all rates
	slow    [][]float64    // per band and stretch of time: strength of slow movement
	fast    [][]float64    // the same of fast movement
}

// Exponents and floors of the method (marking.md: fitted on rendered sounds);
// fineCompression is an [exponent].
const (
	bandCompression = 0.3
	placeFloor      = 3e-5
	levelFloor      = 1e-4
)

var (
	fineBlur   = gaussian(15 / cellCents)
	coarseBlur = gaussian(40 / cellCents)
	levelBlur  = gaussian(12) // 6 Cam
)

// measure takes the features of a sound of the grid's length; nil for silence.
func (g *grid) measure(samples []float32) *features {
	x := g.listen(samples)
	if x == nil {
		return nil
	}
	f := &features{seconds: g.seconds}
	f.spectra(g, x)
	f.movements(g, x)
	return f
}

func (f *features) spectra(g *grid, x []complex128) {
	plain, hann := make([]float64, len(x)), make([]float64, len(x))
	for k, v := range x {
		plain[k] = real(v)*real(v) + imag(v)*imag(v)
	}
	total := 0.0
	for k := 1; k < len(x)-1; k++ {
		// The Hann window, as it acts on a spectrum.
		re := real(x[k]) - (real(x[k-1])+real(x[k+1]))/2
		im := imag(x[k]) - (imag(x[k-1])+imag(x[k+1]))/2
		hann[k] = re*re + im*im
		total += hann[k]
	}
	f.power = make([]float64, len(x))
	for k, w := range g.weight {
		if w > 0 {
			f.power[k] = hann[k] / (w * w)
		}
	}
	f.jumps = g.jumps(f.power, g.note)
	cell, blurred := make([]float64, cells), make([]float64, cells)
	gather(cell, hann, g.edges)
	compress := func(k kernel) []float64 {
		k.blur(blurred, cell)
		out := make([]float64, cells)
		for j, v := range blurred {
			if v > 0 {
				out[j] = fineCompression.of(v / total)
			}
		}
		return out
	}
	f.fine, f.coarse = compress(fineBlur), compress(coarseBlur)

	gather(cell, plain, g.edges)
	f.profile = profile(cell)
	f.place = make([]float64, len(f.profile))
	sum := 0.0
	for b, p := range f.profile {
		f.place[b] = math.Max(0, p-placeFloor)
		sum += f.place[b]
	}
	for b := range f.place {
		f.place[b] /= sum
	}
	f.level = make([]float64, len(f.profile))
	levelBlur.blur(f.level, f.profile)
	for b, v := range f.level {
		f.level[b] = spectrum.PowerDB(v + levelFloor)
	}
}

func (f *features) movements(g *grid, x []complex128) {
	n := g.envelopes()
	hann := g.kit.Hann(n)
	f.overall = make([]float64, rates)
	blurred := make([]float64, rates)
	weights := 0.0
	for i := range g.bands {
		moving, mean := movement(g.envelope(&g.bands[i], x))
		m := g.modulation(moving, hann)
		power := 0.0
		for _, v := range m {
			power += v
		}
		f.mean = append(f.mean, mean)
		f.depth = append(f.depth, math.Sqrt(power))
		weight := onPower.of(mean)
		weights += weight
		for w, blur := range rateBlurs {
			blur.kernel.blur(blurred, m)
			amplitude := make([]float64, rates)
			for r, v := range blurred {
				amplitude[r] = aboveThreshold(v * ratesPer8v * blur.octaves * 2.5)
				if w == 2 {
					f.overall[r] += weight * amplitude[r]
				}
			}
			if w < 2 {
				f.rate[w] = append(f.rate[w], amplitude)
			}
		}
		slow, fast := g.strength(moving)
		f.slow, f.fast = append(f.slow, slow), append(f.fast, fast)
	}
	for r := range f.overall {
		f.overall[r] /= weights
	}
}
