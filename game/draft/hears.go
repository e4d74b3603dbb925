package draft

import (
	"slices"
	"strings"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// What an exercise may ask for, what is easiest to hear first (after the order of the
// course's sheets).
var inOrder = []string{
	"a.duty", "b.duty", "combine.ratio", "combine.index", "combine.depth", "b.cents", "combine.balance",
	"lfo.cents", "lfo.hz", "lfo.duty", "lfo.level", "lfo.fade", "lfo.shape", "envelope.a", "envelope.b", "envelope.depth", "envelope.seconds",
	"a.shape", "b.shape", "a.footage", "b.footage", "combine.how", "amplitude.attack", "amplitude.decay", "amplitude.sustain", "amplitude.release",
	"a.cents", "note", "seconds", "a.level", "b.level", "character",
}

// Heard lists the fields of which something is heard in a sound when they alone are
// moved, as the marking counts it.
func Heard(s synth.Sound) (fields []*synth.Field) {
	for _, name := range inOrder {
		if f, ok := synth.FieldByName(name); ok && heard(s, f) {
			fields = append(fields, f)
		}
	}
	return fields
}

func heard(s synth.Sound, f *synth.Field) bool {
	for _, at := range []float64{0.1, 0.5, 1} { // nothing is heard at all of a level of 0
		other := s
		f.Set(&other, f.Clamp(f.Min+at*(f.Max-f.Min)))
		if mark.Apart(s, other) >= 1 {
			return true
		}
	}
	return false
}

// told is the field that most likely makes the sound what it is: the first that is
// heard and does not stand at its default.
func told(s synth.Sound) *synth.Field {
	fields := Heard(s)
	for _, f := range fields {
		if f.Get(&s) != f.Default && f.Name != "combine.how" {
			return f
		}
	}
	return fields[0] // there is always the note
}

// steps is how far apart a control's value is from the target, in just-noticeable
// steps.
func steps(c *sheet.Control, target synth.Sound, v float64) float64 {
	s := target
	c.Set(&s, v)
	return mark.Apart(target, s)
}

// Control is a control of a field for a target: over all of the field's range of which
// each value is heard once, from a start that is plainly not the target.
func Control(f *synth.Field, target synth.Sound) sheet.Control {
	c := sheet.FieldControl(f)
	if v := c.Get(&target); v > c.Max || v < c.Min {
		c.Max, c.Min = max(c.Max, v), min(c.Min, v)
	}
	if strings.HasSuffix(f.Name, ".duty") && f.Name != "lfo.duty" && c.Get(&target) <= 0.5 {
		c.Max = 0.5 // beyond it everything is heard a second time (hearing.md 1.7)
	}
	c.Start = Away(&c, target)
	return c
}

// plainly is how many steps from the target a start is heard to differ by anyone
// (design choice: four of a beginner's).
const plainly = 16

// Away is a start in the range of a control that is far from the target: the field's
// default where that is, else the end of the range that is further.
func Away(c *sheet.Control, target synth.Sound) float64 {
	f := c.Field()
	if f.Default >= c.Min && f.Default <= c.Max && steps(c, target, f.Default) >= plainly {
		return f.Default
	}
	if len(f.Choices) > 0 {
		for _, v := range []float64{f.Default, c.Min, c.Max} {
			if v >= c.Min && v <= c.Max && steps(c, target, v) > 0 {
				return v
			}
		}
	}
	if steps(c, target, c.Min) >= steps(c, target, c.Max) {
		return c.Min
	}
	return c.Max
}

// SameToTheEar says whether two sounds are told apart by nobody, as the marking counts
// it: where a pair is made, the suggestion. Where it does not follow from what is set,
// both are rendered and measured, which takes some 20 ms.
func SameToTheEar(one, other synth.Sound) bool {
	if mark.Apart(one, other) < 1 {
		return true
	}
	steps, _ := mark.Measure(one).Count(other)
	return steps < 1
}

// Sets reports whether an exercise lets the learner set a field.
func Sets(e *sheet.Exercise, name string) bool {
	return slices.ContainsFunc(e.Controls, func(c sheet.Control) bool { return slices.Contains(c.Fields, name) })
}

// Toggle gives the learner a control of the field, or takes it away. It does nothing
// where there are as many as there may be.
func Toggle(e *sheet.Exercise, f *synth.Field) {
	if Sets(e, f.Name) {
		e.Controls = slices.DeleteFunc(e.Controls, func(c sheet.Control) bool { return slices.Contains(c.Fields, f.Name) })
		return
	}
	if len(e.Controls) < sheet.MaxControls {
		e.Controls = append(e.Controls, Control(f, e.Target))
	}
}
