package mark

import (
	"math"

	"partialcredit/synth"
)

// inPhase plays a description again from the start phases from which it comes
// nearest to a recording, whose phases nobody knows: that of B where they decide
// how partials of both add, that of the LFO where it is slow. x is the sound from
// phase 0. The search is coarse, then fine (design choices: eighths of a turn, then
// halves of the step down to a thirty-second).
func (s side) inPhase(g *grid, x, recording []float32, other side, pause func()) []float32 {
	r := &Reference{grid: g, target: g.features(recording)}
	if r.target == nil {
		return x
	}
	d := s.sound
	d.A.Phase, d.B.Phase, d.LFO.Phase = 0, 0, 0
	pause()
	best, least := x, r.distance(g.features(x))
	try := func(phase *float64, at float64) {
		pause()
		last := *phase
		*phase = at - math.Floor(at)
		y := played(d, g.seconds, other.take)
		if steps := r.distance(g.features(y)); steps < least {
			best, least = y, steps
		} else {
			*phase = last
		}
	}
	search := func(phase *float64) {
		for at := 0.125; at < 1 && least > 0; at += 0.125 {
			try(phase, at)
		}
		for step := 0.0625; step > 0.03 && least > 0; step /= 2 {
			middle := *phase
			try(phase, middle+step)
			try(phase, middle-step)
		}
	}
	if meets(d) {
		search(&d.B.Phase)
	}
	if sways(d, g.seconds) {
		for at := 0.25; at < 1 && least > 0; at += 0.25 {
			try(&d.LFO.Phase, at)
		}
	}
	pause()
	return best
}

// meets says whether partials of A and B, or sidebands of theirs, fall on one
// another, or so near that they beat less than once a second.
func meets(s synth.Sound) bool {
	if s.Combine.How == synth.OnlyA || s.Combine.How == synth.Sync {
		return false
	}
	a, b := s.Hz()
	if s.Combine.How == synth.Mix {
		return math.Abs(s.Combine.Balance) < 1 && beating(a, b) < 1 && nearWhole(a, b)
	}
	for n := 1.0; n <= 4; n++ {
		if m := math.Round(n * b / a); m > 0 && math.Abs(n*b-m*a) < 1 {
			return true
		}
	}
	return false
}

// nearWhole says whether two tones are a whole number of times apart, a tenth of an
// octave more or less.
func nearWhole(a, b float64) bool {
	ratio := math.Max(a, b) / math.Min(a, b)
	return math.Abs(math.Log2(ratio/math.Round(ratio))) <= 0.1
}

// sways says whether an LFO swings so few times in some seconds that where it
// begins is heard.
func sways(s synth.Sound, seconds float64) bool {
	l := s.LFO
	return (l.Duty > 0 || l.Cents > 0 || l.Level > 0) && l.Hz*seconds < 12
}
