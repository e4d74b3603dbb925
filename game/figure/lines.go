package figure

import (
	"math"

	"partialcredit/synth/spectrum"
)

// A line is a partial, or a line that is none: number is 0 then.
type line struct {
	number int
	hz, db float64
}

const (
	lowestDB = -96    // under the strongest: 4 dB over the side lobes of the window
	highest  = 20000. // Hz
	lowest   = 16.    // Hz: C of 32 feet has its partial 1 there
	strayed  = 0.03   // of the distance of partials: what is further off is none,
	detuned  = 0.004  // of its frequency, 7 cents: but for this
)

// lines measures the lines of a signal, in decibels of their amplitude.
func (s *Signal) lines(gain float64) []line {
	n := fast(min(len(s.Samples), max(stretch, int(cycles*s.period())))) // as of a description
	if n < 256 {
		return nil
	}
	w := spectrum.BlackmanHarris
	x := spectrum.NewReal(n).Coefficients(s.Samples[len(s.Samples)-n:], w.Samples(n))
	found := spectrum.Peaks(nil, x, n, s.Rate, w, 1e-9)
	strongest := 0.0
	for _, l := range found {
		strongest = max(strongest, l.Amplitude)
	}
	resolved := 4 * s.Rate / float64(n) // half a main lobe
	var out []line
	for _, l := range found {
		if l.Hz < lowest || l.Hz > highest || l.Amplitude < strongest*spectrum.Amplitude(lowestDB) {
			continue
		}
		out = append(out, line{s.number(l.Hz, resolved), l.Hz, spectrum.DB(l.Amplitude * gain)})
	}
	return out
}

// fast is a length that transforms fast and is not above n.
func fast(n int) int {
	for m := n; m > 0; m-- {
		if k := spectrum.FastLength(m); k <= n {
			return k
		}
	}
	return 0
}

// number is that of the partial at a frequency, 0 where it is none. What the window cannot tell from
// a partial counts as one: one that beats may come out as two.
func (s *Signal) number(hz, resolved float64) int {
	if !(s.Hz > 0) {
		return 0
	}
	n := math.Round(hz / s.Hz)
	if n < 1 || math.Abs(hz-n*s.Hz) > min(max(strayed*s.Hz, 0.75*resolved+detuned*hz), 0.3*s.Hz) {
		return 0
	}
	return int(n)
}
