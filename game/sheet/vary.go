package sheet

import (
	"math"
	"strings"

	"partialcredit/game/chance"
	"partialcredit/synth"
)

// clear is how far from the start a drawn target keeps, as a part of the way to the
// farther end of the range it is drawn from (design choice): it is not met at once.
const clear = 0.4

// Learner is a name as it draws targets: upper and lower case and the number of spaces
// make no difference.
func Learner(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// For is the sheet with the targets that are drawn for a learner: the same for the same
// sheet and name, in every version of the program, and others for other names. A sheet
// that does not vary is the same for all.
func (s *Sheet) For(name string) *Sheet {
	if !s.Vary {
		return s
	}
	d := s.Drawing()
	return d.For(name)
}

// Seed is that of a learner's n-th run of an exercise of a sheet that varies, n from 0:
// the questions follow from it.
func (s *Sheet) Seed(name, id string, n int) uint64 {
	d := s.Drawing()
	return d.Seed(name, id, n)
}

// A Drawing draws what each learner of a sheet gets. For a class it is a hundred times
// as fast as the sheet itself, which makes its fingerprint for each anew.
type Drawing struct {
	Sheet       *Sheet // which must not change any more
	Fingerprint string // of the sheet
}

// Drawing prepares a sheet for drawing.
func (s *Sheet) Drawing() Drawing { return Drawing{s, s.Fingerprint()} }

// For is [Sheet.For].
func (d *Drawing) For(name string) *Sheet {
	if !d.Sheet.Vary {
		return d.Sheet
	}
	drawn := *d.Sheet
	drawn.Exercises = append([]Exercise(nil), drawn.Exercises...)
	name = Learner(name)
	for i := range drawn.Exercises {
		e := &drawn.Exercises[i]
		if e.Kind != Match {
			continue
		}
		from := chance.From(chance.Seed(d.Fingerprint, name, e.ID))
		for j := range e.Controls {
			e.Controls[j].put(&e.Target, e.Controls[j].drawn(from))
		}
	}
	return &drawn
}

// Seed is [Sheet.Seed].
func (d *Drawing) Seed(name, id string, n int) uint64 {
	return chance.Draws(chance.Seed(d.Fingerprint, Learner(name), id), n+1).Uint64()
}

// drawn draws a value for the target out of the control's range, or what of it the
// sheet says, away from the start.
func (c *Control) drawn(from *chance.Source) float64 {
	r := Range{c.Min, c.Max}
	if c.Draw != nil {
		r = *c.Draw
	}
	if c.field.Whole || len(c.field.Choices) > 0 {
		var values []float64
		for v := math.Ceil(r[0]); v <= r[1]; v++ {
			if v != c.Start || r[0] == r[1] {
				values = append(values, v)
			}
		}
		return values[from.Below(len(values))]
	}
	start := place(c.field, r, c.Start)
	away := clear * max(start, 1-start)
	low, high := max(0, start-away), min(1, start+away)
	if high < 0 || low > 1 || start < 0 || start > 1 {
		low, high = 0, 0 // the start lies outside
	}
	at := from.Part() * (1 - (high - low))
	if at >= low {
		at += high - low
	}
	return max(r[0], min(r[1], Rounded(c.field, between(c.field, r, at))))
}

// Rounded is a value that reads well: whole fine steps, or three figures where equal
// ratios are equal steps.
func Rounded(f *synth.Field, v float64) float64 {
	if !f.Log {
		n := math.Round(1 / f.Step)
		if math.Abs(n*f.Step-1) < 1e-9 {
			return math.Round(v*n) / n // a quotient: 0.07 and not 0.07000000000000001
		}
		return math.Round(v/f.Step) * f.Step
	}
	unit := math.Pow(10, 2-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*unit) / unit
}

// place is where in a range of a field a value lies, 0 to 1 within it.
func place(f *synth.Field, r Range, v float64) float64 {
	switch {
	case r[0] == r[1]:
		return -1
	case f.Log && r[0] > 0:
		return math.Log(v/r[0]) / math.Log(r[1]/r[0])
	}
	return (v - r[0]) / (r[1] - r[0])
}
