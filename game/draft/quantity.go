package draft

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Measured lists the fields that a limit can be sought of in a sound: numbers of which
// something is heard and that can still grow. A nil stands for the level of the whole.
func Measured(s synth.Sound) (fields []*synth.Field) {
	for _, f := range Heard(s) {
		if len(f.Choices) > 0 || f.Whole || room(f, s) <= 0 {
			continue
		}
		if step := mark.Step(f.Name, s); step > 0 && 4*step < f.Max-f.Get(&s) {
			fields = append(fields, f)
		}
	}
	return append(fields, nil)
}

// room is how much can be added to a field, or by how much of itself it can grow where
// equal ratios are equal steps.
func room(f *synth.Field, s synth.Sound) float64 {
	v := f.Get(&s)
	if f.Log {
		return f.Max/v - 1
	}
	return f.Max - v
}

// What a limit asks for at first, in just-noticeable steps: easy, and down to what
// nobody hears (design choices).
const (
	easySteps  = 16
	leastSteps = 0.1
	mostSteps  = 40
)

// Quantity is what a limit can be sought of, a field or, for nil, the level.
func Quantity(f *synth.Field, s synth.Sound) *sheet.Quantity {
	if f == nil {
		return &sheet.Quantity{Name: "Level", Set: []string{"level"}, Start: 6, Least: 0.1, Most: 12}
	}
	q := &sheet.Quantity{Name: f.Label, Set: []string{f.Name}, Ratio: f.Log}
	step := mark.Step(f.Name, s)
	if f.Log {
		step /= f.Get(&s)
	}
	most := Most(q, s)
	q.Most = figures(min(mostSteps*step, most), most)
	q.Start = figures(min(easySteps*step, 0.7*q.Most), most)
	q.Least = figures(leastSteps*min(step, q.Start), most)
	return q
}

// Most is how large a quantity may be: beyond it a field would leave its range.
func Most(q *sheet.Quantity, s synth.Sound) float64 {
	if q.IsLevel() {
		return 12 // dB, what a sheet allows
	}
	most := math.Inf(1)
	for _, name := range q.Set {
		f, ok := synth.FieldByName(name)
		if !ok {
			continue
		}
		r := f.Max - f.Get(&s)
		if q.Ratio {
			r = f.Max/f.Get(&s) - 1
		}
		most = min(most, r)
	}
	return most
}

// SetQuantity sets the least, the most or the start of a limit, which stay in their
// order.
func SetQuantity(e *sheet.Exercise, end End, v float64) {
	q := e.Quantity
	most := Most(q, e.Target)
	v = figures(min(v, most), most)
	const apart = 1.2 // a range is wider than this ratio (design choice)
	switch end {
	case Lowest:
		q.Least = min(v, q.Start/apart)
	case Highest:
		q.Most = max(v, q.Start)
	default:
		q.Start = min(q.Most, max(v, q.Least*apart))
	}
}

// figures rounds a value above 0 to two figures that count, but not beyond most.
func figures(v, most float64) float64 {
	if v <= 0 || math.IsInf(v, 0) {
		return v
	}
	n := 1 - math.Floor(math.Log10(v))
	unit := math.Pow(10, math.Abs(n))
	r := math.Round(v*unit) / unit
	if n < 0 {
		r = math.Round(v/unit) * unit
	}
	if r > most {
		return v
	}
	return r
}
