package synth

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Field describes one settable quantity of a [Sound]. A field with Choices
// takes one of them and its value is the index of the choice.
type Field struct {
	Name    string // where it stands in the JSON: "a.duty"
	Label   string // what people call it: "Duty of A"
	Unit    Unit
	Min     float64
	Max     float64
	Default float64
	Step    float64  // a fine step: a difference, or a factor where Log
	Log     bool     // equal ratios are equal steps
	Whole   bool     // only whole numbers
	Choices []string // their names in the JSON
	Doc     string

	at func(*Sound) any // *float64, or a pointer to one of the enumerated types
}

// A Unit says what the numbers of a field mean.
type Unit string

// The units.
const (
	Fraction  Unit = "fraction of the period"
	Linear    Unit = "linear"
	Cycles    Unit = "cycles"
	Cents     Unit = "cents"
	Semitones Unit = "semitones"
	Hertz     Unit = "Hz"
	Seconds   Unit = "s"
	Ratio     Unit = "ratio of frequencies"
	Radians   Unit = "radians"
	Feet      Unit = "feet"
	MIDINote  Unit = "MIDI note number"
	NoUnit    Unit = ""
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

// Fields lists every field of a [Sound] but its version, in the order of the
// description. The slice is a copy.
func Fields() []Field { return append([]Field(nil), fields...) }

// FieldByName finds a field by its name in the JSON.
func FieldByName(name string) (*Field, bool) {
	for i := range fields {
		if fields[i].Name == name {
			f := fields[i]
			return &f, true
		}
	}
	return nil, false
}

// Get returns the value of the field in s; for a field with choices, the
// index of the choice, or -1 where s holds none of them.
func (f *Field) Get(s *Sound) float64 {
	switch p := f.at(s).(type) {
	case *float64:
		return *p
	case *footage:
		return p.index()
	case *Shape:
		return float64(*p)
	case *LFOShape:
		return float64(*p)
	case *How:
		return float64(*p)
	}
	panic("synth: field " + f.Name + " has an unknown type")
}

// Set puts v into s. It does not check v: see [Field.Check].
func (f *Field) Set(s *Sound, v float64) {
	switch p := f.at(s).(type) {
	case *float64:
		*p = v
	case *footage:
		p.set(v)
	case *Shape:
		*p = Shape(v)
	case *LFOShape:
		*p = LFOShape(v)
	case *How:
		*p = How(v)
	}
}

// Check reports why v cannot be a value of the field.
func (f *Field) Check(v float64) error {
	switch {
	case len(f.Choices) > 0:
		if i := int(v); v != math.Trunc(v) || i < 0 || i >= len(f.Choices) {
			return fmt.Errorf("%s must be one of %s", f.Name, strings.Join(f.Choices, ", "))
		}
	case math.IsNaN(v) || v < f.Min || v > f.Max:
		unit := ""
		if f.Unit != NoUnit {
			unit = " (" + string(f.Unit) + ")"
		}
		return fmt.Errorf("%s is %v; it must lie between %v and %v%s", f.Name, v, f.Min, f.Max, unit)
	case f.Whole && v != math.Trunc(v):
		return fmt.Errorf("%s is %v; it must be a whole number", f.Name, v)
	}
	return nil
}

// Clamp returns the value of the field nearest to v. NaN becomes the default.
func (f *Field) Clamp(v float64) float64 {
	if math.IsNaN(v) {
		return f.Default
	}
	if f.Whole {
		v = math.Round(v)
	}
	return math.Max(f.Min, math.Min(f.Max, v))
}

// Format writes a value with its unit, as people read it: "34 %", "8′",
// "+7 cents".
func (f *Field) Format(v float64) string {
	num := func(decimals int) string {
		return strings.ReplaceAll(strconv.FormatFloat(v, 'f', decimals, 64), "-", "\u2212")
	}
	signed := func(decimals int) string {
		if v > 0 {
			return "+" + num(decimals)
		}
		return num(decimals)
	}
	switch f.Unit {
	case Feet:
		return f.choice(v) + "\u2032"
	case Fraction:
		v *= 100
		return num(1) + " %"
	case Linear:
		v *= 100
		if f.Min < 0 {
			return signed(0) + " %"
		}
		return num(0) + " %"
	case Cycles:
		v *= 360
		return num(0) + "°"
	case Cents:
		if f.Min < 0 {
			return signed(1) + " cents"
		}
		return num(0) + " cents"
	case Semitones:
		return signed(1) + " semitones"
	case Hertz:
		return num(2) + " Hz"
	case Seconds:
		if v < 0.1 {
			v *= 1000
			return num(0) + " ms"
		}
		return num(2) + " s"
	case Ratio:
		return "\u00d7 " + num(3)
	case Radians:
		return num(2)
	}
	if len(f.Choices) > 0 {
		return f.choice(v)
	}
	return num(0)
}

func (f *Field) choice(v float64) string {
	if i := int(v); i >= 0 && i < len(f.Choices) {
		return f.Choices[i]
	}
	return "?"
}

// footage gives the field table the footage as an index into footages.
type footage float64

func (p *footage) index() float64 {
	for i, name := range footages {
		if v, _ := strconv.ParseFloat(name, 64); v == float64(*p) {
			return float64(i)
		}
	}
	return -1
}

func (p *footage) set(i float64) { *p = footage(32 / math.Exp2(i)) }
