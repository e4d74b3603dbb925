package draft

import (
	"math"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// mend brings what depends on each other into order again: ranges round their targets
// and starts, a drawn range within them, quantities within what the sound allows.
func mend(e *sheet.Exercise) {
	controlled := e.Kind == sheet.Match || e.Kind == sheet.Show
	for i := range e.Controls {
		c := &e.Controls[i]
		if c.Field() == nil {
			continue
		}
		if controlled && e.Target.Version != 0 {
			for _, name := range c.Fields {
				if f, ok := synth.FieldByName(name); ok {
					v := f.Get(&e.Target)
					c.Min, c.Max = min(c.Min, v), max(c.Max, v)
				}
			}
		}
		c.Start = max(c.Min, min(c.Max, c.Start))
		if c.Draw != nil {
			c.Draw[0] = max(c.Min, min(c.Max, c.Draw[0]))
			c.Draw[1] = max(c.Draw[0], min(c.Max, c.Draw[1]))
		}
	}
	if q := e.Quantity; q != nil && e.Target.Version != 0 {
		q.Most = min(q.Most, Most(q, e.Target))
		q.Start = min(q.Start, q.Most)
		q.Least = min(q.Least, q.Start/2)
	}
	if e.Notes != nil {
		e.Notes[1] = max(e.Notes[0], e.Notes[1])
	}
}

// An End is one of the values of a control that can be set.
type End int

// The ends.
const (
	Lowest End = iota
	Highest
	Start
	DrawnFrom
	DrawnTo
)

// Bounds is the range in which an end of a control can be set: the least stays below
// the target, the most above it, and what is drawn within both.
func Bounds(e *sheet.Exercise, control int, end End) (low, high float64) {
	c := &e.Controls[control]
	f := c.Field()
	target := c.Get(&e.Target)
	switch end {
	case Lowest:
		return f.Min, min(target, less(f, c.Max))
	case Highest:
		return max(target, more(f, c.Min)), f.Max
	case DrawnFrom:
		return c.Min, drawn(c)[1]
	case DrawnTo:
		return drawn(c)[0], c.Max
	}
	return c.Min, c.Max
}

// Value is an end of a control as it stands.
func Value(c *sheet.Control, end End) float64 {
	switch end {
	case Lowest:
		return c.Min
	case Highest:
		return c.Max
	case DrawnFrom:
		return drawn(c)[0]
	case DrawnTo:
		return drawn(c)[1]
	}
	return c.Start
}

func drawn(c *sheet.Control) sheet.Range {
	if c.Draw == nil {
		return sheet.Range{c.Min, c.Max}
	}
	return *c.Draw
}

// SetEnd sets an end of a control, to a value that reads well.
func SetEnd(e *sheet.Exercise, control int, end End, v float64) {
	low, high := Bounds(e, control, end)
	c := &e.Controls[control]
	v = max(low, min(high, sheet.Rounded(c.Field(), v)))
	all := drawn(c) == sheet.Range{c.Min, c.Max}
	switch end {
	case Lowest:
		c.Min = v
	case Highest:
		c.Max = v
	case Start:
		c.Start = v
	default:
		d := drawn(c)
		d[end-DrawnFrom] = v
		c.Draw, all = &d, d == sheet.Range{c.Min, c.Max}
	}
	if all {
		c.Draw = nil // all of the range is what is drawn from where nothing is said
	}
}

// less and more are a fine step away.
func less(f *synth.Field, v float64) float64 {
	switch {
	case f.Whole:
		return max(f.Min, v-1)
	case f.Log:
		return max(f.Min, v/f.Step)
	}
	return max(f.Min, v-f.Step)
}

func more(f *synth.Field, v float64) float64 {
	switch {
	case f.Whole:
		return min(f.Max, v+1)
	case f.Log:
		return min(f.Max, v*f.Step)
	}
	return min(f.Max, v+f.Step)
}

// SetTarget gives an exercise another sound to be about; starts that have become the
// target are moved away.
func SetTarget(e *sheet.Exercise, s synth.Sound) {
	e.Target = s
	for i := range e.Controls {
		c := &e.Controls[i]
		v := c.Get(&s)
		c.Min, c.Max = min(c.Min, v), max(c.Max, v)
		if steps(c, s, c.Start) < 1 {
			c.Start = Away(c, s)
		}
	}
	if q := e.Quantity; q != nil {
		if most := Most(q, s); !(most > 0) || math.IsInf(most, 0) {
			e.Quantity = nil
			fill(e)
		}
	}
}
