package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// phaseBeats says whether the vibrato can come of two unequal tones: with b/a
// small the frequency swings by ±(b/a)·δ, and the power by 2·b/a (rms √2·b/a).
func (h *heard) phaseBeats(depth float64) bool {
	return h.vibrato.cents < 2*1200/math.Ln2*depth*h.vibrato.hz/h.pitch.hz
}

// beatRate is the δ for which sinusoids of n·δ explain most of the movement of
// partials n, and the share explained.
func beatRate(kit *spectrum.Kit, moves [][]float64, weights []float64, number []int, hop float64) (hz, share float64) {
	n := len(moves[0])
	size := 2048
	for size < 8*n {
		size *= 2
	}
	fft := kit.Real(size)
	w := kit.Hann(n)
	powers := make([][]float64, len(moves))
	variances := make([]float64, len(moves))
	for j, e := range moves {
		var sum float64
		for i, v := range e {
			sum += w[i] * v * v
		}
		X := fft.Transform(e, w)
		p := make([]float64, len(X))
		scale := 2 / (float64(n) / 2 * float64(n) / 2)
		// As a share of what moves under the window, times the true movement.
		variances[j] = variance(e)
		scale *= variances[j] / (sum/(float64(n)/2) + 1e-30)
		for i, c := range X {
			p[i] = (real(c)*real(c) + imag(c)*imag(c)) * scale
		}
		powers[j] = p
	}
	bin := 1 / hop / float64(size)
	fastest := 0.35 / hop // partials that beat faster are smeared by the window
	at := func(delta float64) float64 {
		var sum, all float64
		for j, p := range powers {
			if float64(number[j])*delta > fastest && j > 1 {
				break
			}
			x := float64(number[j]) * delta / bin
			i := int(x)
			if i+1 < len(p) {
				sum += weights[j] * (p[i] + (x-float64(i))*(p[i+1]-p[i]))
			}
			all += weights[j] * variances[j]
		}
		if all == 0 {
			return 0
		}
		return sum / all
	}
	top := math.Min(40, fastest)
	step := bin / 2
	least := math.Max(0.08, 0.6/(float64(n)*hop*math.Max(1, float64(number[len(number)-1])/3)))
	for d := least; d < top; d += step {
		if s := at(d); s > share {
			share, hz = s, d
		}
	}
	for s := step / 2; s > step/64; s /= 2 {
		for _, d := range []float64{hz - s, hz + s} {
			if v := at(d); v > share {
				share, hz = v, d
			}
		}
	}
	return hz, math.Min(1, share)
}

// fainter is the amplitude of the fainter of two beating tones over that of the
// stronger, from the visibility v = 2ab/(a²+b²) of the beats, the smearing by
// the window undone.
func fainter(moves [][]float64, weights []float64, number []int, f *frames, hz float64) float64 {
	var sum, weight float64
	ones := make([]float64, len(moves[0]))
	for i := range ones {
		ones[i] = 1
	}
	for j, e := range moves {
		rate := hz * float64(number[j])
		response := spectrum.Hann.Response(rate * f.span)
		if response < 0.4 || rate*float64(len(e))*f.hop < 1 {
			continue
		}
		s, c, _ := fitSine(e, ones, f.hop, rate)
		sum += weights[j] * math.Hypot(s, c) / response
		weight += weights[j]
	}
	if weight == 0 {
		return 0
	}
	v := math.Min(1, sum/weight)
	if v < 1e-6 {
		return 0
	}
	return (1 - math.Sqrt(1-v*v)) / v
}

// swing is how far a tremolo lets the level fall, 1 - lowest/highest, from the
// mean and the fitted sinusoid of the level; the smearing by the window undone.
func swing(power []float64, f *frames, hz, trend float64) float64 {
	level := make([]float64, len(power))
	for i, p := range power {
		level[i] = math.Sqrt(p * math.Exp(-trend*(float64(i)-float64(len(power))/2)))
	}
	low, high := quantile(level, 0.03), quantile(level, 0.97)
	mid, half := (low+high)/2, (high-low)/2
	half /= math.Max(0.3, spectrum.Hann.Response(hz*f.span))
	if mid+half == 0 {
		return 0
	}
	return math.Min(1, 2*half/(mid+half))
}
