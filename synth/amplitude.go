package synth

import "math"

// level returns the amplitude envelope at a time in seconds; release is when
// the release starts. Attack and release are raised cosines, the decay is
// exponential; the release multiplies whatever the rest has reached, so that
// no order of events makes a click.
func (a *Amplitude) level(seconds, release float64) float64 {
	y := 1.0
	switch {
	case seconds <= 0:
		return 0
	case seconds < a.Attack:
		y = raisedCosine(seconds / a.Attack)
	case a.Sustain < 1:
		y = a.Sustain + (1-a.Sustain)*math.Exp(-(seconds-a.Attack)/a.Decay)
	}
	if seconds > release {
		y *= 1 - raisedCosine((seconds-release)/a.Release)
	}
	return y
}

// raisedCosine rises from 0 to 1 as x goes from 0 to 1, and stays there.
func raisedCosine(x float64) float64 {
	if x >= 1 {
		return 1
	}
	return (1 - cosineOf(x/2)) / 2
}
