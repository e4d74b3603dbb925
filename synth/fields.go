package synth

import (
	"math"
	"strings"
)

var footages = []string{"32", "16", "8", "4", "2"}

func oscFields(letter string, osc func(*Sound) *Osc) []Field {
	name := func(s string) string { return strings.ToLower(letter) + "." + s }
	return []Field{
		{Name: name("shape"), Label: "Shape of " + letter, Default: float64(Sawtooth), Choices: shapeNames, Doc: "waveform",
			at: func(s *Sound) any { return &osc(s).Shape }},
		{Name: name("footage"), Label: "Footage of " + letter, Unit: Feet, Default: 2, Choices: footages, Doc: "8 is the pitch as written, each halving an octave higher",
			at: func(s *Sound) any { return (*footage)(&osc(s).Footage) }},
		{Name: name("cents"), Label: "Detune of " + letter, Unit: Cents, Min: -100, Max: 100, Step: 0.5, Doc: "fine detune",
			at: func(s *Sound) any { return &osc(s).Cents }},
		{Name: name("duty"), Label: "Duty of " + letter, Unit: Fraction, Min: 0.03, Max: 0.97, Default: 0.5, Step: 0.002, Doc: "high part of the pulse",
			at: func(s *Sound) any { return &osc(s).Duty }},
		{Name: name("level"), Label: "Level of " + letter, Unit: Linear, Max: 1, Default: 1, Step: 0.01, Doc: "level of the oscillator",
			at: func(s *Sound) any { return &osc(s).Level }},
		{Name: name("phase"), Label: "Start phase of " + letter, Unit: Cycles, Max: 1, Step: 0.01, Doc: "phase at the start of the note",
			at: func(s *Sound) any { return &osc(s).Phase }},
	}
}

var fields = func() []Field {
	f := []Field{
		{Name: "note", Label: "Note", Unit: MIDINote, Min: 24, Max: 96, Default: 57, Step: 1, Whole: true, Doc: "69 is A4 = 440 Hz (ISO 16)",
			at: func(s *Sound) any { return &s.Note }},
		{Name: "seconds", Label: "Length", Unit: Seconds, Min: 0.1, Max: 10, Default: 2, Step: 1.02, Log: true, Doc: "from the start of the note to the start of its release",
			at: func(s *Sound) any { return &s.Seconds }},
	}
	f = append(f, oscFields("A", func(s *Sound) *Osc { return &s.A })...)
	f = append(f, oscFields("B", func(s *Sound) *Osc { return &s.B })...)
	return append(f,
		Field{Name: "combine.how", Label: "Combination", Choices: howNames, Doc: "how A and B become one sound",
			at: func(s *Sound) any { return &s.Combine.How }},
		Field{Name: "combine.balance", Label: "Balance of A and B", Unit: Linear, Min: -1, Max: 1, Step: 0.01, Doc: "mix: -1 only A, +1 only B",
			at: func(s *Sound) any { return &s.Combine.Balance }},
		Field{Name: "combine.ratio", Label: "Ratio of B to A", Unit: Ratio, Min: 0.25, Max: 8, Default: 1, Step: 1.002, Log: true, Doc: "ring, am, fm and sync: multiplies the frequency of B",
			at: func(s *Sound) any { return &s.Combine.Ratio }},
		Field{Name: "combine.depth", Label: "Modulation depth", Unit: Linear, Max: 1, Default: 1, Step: 0.01, Doc: "am: A times 1 + depth times B",
			at: func(s *Sound) any { return &s.Combine.Depth }},
		Field{Name: "combine.index", Label: "Modulation index", Unit: Radians, Max: 10, Default: 1, Step: 0.02, Doc: "fm: peak phase deviation of A",
			at: func(s *Sound) any { return &s.Combine.Index }},
		Field{Name: "lfo.shape", Label: "Shape of the LFO", Choices: lfoShapeNames, Doc: "waveform of the LFO",
			at: func(s *Sound) any { return &s.LFO.Shape }},
		Field{Name: "lfo.hz", Label: "Rate of the LFO", Unit: Hertz, Min: 0.05, Max: 20, Default: 5, Step: 1.01, Log: true, Doc: "rate of the LFO",
			at: func(s *Sound) any { return &s.LFO.Hz }},
		Field{Name: "lfo.duty", Label: "LFO to duty", Unit: Fraction, Max: 0.5, Step: 0.005, Doc: "peak deviation of the duty of both oscillators",
			at: func(s *Sound) any { return &s.LFO.Duty }},
		Field{Name: "lfo.cents", Label: "LFO to pitch", Unit: Cents, Max: 1200, Step: 1, Doc: "peak deviation of the pitch of both oscillators: vibrato",
			at: func(s *Sound) any { return &s.LFO.Cents }},
		Field{Name: "lfo.level", Label: "LFO to level", Unit: Linear, Max: 1, Step: 0.01, Doc: "the level swings between 1 and 1 less this",
			at: func(s *Sound) any { return &s.LFO.Level }},
		Field{Name: "lfo.fade", Label: "Fade-in of the LFO", Unit: Seconds, Max: 5, Step: 0.02, Doc: "from the start of the note until full depth",
			at: func(s *Sound) any { return &s.LFO.Fade }},
		Field{Name: "lfo.phase", Label: "Start phase of the LFO", Unit: Cycles, Max: 1, Step: 0.01, Doc: "phase at the start of the note",
			at: func(s *Sound) any { return &s.LFO.Phase }},
		Field{Name: "envelope.seconds", Label: "Time of the fall", Unit: Seconds, Min: 0.005, Max: 5, Default: 0.1, Step: 1.02, Log: true, Doc: "time constant of the exponential fall",
			at: func(s *Sound) any { return &s.Envelope.Seconds }},
		Field{Name: "envelope.a", Label: "Fall of the pitch of A", Unit: Semitones, Min: -48, Max: 48, Step: 0.1, Doc: "how far from its pitch A starts",
			at: func(s *Sound) any { return &s.Envelope.A }},
		Field{Name: "envelope.b", Label: "Fall of the pitch of B", Unit: Semitones, Min: -48, Max: 48, Step: 0.1, Doc: "how far from its pitch B starts",
			at: func(s *Sound) any { return &s.Envelope.B }},
		Field{Name: "envelope.depth", Label: "Fall of the modulation", Unit: Linear, Max: 1, Step: 0.01, Doc: "fraction of combine.depth or combine.index that falls away",
			at: func(s *Sound) any { return &s.Envelope.Depth }},
		Field{Name: "amplitude.attack", Label: "Attack", Unit: Seconds, Min: 0.002, Max: 2, Default: 0.01, Step: 1.02, Log: true, Doc: "time to full level",
			at: func(s *Sound) any { return &s.Amplitude.Attack }},
		Field{Name: "amplitude.decay", Label: "Decay", Unit: Seconds, Min: 0.005, Max: 10, Default: 1, Step: 1.02, Log: true, Doc: "time constant of the fall to the sustained level",
			at: func(s *Sound) any { return &s.Amplitude.Decay }},
		Field{Name: "amplitude.sustain", Label: "Sustain", Unit: Linear, Max: 1, Default: 1, Step: 0.01, Doc: "the level held",
			at: func(s *Sound) any { return &s.Amplitude.Sustain }},
		Field{Name: "amplitude.release", Label: "Release", Unit: Seconds, Min: 0.005, Max: 2, Default: 0.03, Step: 1.02, Log: true, Doc: "time to silence",
			at: func(s *Sound) any { return &s.Amplitude.Release }},
		Field{Name: "character", Label: "Character", Unit: Linear, Max: 1, Step: 0.01, Doc: "0 exact; bends the shapes and lets the pitch wander",
			at: func(s *Sound) any { return &s.Character }},
		Field{Name: "seed", Label: "Seed", Max: math.MaxUint32, Default: 1, Step: 1, Whole: true, Doc: "chooses the wander of the character",
			at: func(s *Sound) any { return &s.Seed }},
	)
}()

func init() {
	for i := range fields {
		if n := len(fields[i].Choices); n > 0 {
			fields[i].Min, fields[i].Max, fields[i].Step, fields[i].Whole = 0, float64(n-1), 1, true
		}
	}
}
