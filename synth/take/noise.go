package take

import (
	"math"
	"slices"

	"partialcredit/synth/spectrum"
)

// noisy says whether the note is noise. Noise neither repeats nor has lines: in
// the spectrum of a short stretch of it all bins of a third of an octave are
// about as strong. The measure is the spectral flatness (J. D. Johnston, IEEE J.
// Selected Areas in Communications 6:314, 1988, from memory), the geometric mean
// of the power over the arithmetic, within each third of an octave, so that pink
// is as flat as white: exp(-γ) = 0.56 for noise (the power of a bin is
// distributed exponentially), and near nothing for lines.
func (l *listener) noisy(p pitch) bool {
	return p.clarity < 0.7 && l.flatness() > 0.3
}

// flatness is the median over stretches of 0.17 s of the steady part.
func (l *listener) flatness() float64 {
	n := min(8192, l.to-l.from) &^ 1
	fft, window := l.kit.Real(n), spectrum.BlackmanHarris.Samples(n)
	var all []float64
	for from := l.from; from+n <= l.to; from += n {
		all = append(all, flat(fft.Coefficients(l.x[from:from+n], window), Rate/float64(n)))
	}
	if len(all) == 0 {
		return 0
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// flat is the flatness in thirds of an octave from 50 Hz to 16 kHz, weighted with
// their power.
func flat(x []complex128, spacing float64) float64 {
	var sum, weight float64
	for low := 50.0; low < 16000; low *= math.Cbrt(2) {
		from, to := int(low/spacing)+1, int(low*math.Cbrt(2)/spacing)+1
		if to-from < 8 || to >= len(x) {
			continue
		}
		logs, power := 0.0, 0.0
		for _, v := range x[from:to] {
			p := real(v)*real(v) + imag(v)*imag(v) + 1e-20
			logs += math.Log(p)
			power += p
		}
		sum += math.Exp(logs/float64(to-from)) * float64(to-from)
		weight += power
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}
