package mark

import (
	"math"

	"partialcredit/synth"
)

// Step returns one just-noticeable step of a field at its value in s, in the
// field's own unit. For a field with choices it is 1; for one that is not in
// the table, +Inf.
func Step(field string, s synth.Sound) float64 {
	f, ok := synth.FieldByName(field)
	if !ok {
		return math.Inf(1)
	}
	if len(f.Choices) > 0 {
		return 1
	}
	step, ok := steps[field]
	if !ok {
		return math.Inf(1)
	}
	return step(f.Get(&s), &s)
}

// Steps returns how many just-noticeable steps lie between two values of a
// field of s, never negative: the integral of 1/step, by the midpoint rule.
// Two choices lie [choiceSteps] apart.
func Steps(field string, s synth.Sound, from, to float64) float64 {
	f, ok := synth.FieldByName(field)
	if !ok || from == to {
		return 0
	}
	if len(f.Choices) > 0 {
		return choiceSteps
	}
	const n = 64 // the steps change slowly: the error is far under one step
	sum := 0.0
	for i := range n {
		f.Set(&s, from+(to-from)*(float64(i)+0.5)/n)
		sum += 1 / Step(field, s)
	}
	return sum * math.Abs(to-from) / n
}

// Away returns the value of a field that lies so many just-noticeable steps
// from its value in s, on the way to end; ok is false where end is nearer.
func Away(field string, s synth.Sound, steps, end float64) (v float64, ok bool) {
	f, ok := synth.FieldByName(field)
	if !ok {
		return 0, false
	}
	at := f.Get(&s)
	if Steps(field, s, at, end) < steps {
		return end, false
	}
	low, high := at, end
	for range 50 {
		if v = (low + high) / 2; Steps(field, s, at, v) < steps {
			low = v
		} else {
			high = v
		}
	}
	return high, true
}

// choiceSteps stands between two shapes or footages: plainly different, as far
// as a difference that earns a fifth of the marks (design choice).
const choiceSteps = 20

// steps gives the just-noticeable step of a field at value v of sound s.
// "hearing" is hearing.md, "marking" marking.md of the project's references.
var steps = map[string]func(v float64, s *synth.Sound) float64{
	// Practised listeners on bright complex tones, 0.2 to 0.5 % (Moore, from
	// memory; hearing 1.1): 5 cents.
	"note":    func(float64, *synth.Sound) float64 { return pitchStep / 100 },
	"a.cents": func(_ float64, s *synth.Sound) float64 { return detuneStep(s) },
	"b.cents": func(_ float64, s *synth.Sound) float64 { return detuneStep(s) },
	// Durations: 4, 15 and 60 ms at 10, 100 and 1000 ms (Abel 1972, from
	// memory; hearing 1.6).
	"seconds": func(v float64, _ *synth.Sound) float64 { return 0.06 * math.Pow(v, 0.588) },

	"a.duty": dutyStep,
	"b.duty": dutyStep,
	// 1 dB, the working unit of level (hearing 1.3), down to a tenth.
	"a.level":           levelStep,
	"b.level":           levelStep,
	"amplitude.sustain": levelStep,
	// 1 dB of the quieter oscillator, whose level is 1 - |balance| (design
	// choice; hearing 1.3 computes 3.5 dB where the two share partials).
	"combine.balance": func(v float64, s *synth.Sound) float64 { return levelStep(1-math.Abs(v), s) },
	"combine.ratio": func(v float64, s *synth.Sound) float64 {
		if s.Combine.How == synth.Sync {
			return 0.015 * v // marking 5; hearing 1.3 computes 2 to 2.6 % for the peak
		}
		return ratioStep(v, s)
	},
	// Sidebands by 1 dB, or detection of modulation at 5 % (Viemeister 1979;
	// hearing 1.5).
	"combine.depth": func(v float64, _ *synth.Sound) float64 { return math.Max(0.05, 0.12*v) },
	"combine.index": func(v float64, _ *synth.Sound) float64 { return 0.1 + 0.02*v }, // within the 0.08 to 0.25 that hearing 1.3 computes

	// Rates below 20 Hz: practised listeners 5 % on clicks (Front. Psychol.
	// 2014, 01453; hearing 1.5), 7 % here as timbres move less sharply, and a
	// quarter of a cycle in four seconds (marking 5).
	"lfo.hz":    func(v float64, _ *synth.Sound) float64 { return rateStep(v) },
	"lfo.duty":  func(float64, *synth.Sound) float64 { return 0.02 },                       // design choice, marking 5
	"lfo.cents": func(v float64, _ *synth.Sound) float64 { return math.Max(7, 0.15*v) },    // hearing 8(a)2; detection Zwicker & Fastl
	"lfo.level": func(v float64, _ *synth.Sound) float64 { return math.Max(0.05, 0.15*v) }, // hearing 8(a)2
	"lfo.fade":  func(v float64, _ *synth.Sound) float64 { return 0.05 + 0.12*v },          // design choice, marking 5

	// Time constants: -25 to +40 % pass in plucked tones (Tolonen and
	// Järveläinen; hearing 1.6); 15 % where a whole sweep is heard (marking 5).
	"envelope.seconds":  func(v float64, _ *synth.Sound) float64 { return 0.15 * v },
	"amplitude.attack":  func(v float64, _ *synth.Sound) float64 { return 0.002 + 0.25*v }, // design choice: the lower edge of that range
	"amplitude.decay":   func(v float64, _ *synth.Sound) float64 { return 0.25 * v },
	"amplitude.release": func(v float64, _ *synth.Sound) float64 { return 0.002 + 0.25*v },
	"envelope.a":        fallStep,
	"envelope.b":        fallStep,
	"envelope.depth":    func(float64, *synth.Sound) float64 { return 0.02 }, // 1 dB rms of excitation (computed as in hearing 1.3)

	"character": func(float64, *synth.Sound) float64 { return 0.1 }, // design choice
	// Where a movement starts is not heard (hearing 1.7): the whole circle.
	"a.phase":   func(float64, *synth.Sound) float64 { return 1 },
	"b.phase":   func(float64, *synth.Sound) float64 { return 1 },
	"lfo.phase": func(float64, *synth.Sound) float64 { return 1 },
}

const pitchStep = 5.0 // cents

func rateStep(hz float64) float64 { return math.Hypot(0.07*hz, 0.06) }

// rateSteps is how many just-noticeable steps lie between two rates.
func rateSteps(a, b float64) float64 {
	return math.Abs(math.Asinh(b*0.07/0.06)-math.Asinh(a*0.07/0.06)) / 0.07
}

// ratioStep lets sidebands move by about a pitch step (marking 5), or less
// where some nearly meet: then it is their beats that are heard. Lines k·A ± B
// meet where twice B is a multiple of A; those of frequency modulation, folded
// at 0 Hz, where twice A is a multiple of B.
func ratioStep(v float64, s *synth.Sound) float64 {
	if s.Combine.How == synth.OnlyA || s.Combine.How == synth.Mix {
		return 0.004 * v // not heard
	}
	a, b := s.Hz()
	meet, perRatio := math.Abs(2*b-math.Round(2*b/a)*a), 2*a
	if s.Combine.How == synth.FM {
		k := math.Max(1, math.Round(2*a/b))
		meet, perRatio = math.Abs(2*a-k*b), k*a
	}
	return math.Min(0.004*v, rateStep(meet)/perRatio)
}

// detuneStep is in cents. Beside a second oscillator it is the beat rate that
// is heard, and its step is that of a rate; never more than a pitch step.
func detuneStep(s *synth.Sound) float64 {
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
		step = math.Max(step, 0.02)
	}
	return step
}

func levelStep(v float64, _ *synth.Sound) float64 {
	return math.Max(v, quietest) * (math.Pow(10, 1.0/20) - 1)
}

// quietest is the level from which on down steps are equal: one at 20 dB under
// the other is all but covered (design choice).
const quietest = 0.1

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
