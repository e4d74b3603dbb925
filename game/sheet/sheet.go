// Package sheet holds exercises: their format and its checks.
//
// A sheet is JSON: a version, a title and exercises in the order in which a
// teacher wants them worked. docs of each field stand beside it below.
package sheet

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"partialcredit/synth"
)

// Version is the version of the format read by this package.
const Version = 1

// MaxControls is the most an exercise lets a learner set.
const MaxControls = 4

// A Sheet is a list of exercises.
type Sheet struct {
	Version    int        `json:"version"` // always [Version]
	Title      string     `json:"title"`
	Strictness Strictness `json:"strictness"` // of its marks; for experts where it is left out
	Exercises  []Exercise `json:"exercises"`
}

// An Exercise asks the learner to match a target sound. The learner starts
// from the target with every control moved to its start value.
type Exercise struct {
	ID       string      `json:"id"`       // short and unique on the sheet; progress is kept under it
	Title    string      `json:"title"`    // a question
	Task     string      `json:"task"`     // one sentence: what to do
	Teach    string      `json:"teach"`    // one sentence, shown after marking
	Target   synth.Sound `json:"target"`   // what to match
	Controls []Control   `json:"controls"` // what the learner sets, 1 to [MaxControls]
}

// A Control is one thing that the learner sets. It may set several fields at
// once, the pitch fall of both oscillators, say; they must be alike.
type Control struct {
	Label  string   // as it stands over the ruler; the field's own label where empty
	Fields []string // names of fields, see [synth.Fields]
	Min    float64  // the field's own range where it is left out
	Max    float64
	Start  float64 // the field's default where it is left out

	field *synth.Field
}

// Field is the first field that the control sets.
func (c *Control) Field() *synth.Field { return c.field }

// Get returns the value of the control in s.
func (c *Control) Get(s *synth.Sound) float64 { return c.field.Get(s) }

// Set puts v, brought into the control's range, into every field.
func (c *Control) Set(s *synth.Sound, v float64) {
	v = max(c.Min, min(c.Max, c.field.Clamp(v)))
	for _, name := range c.Fields {
		if f, ok := synth.FieldByName(name); ok {
			f.Set(s, v)
		}
	}
}

// Start returns the sound the learner starts from.
func (e *Exercise) Start() synth.Sound {
	s := e.Target
	for i := range e.Controls {
		e.Controls[i].Set(&s, e.Controls[i].Start)
	}
	return s
}

//go:embed builtin.json
var builtin []byte

// Builtin returns the sheet that comes with the program.
func Builtin() *Sheet {
	s, err := Parse(builtin)
	if err != nil {
		panic("sheet: the built-in sheet: " + err.Error()) // a test reads it
	}
	return s
}

// Parse reads a sheet and checks it. The error names the exercise and the
// field that is wrong.
func Parse(data []byte) (*Sheet, error) {
	var s Sheet
	var raw struct {
		Version    int               `json:"version"`
		Title      string            `json:"title"`
		Strictness Strictness        `json:"strictness"`
		Exercises  []json.RawMessage `json:"exercises"`
	}
	if err := strict(data, &raw); err != nil {
		return nil, fmt.Errorf("the sheet cannot be read: %w", err)
	}
	if raw.Version != Version {
		return nil, fmt.Errorf("the sheet has version %d; this program reads version %d", raw.Version, Version)
	}
	s.Version, s.Title, s.Strictness = raw.Version, raw.Title, raw.Strictness
	for i, data := range raw.Exercises {
		var e Exercise
		if err := strict(data, &e); err != nil {
			return nil, fmt.Errorf("exercise %d: %w", i+1, err)
		}
		s.Exercises = append(s.Exercises, e)
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	return &s, nil
}

// strict reads JSON and refuses fields it does not know.
func strict(data []byte, v any) error {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	return dec.Decode(v)
}

func (s *Sheet) check() error {
	if strings.TrimSpace(s.Title) == "" {
		return fmt.Errorf("the sheet has no title")
	}
	if len(s.Exercises) == 0 {
		return fmt.Errorf("the sheet has no exercises")
	}
	seen := map[string]bool{}
	for i := range s.Exercises {
		e := &s.Exercises[i]
		if err := e.check(); err != nil {
			return fmt.Errorf("exercise %d: %w", i+1, err)
		}
		if seen[e.ID] {
			return fmt.Errorf("exercise %d: another exercise has the id %q too", i+1, e.ID)
		}
		seen[e.ID] = true
	}
	return nil
}

func (e *Exercise) check() error {
	for _, f := range []struct{ name, value string }{{"id", e.ID}, {"title", e.Title}, {"task", e.Task}, {"teach", e.Teach}} {
		if strings.TrimSpace(f.value) == "" {
			return fmt.Errorf("%s is missing", f.name)
		}
	}
	if e.Target.Version == 0 {
		return fmt.Errorf("target is missing")
	}
	if n := len(e.Controls); n < 1 || n > MaxControls {
		return fmt.Errorf("it has %d controls; it must have 1 to %d", n, MaxControls)
	}
	var all []string
	for i := range e.Controls {
		c := &e.Controls[i]
		target := c.Get(&e.Target)
		if target < c.Min || target > c.Max {
			return fmt.Errorf("control %s: the target %v lies outside its range, %v to %v", c.Fields[0], target, c.Min, c.Max)
		}
		for _, name := range c.Fields {
			if slices.Contains(all, name) {
				return fmt.Errorf("two controls set %s", name)
			}
			all = append(all, name)
		}
	}
	return nil
}

// UnmarshalJSON reads a control: {"set": ["a.duty"], "label": "Duty", "min":
// 0.03, "max": 0.5, "start": 0.5}; all but set may be left out.
func (c *Control) UnmarshalJSON(data []byte) error {
	var raw struct {
		Set   []string
		Label string
		Min   json.RawMessage
		Max   json.RawMessage
		Start json.RawMessage
	}
	if err := strict(data, &raw); err != nil {
		return fmt.Errorf("a control: %w", err)
	}
	if len(raw.Set) == 0 {
		return fmt.Errorf("a control sets nothing; name a field in \"set\"")
	}
	for _, name := range raw.Set {
		f, ok := synth.FieldByName(name)
		if !ok {
			return fmt.Errorf("a control sets %s, which is not a field of a sound", name)
		}
		if c.field == nil {
			c.field = f
		} else if f.Unit != c.field.Unit || f.Min != c.field.Min || f.Max != c.field.Max {
			return fmt.Errorf("a control sets %s and %s together, which are not alike", raw.Set[0], name)
		}
	}
	c.Fields, c.Label = raw.Set, raw.Label
	if c.Label == "" {
		c.Label = c.field.Label
	}
	c.Min, c.Max, c.Start = c.field.Min, c.field.Max, c.field.Default
	for _, v := range []struct {
		name string
		raw  json.RawMessage
		to   *float64
	}{{"min", raw.Min, &c.Min}, {"max", raw.Max, &c.Max}, {"start", raw.Start, &c.Start}} {
		if v.raw == nil {
			continue
		}
		if err := readValue(c.field, v.raw, v.to); err != nil {
			return fmt.Errorf("%s of a control: %w", v.name, err)
		}
	}
	if c.Min >= c.Max || c.Start < c.Min || c.Start > c.Max {
		return fmt.Errorf("control %s: min %v, start %v and max %v must stand in that order", c.Fields[0], c.Min, c.Start, c.Max)
	}
	return nil
}

func readValue(f *synth.Field, raw json.RawMessage, to *float64) error {
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.UseNumber()
	var in any
	if err := dec.Decode(&in); err != nil {
		return err
	}
	v, err := f.Parse(in)
	if err != nil {
		return err
	}
	if err := f.Check(v); err != nil {
		return err
	}
	*to = v
	return nil
}
