package mark

import (
	"math"

	"partialcredit/synth"
)

// Rate is the sample rate in hertz at which sounds are rendered for marking,
// whatever the device plays at.
const Rate = 48000

// lengths are the seconds a sound may last for marking. Two seconds hold
// enough of a steady sound; a slow movement needs four of its cycles (Lee and
// Bacon 1997: depth discrimination improves up to about four), but time is
// short: beyond four seconds two cycles must do, and six are the most (design
// choices). At [Rate] all are lengths that transform fast.
var lengths = []struct{ seconds, cycles float64 }{{2, 4}, {3, 4}, {4, 2}, {6, 0}}

// listening returns how many seconds of the target are needed to mark it.
func listening(target synth.Sound) float64 {
	slowest := math.Inf(1) // Hz
	if l := target.LFO; l.Duty > 0 || l.Cents > 0 || l.Level > 0 {
		slowest = l.Hz
	}
	if c := target.Combine; c.How == synth.Mix && math.Abs(c.Balance) < 1 {
		a, b := target.Hz()
		if d := beating(a, b); d > 0 {
			slowest = math.Min(slowest, d)
		}
	}
	i := 0
	for lengths[i].seconds*slowest < lengths[i].cycles {
		i++
	}
	return lengths[i].seconds
}

// beating is how often a second two harmonic tones beat: how far the lowest
// partials that nearly meet are apart, 0 where none come nearer than a tenth of
// an octave.
func beating(a, b float64) float64 {
	low, high := math.Min(a, b), math.Max(a, b)
	n := math.Round(high / low)
	if math.Abs(math.Log2(high/(n*low))) > 0.1 {
		return 0
	}
	return math.Abs(high - n*low)
}

// perform renders a sound as it is compared: from fixed start phases, so that
// a start phase cannot cost marks even where it decides how coinciding
// partials add, and cut or filled with silence to the given length.
func perform(s synth.Sound, seconds float64) []float32 {
	s.A.Phase, s.B.Phase, s.LFO.Phase = 0, 0, 0
	s.Seconds = math.Max(0.1, seconds-s.Amplitude.Release)
	out := make([]float32, int(math.Round(seconds*Rate)))
	copy(out, synth.Render(s, Rate))
	return out
}
