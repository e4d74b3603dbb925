package mark

import (
	"math"

	"partialcredit/synth"
)

// A StepSize is the just-noticeable step of a field: in words, where it comes
// from, and as a function of the field's value v and the sound.
type StepSize struct {
	Field  string
	Size   string
	Source string

	step func(v float64, s *synth.Sound) float64
}

// StepSizes are all step sizes, the one place where they are written down.
// "hearing" and "marking" are hearing.md and marking.md of the project's
// references, "from memory" what could not be looked up.
var StepSizes = []StepSize{
	{"note", "5 cents", "practised listeners on bright complex tones, 0.2 to 0.5 % (Moore, from memory; hearing 1.1)",
		constant(pitchStep / 100)},
	{"a.cents", "5 cents; in a mix one step of the rate of beats where that is less", "as note; beats: as lfo.hz", detuneStep},
	{"b.cents", "5 cents; in a mix one step of the rate of beats where that is less", "as note; beats: as lfo.hz", detuneStep},
	{"a.duty", "4 % of the narrower part; 0.02 where an LFO moves it", "1 dB rms of excitation, computed (hearing 1.3); moving: design choice (marking 5)", dutyStep},
	{"b.duty", "4 % of the narrower part; 0.02 where an LFO moves it", "as a.duty", dutyStep},
	{"a.level", "1 dB down to 0.1, then 0.012", "the working unit of level (hearing 1.3); floor: design choice", levelStep},
	{"b.level", "1 dB down to 0.1, then 0.012", "as a.level", levelStep},
	{"combine.balance", "1 dB of the fainter oscillator", "as a.level",
		func(v float64, s *synth.Sound) float64 { return levelStep(1-math.Abs(v), s) }},
	{"combine.ratio", "sync 1.5 %; ring and am 0.3 % of 1 + ratio, fm 0.4 %, or one step of the rate of beats where sidebands nearly meet",
		"sync: the peak moves, marking 5 (hearing 1.3 computes 2 to 2.6 %); else: a pitch step of the sidebands; beats: as lfo.hz", ratioStep},
	{"combine.depth", "12 %, at least 0.05", "1 dB of the sidebands (hearing 1.3); detection of modulation at 5 % (Viemeister 1979; hearing 1.5)", atLeast(0.05, 0.12)},
	{"combine.index", "0.1 + 2 %", "1 dB rms of excitation, computed 0.08 to 0.25 (hearing 1.3)", linear(0.1, 0.02)},
	{"lfo.hz", "7 % and 0.06 Hz, as the root of the sum of squares", "clicks below 20 Hz 5 % (Front. Psychol. 2014, 01453; hearing 1.5), more as timbres move less sharply; a quarter of a cycle in four seconds (marking 5)",
		func(v float64, _ *synth.Sound) float64 { return rateStep(v) }},
	{"lfo.duty", "0.02", "design choice (marking 5)", constant(widthStep)},
	{"lfo.cents", "15 %, at least 7 cents", "hearing 8(a)2; detection: Zwicker and Fastl, from memory (hearing 1.5)", vibratoStep},
	{"lfo.level", "15 %, at least 0.05", "hearing 8(a)2; detection: Viemeister 1979 (hearing 1.5)", atLeast(0.05, 0.15)},
	{"lfo.fade", "a quarter of a cycle + 12 %, more where the movement is faint", "design choice after marking 5, which has 0.05 s + 12 %", fadeStep},
	{"envelope.seconds", "15 %", "design choice (marking 5): a whole sweep is heard; plucked tones -25 to +40 % (Tolonen and Järveläinen; hearing 1.6)", linear(0, 0.15)},
	{"envelope.a", "0.4 semitones + 4 %; sync 1 semitone + 8 %", "a tenth of an ERB, 23 to 57 cents (Järveläinen and Välimäki; hearing 1.1); sync: marking 5", fallStep},
	{"envelope.b", "0.4 semitones + 4 %; sync 1 semitone + 8 %", "as envelope.a", fallStep},
	{"envelope.depth", "0.02", "1 dB rms of excitation, computed as in hearing 1.3", constant(0.02)},
	{"amplitude.attack", "2 ms + 25 %", "design choice: the lower edge of the range for plucked tones (hearing 1.6)", linear(0.002, 0.25)},
	{"amplitude.decay", "25 %", "plucked tones -25 to +40 % (Tolonen and Järveläinen; hearing 1.6)", linear(0, 0.25)},
	{"amplitude.sustain", "1 dB down to 0.1, then 0.012", "as a.level", levelStep},
	{"amplitude.release", "2 ms + 25 %", "as amplitude.attack", linear(0.002, 0.25)},
	{"seconds", "6 % of v^0.588", "4, 15 and 60 ms at 10, 100 and 1000 ms (Abel 1972, from memory; hearing 1.6)",
		func(v float64, _ *synth.Sound) float64 { return 0.06 * math.Pow(v, 0.588) }},
	{"character", "0.1", "design choice", constant(0.1)},
	{"a.phase", "a whole cycle", "where a movement starts is not heard (hearing 1.7)", constant(1)},
	{"b.phase", "a whole cycle", "as a.phase", constant(1)},
	{"lfo.phase", "a whole cycle", "as a.phase", constant(1)},
}

func constant(step float64) func(float64, *synth.Sound) float64 {
	return func(float64, *synth.Sound) float64 { return step }
}

// linear is a fixed part and a part in proportion to the value.
func linear(fixed, part float64) func(float64, *synth.Sound) float64 {
	return func(v float64, _ *synth.Sound) float64 { return fixed + part*v }
}

func atLeast(least, part float64) func(float64, *synth.Sound) float64 {
	return func(v float64, _ *synth.Sound) float64 { return math.Max(least, part*v) }
}

const (
	pitchStep = 5.0  // cents
	widthStep = 0.02 // of the period, of a width that moves
)

var (
	vibratoStep = atLeast(7, 0.15)    // cents
	tremoloStep = atLeast(0.05, 0.15) // linear
)

func rateStep(hz float64) float64 { return math.Hypot(0.07*hz, 0.06) }

// rateSteps is how many just-noticeable steps lie between two rates.
func rateSteps(a, b float64) float64 {
	return math.Abs(math.Asinh(b*0.07/0.06)-math.Asinh(a*0.07/0.06)) / 0.07
}

// ratioStep lets sidebands move by about a pitch step (marking 5), or less
// where some nearly meet: then it is their beats that are heard. Under sync it
// is the peak that moves.
func ratioStep(v float64, s *synth.Sound) float64 {
	switch s.Combine.How {
	case synth.OnlyA, synth.Mix:
		return 0.004 * v // not heard
	case synth.Sync:
		return 0.015 * v
	}
	step := 0.004 * v // the outer sidebands
	if s.Combine.How != synth.FM {
		step = 0.003 * (1 + v) // the sum of A and B
	}
	beats, perRatio := meeting(s)
	return math.Min(step, rateStep(beats)/perRatio)
}

// meeting returns the rate in hertz at which the sidebands that nearly meet
// beat, and how much of it one of ratio makes. Lines j·A ± B and k·A ± B of a
// product meet where B is half a multiple of A, or a multiple where A has odd
// partials only; those of two sines only where B is twice an A that is there
// itself. Lines of frequency modulation, folded at 0 Hz, meet where twice A is a
// multiple of B.
func meeting(s *synth.Sound) (beats, perRatio float64) {
	a, b := s.Hz()
	if s.Combine.How == synth.FM {
		k := math.Max(1, math.Round(2*a/b))
		return math.Abs(2*a - k*b), k * a
	}
	apart := a / 2
	switch {
	case s.A.Shape == synth.Sine && s.Combine.How == synth.AM:
		return 2 * math.Abs(b-2*a), 2 * a
	case s.A.Shape == synth.Sine:
		return math.Inf(1), a
	case s.A.Shape == synth.Triangle || s.A.Shape == synth.Pulse && s.A.Duty == 0.5:
		apart = a
	}
	return 2 * math.Abs(b-math.Max(1, math.Round(b/apart))*apart), 2 * a
}

// detuneStep is in cents. Beside a second oscillator it is the beat rate that
// is heard, and its step is that of a rate; never more than a pitch step.
func detuneStep(_ float64, s *synth.Sound) float64 {
	if s.Combine.How != synth.Mix {
		return pitchStep
	}
	a, b := s.Hz()
	perCent := math.Max(a, b) * math.Ln2 / 1200
	return math.Min(pitchStep, rateStep(beating(a, b))/perCent)
}

// dutyStep is 4 % of the width of the narrower part: 1 dB rms of excitation
// (computed; hearing 1.3). While an LFO moves it, its centre is less sharp
// (marking 5).
func dutyStep(v float64, s *synth.Sound) float64 {
	step := 0.04 * math.Min(v, 1-v)
	if s.LFO.Duty > 0 {
		step = math.Max(step, widthStep)
	}
	return step
}

func levelStep(v float64, _ *synth.Sound) float64 {
	return math.Max(v, quietest) * (math.Pow(10, 1.0/20) - 1)
}

// quietest is the level from which on down steps are equal: one at 20 dB under
// the other is all but covered (design choice).
const quietest = 0.1

// fadeStep: a movement cannot be heard to grow faster than within a part of its
// cycle, nor sharply where it is only a few steps deep itself.
func fadeStep(v float64, s *synth.Sound) float64 {
	l := &s.LFO
	deep := math.Max(1, math.Max(l.Duty/widthStep, math.Max(l.Cents/vibratoStep(l.Cents, s), l.Level/tremoloStep(l.Level, s))))
	return (0.25/s.LFO.Hz + 0.12*v) * (1 + 4/deep)
}

// fallStep is in semitones: a glide of a tenth of an ERB, 23 to 57 cents, is
// just heard (Järveläinen and Välimäki; hearing 1.1), larger ones to 4 %; a
// sweep of a synced oscillator moves a peak, not the pitch, and is 2 times
// less sharp (marking 5).
func fallStep(v float64, s *synth.Sound) float64 {
	if s.Combine.How == synth.Sync {
		return 1 + 0.08*math.Abs(v)
	}
	return 0.4 + 0.04*math.Abs(v)
}
