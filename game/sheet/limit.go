package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"partialcredit/synth"
)

// A Quantity is what a limit makes smaller and smaller: how much one of three
// sounds differs from the target.
type Quantity struct {
	Name      string     `json:"name"`      // "Duty", "Level"
	Set       []string   `json:"set"`       // fields that are alike, or ["level"] alone: the level of the whole sound in decibels
	Ratio     bool       `json:"ratio"`     // the fields are multiplied by 1 plus the quantity, which is added otherwise
	Start     float64    `json:"start"`     // easy to hear
	Least     float64    `json:"least"`     // the quantity goes no lower
	Most      float64    `json:"most"`      // nor higher
	Published *Published `json:"published"` // none where left out
}

// Published is a threshold to compare with.
type Published struct {
	Value  float64 `json:"value"`  // in the unit of the quantity
	Source string  `json:"source"` // who found it, and with what sounds
}

// level is the name of the quantity that no field of a sound has.
const level = "level"

// mostLevel is the most decibels that a sound is made louder by: it stays far
// below the limit of the output.
const mostLevel = 12

func (e *Exercise) checkLimit() error {
	q := e.Quantity
	switch {
	case e.Target.Version == 0:
		return fmt.Errorf("target is missing")
	case q == nil || len(q.Set) == 0:
		return fmt.Errorf("quantity is missing, or names no field in \"set\"")
	case strings.TrimSpace(q.Name) == "":
		return fmt.Errorf("quantity: name is missing")
	case !(0 < q.Least && q.Least < q.Start && q.Start <= q.Most) || math.IsInf(q.Most, 0):
		return fmt.Errorf("quantity: least %v, start %v and most %v must stand in that order, above 0", q.Least, q.Start, q.Most)
	case q.Published != nil && (!(q.Published.Value > 0) || strings.TrimSpace(q.Published.Source) == ""):
		return fmt.Errorf("quantity: published needs a value above 0 and a source")
	}
	if q.IsLevel() {
		if q.Most > mostLevel {
			return fmt.Errorf("quantity: most is %v dB; it must be at most %v", q.Most, mostLevel)
		}
		return nil
	}
	for _, name := range q.Set {
		f, ok := synth.FieldByName(name)
		if !ok || len(f.Choices) > 0 {
			return fmt.Errorf("quantity sets %s, which is not a number of a sound", name)
		}
		most := e.Target
		q.Apply(&most, q.Most)
		if got, want := f.Get(&most), q.of(f.Get(&e.Target), q.Most); math.Abs(got-want) > 1e-9 {
			return fmt.Errorf("quantity: the most, %v, carries %s to %v, which is beyond its range", q.Most, name, want)
		}
	}
	return nil
}

// IsLevel says that the quantity is the level of the whole sound in decibels.
func (q *Quantity) IsLevel() bool { return len(q.Set) == 1 && q.Set[0] == level }

// Apply makes a sound differ by v. A level is not a matter of the sound.
func (q *Quantity) Apply(s *synth.Sound, v float64) {
	for _, name := range q.Set {
		if f, ok := synth.FieldByName(name); ok {
			f.Set(s, f.Clamp(q.of(f.Get(s), v)))
		}
	}
}

func (q *Quantity) of(base, v float64) float64 {
	if q.Ratio {
		return base * (1 + v)
	}
	return base + v
}

// Format writes a value of the quantity with its unit, to two figures that
// count.
func (q *Quantity) Format(v float64) string {
	if q.IsLevel() {
		return figures(v) + " dB"
	}
	if q.Ratio {
		return figures(100*v) + " %"
	}
	f, ok := synth.FieldByName(q.Set[0])
	if !ok {
		return figures(v)
	}
	switch f.Unit {
	case synth.Fraction:
		return figures(100*v) + " points"
	case synth.Linear:
		return figures(100*v) + " %"
	case synth.Cents:
		return figures(v) + " cents"
	case synth.Semitones:
		return figures(v) + " semitones"
	case synth.Hertz:
		return figures(v) + " Hz"
	case synth.Seconds:
		return figures(1000*v) + " ms"
	}
	return figures(v)
}

// figures writes a number above 0 with two figures that count.
func figures(v float64) string {
	decimals := 1 - int(math.Floor(math.Log10(max(v, 1e-9))+1e-9))
	if decimals < 0 {
		unit := math.Pow(10, float64(-decimals))
		return strconv.FormatFloat(math.Round(v/unit)*unit, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// between is the value at a place, 0 to 1, of a range of a field.
func between(f *synth.Field, r Range, at float64) float64 {
	if f.Log && r[0] > 0 {
		return r[0] * math.Pow(r[1]/r[0], at)
	}
	return r[0] + (r[1]-r[0])*at
}
