package take

import (
	"math"
	"slices"

	"partialcredit/synth/spectrum"
)

// longestLines is the length in samples of the stretch whose lines are taken: at
// 0.68 s lines 12 Hz apart stand alone.
const longestLines = 1 << 15

// mostLines bounds how many lines are looked at, the strongest first.
const mostLines = 200

// lines are those of the middle of the steady part.
func (l *listener) lines() []spectrum.Line {
	n := min(longestLines, l.to-l.from) &^ 1
	return l.linesOf(l.from+(l.to-l.from-n)/2, n)
}

// linesOf are the lines of n samples, an even number, lowest first, down to 60 dB
// under the strongest. Of noise a peak in 16,000 stands 14 times over the median
// of the power around it (the power of a bin is distributed exponentially); a
// line stands 40 times over it.
func (l *listener) linesOf(from, n int) []spectrum.Line {
	w := spectrum.BlackmanHarris
	x := l.kit.Real(n).Coefficients(l.x[from:from+n], w.Samples(n))
	lines := spectrum.Peaks(nil, x, n, Rate, w, 1e-6)
	top := 0.0
	for _, p := range lines {
		top = math.Max(top, p.Amplitude)
	}
	floor := medians(x)
	scale := 2 / (float64(n) * w.Gain())
	kept := lines[:0]
	for _, p := range lines {
		noise := floor[int(p.Hz*float64(n)/Rate)/medianBins] * scale * scale
		if p.Amplitude >= 1e-3*top && p.Amplitude*p.Amplitude > 40*noise {
			kept = append(kept, p)
		}
	}
	if len(kept) > mostLines {
		slices.SortFunc(kept, func(a, b spectrum.Line) int { return order(b.Amplitude, a.Amplitude) })
		kept = kept[:mostLines]
	}
	slices.SortFunc(kept, func(a, b spectrum.Line) int { return order(a.Hz, b.Hz) })
	return kept
}

func order(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// medianBins is over how many bins a median is taken: more than lie under the
// lines of low notes.
const medianBins = 128

// medians are those of the power of every medianBins bins.
func medians(x []complex128) []float64 {
	var out []float64
	for from := 0; from < len(x); from += medianBins {
		var p []float64
		for _, v := range x[from:min(from+medianBins, len(x))] {
			p = append(p, real(v)*real(v)+imag(v)*imag(v))
		}
		slices.Sort(p)
		out = append(out, p[len(p)/2])
	}
	return out
}

func power(lines []spectrum.Line) (sum float64) {
	for _, l := range lines {
		sum += l.Amplitude * l.Amplitude
	}
	return sum
}

// member says whether hz is a partial of f: within 10 cents, and at most the 60th.
func member(hz, f float64) bool {
	k := math.Round(hz / f)
	return k >= 1 && k <= 60 && math.Abs(hz-k*f) < 0.006*k*f && math.Abs(hz-k*f) < 0.1*f
}

// share is how much of the power of lines lies on the partials of f.
func share(f float64, lines []spectrum.Line) float64 {
	sum := 0.0
	for _, l := range lines {
		if member(l.Hz, f) {
			sum += l.Amplitude * l.Amplitude
		}
	}
	return sum / (power(lines) + 1e-30)
}

// octave guards against a pitch found too low by a whole factor, where the
// period of a high bright note falls between samples, or too high: the right one
// is the highest whose partials hold all of the power (all but 1 %, see same).
func octave(hz float64, lines []spectrum.Line) float64 {
	for k := 2.0; k <= 3 && share(hz, lines) < same; k++ {
		if share(hz/k, lines) > 0.998 {
			hz /= k
		}
	}
	if all := share(hz, lines); all > 0.9 {
		for k := 8.0; k > 1; k-- {
			if k*hz < highest && share(k*hz, lines) > all-(1-same)/2 {
				return k * hz
			}
		}
	}
	return hz
}

// sharpen fits a harmonic series k·f to the lines by least squares, partials
// weighted with their power, which is the inverse of the variance of their
// frequencies in noise (D. Rife and R. Boorstyn, IEEE Trans. Information Theory
// 20:591, 1974):
//
//	f = Σ a²·k·f[k] / Σ a²·k²
//
// It begins with the low partials and takes in a higher one when f has become
// sure enough to tell which it is. Where the lines are not those of a series, as
// with vibrato, the pitch stays what it was.
func sharpen(hz float64, lines []spectrum.Line) float64 {
	top, numerator, denominator := 0.0, 0.0, 0.0
	for _, p := range lines {
		top = math.Max(top, p.Amplitude)
	}
	f := hz
	for _, p := range lines {
		k := math.Round(p.Hz / f)
		if k < 1 || k > 60 || p.Amplitude < 0.01*top || math.Abs(p.Hz-k*f) > math.Min(0.2*f, 0.012*k*f) { // 20 cents
			continue
		}
		w := p.Amplitude * p.Amplitude
		numerator += w * k * p.Hz
		denominator += w * k * k
		f = numerator / denominator
	}
	if denominator == 0 || math.Abs(f/hz-1) > 0.01 {
		return hz
	}
	return f
}
