package figure

import (
	"math"

	"partialcredit/game/plot"
	"partialcredit/synth"
)

// A Signal is a stretch of sound that is pictured, a steady one at best.
type Signal struct {
	Samples []float32
	Cycle   []float32 // beside each sample the phase, 0 to 1, that triggers the trace; nil where it is not known
	Rate    float64   // samples a second
	Hz      float64   // of partial 1; 0 where there is none
}

// Rate is the sample rate at which descriptions are made to sound for pictures.
const Rate = 48000

const (
	steadyAt = 0.6   // seconds into the note up to which it is pictured, as in the app
	stretch  = 16384 // samples, a third of a second
	cycles   = 10    // periods of the note, where that is more: the trigger has a choice then
)

// OfSound is the part of a note that the app pictures while it is silent: what comes after 0.6 s,
// or while a stroke is still loud. A note that is too short is held longer.
func OfSound(s synth.Sound) Signal {
	hz := fundamental(&s)
	at := min(steadyAt, 0.6*s.Seconds)
	if s.Amplitude.Sustain < 0.5 {
		at = min(at, s.Amplitude.Attack+s.Amplitude.Decay)
	}
	long := max(stretch, int(cycles*Rate/hz))
	n := max(int(at*Rate), long)
	s.Seconds = max(s.Seconds, float64(n)/Rate)
	samples, cycle := make([]float32, n), make([]float32, n)
	synth.NewVoice(s, Rate).Render(samples, cycle)
	return Signal{Samples: samples[n-long:], Cycle: cycle[n-long:], Rate: Rate, Hz: hz}
}

// fundamental is the frequency of partial 1: that of A, or of B where B is
// heard on its own account clearly below.
func fundamental(s *synth.Sound) float64 {
	a, b := s.Hz()
	if s.Combine.How == synth.Mix && s.Combine.Balance > -1 && s.B.Level > 0 && b < 0.75*a {
		return b
	}
	return a
}

// period is the length in samples of what the time base counts: of a sound without partials a
// hundredth of a second.
func (s *Signal) period() float64 {
	if s.Hz > 0 {
		return s.Rate / s.Hz
	}
	return s.Rate / 100
}

// matched returns the gains that make two sounds equally loud (ITU-R BS.1770-4); 1 where either is
// silent.
func matched(yours, target *Signal) (gainYours, gainTarget float64) {
	if target == nil {
		return 1, 1
	}
	a, b := loudness(yours), loudness(target)
	if math.IsInf(a, 0) || math.IsInf(b, 0) {
		return 1, 1
	}
	return math.Pow(10, (b-a)/20), 1
}

func loudness(s *Signal) float64 {
	m := synth.NewMeter(s.Rate)
	m.Write(s.Samples)
	return m.Loudness()
}

// extent is the lowest and the highest value, not above and not below 0.
func extent(s *Signal, gain float64) (low, high float64) {
	for _, x := range s.Samples {
		low, high = min(low, float64(x)), max(high, float64(x))
	}
	return gain * low, gain * high
}

// wave returns the trace of a stretch span samples long across a box, its trigger lead pixels from
// the left.
func (s *Signal) wave(b Box, span, lead, zero, gain, column float64) []plot.Point {
	if len(s.Samples) == 0 {
		return nil
	}
	var trigger plot.Trigger
	var sampler plot.Sampler
	start := trigger.Start(s.Samples, s.Cycle, span) - span*lead/b.W
	if s.Cycle == nil {
		// The trigger looks for crossings behind a low-pass of first order with its corner at six cycles
		// a picture (game/plot); by so much it delays partial 1.
		start -= math.Atan(span/s.period()/6) / (2 * math.Pi) * s.period()
	}
	points := sampler.Points(nil, s.Samples, plot.Frame{
		Start: max(0, start), Span: span, X: b.X, W: b.W, Zero: zero, Gain: gain, Column: column,
	})
	return plot.Simplify(points, 0.04)
}
