package sheet

import (
	"bytes"
	"encoding/json"
	"fmt"

	"partialcredit/synth"
)

// A Control is one thing that the learner sets. It may set several fields at
// once, the pitch fall of both oscillators, say; they must be alike.
type Control struct {
	Label  string   // as it stands over the ruler; the field's own label where empty
	Fields []string // names of fields, see [synth.Fields]
	Min    float64  // the field's own range where it is left out
	Max    float64
	Start  float64 // the field's default where it is left out
	Draw   *Range  // where the target of a sheet that varies is drawn from; all of the range where nil

	field *synth.Field
}

// FieldControl is a control of one field over all of its range, from its default.
func FieldControl(f *synth.Field) Control {
	return Control{Label: f.Label, Fields: []string{f.Name}, Min: f.Min, Max: f.Max, Start: f.Default, field: f}
}

// Field is the first field that the control sets.
func (c *Control) Field() *synth.Field { return c.field }

// Get returns the value of the control in s.
func (c *Control) Get(s *synth.Sound) float64 { return c.field.Get(s) }

// Set puts v, brought into the control's range, into every field.
func (c *Control) Set(s *synth.Sound, v float64) {
	c.put(s, max(c.Min, min(c.Max, c.field.Clamp(v))))
}

func (c *Control) put(s *synth.Sound, v float64) {
	for _, name := range c.Fields {
		if f, ok := synth.FieldByName(name); ok {
			f.Set(s, v)
		}
	}
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
		Draw  []json.RawMessage
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
	return c.readDraw(raw.Draw)
}

func (c *Control) readDraw(raw []json.RawMessage) error {
	if raw == nil {
		return nil
	}
	if len(raw) != 2 {
		return fmt.Errorf("control %s: draw must be two values, the lower first", c.Fields[0])
	}
	var r Range
	for i := range r {
		if err := readValue(c.field, raw[i], &r[i]); err != nil {
			return fmt.Errorf("draw of a control: %w", err)
		}
	}
	if r[0] > r[1] || r[0] < c.Min || r[1] > c.Max {
		return fmt.Errorf("control %s: draw, %v to %v, must lie within its range, the lower first", c.Fields[0], r[0], r[1])
	}
	c.Draw = &r
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
