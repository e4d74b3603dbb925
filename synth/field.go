package synth

import (
	"errors"
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
			return errors.New(f.Name + " must be one of " + strings.Join(f.Choices, ", "))
		}
	case math.IsNaN(v) || v < f.Min || v > f.Max:
		unit := ""
		if f.Unit != NoUnit {
			unit = " (" + string(f.Unit) + ")"
		}
		return errors.New(f.Name + " is " + shortest(v) + "; it must lie between " + shortest(f.Min) + " and " + shortest(f.Max) + unit)
	case f.Whole && v != math.Trunc(v):
		return errors.New(f.Name + " is " + shortest(v) + "; it must be a whole number")
	}
	return nil
}

func shortest(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

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
		if s, ok := written[f.choice(v)]; ok {
			return s
		}
		return f.choice(v)
	}
	return num(0)
}

// written are choices as people write them, where their names in the JSON are shorter.
var written = map[string]string{"a": "only A", "am": "AM", "fm": "FM"}

func (f *Field) choice(v float64) string {
	if i := int(v); i >= 0 && i < len(f.Choices) {
		return f.Choices[i]
	}
	return "?"
}

// footage gives the field table the footage as an index into footages.
type footage float64

func (p *footage) index() float64 {
	for i := range footages {
		if *p == footageAt(float64(i)) {
			return float64(i)
		}
	}
	return -1
}

func (p *footage) set(i float64) { *p = footageAt(i) }

func footageAt(i float64) footage { return footage(32 / math.Exp2(i)) }
