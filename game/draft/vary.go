package draft

import (
	"math"
	"slices"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// MostVaried is how many variations one answer or pair is offered (design choice: more
// cannot be overlooked).
const MostVaried = 4

// Varied are the variations of an answer or a pair, and its sound; nil where there is none
// such.
func Varied(e *sheet.Exercise, item int) (*[]sheet.Variation, synth.Sound) {
	switch {
	case item < 0:
	case item < len(e.Answers):
		return &e.Answers[item].Vary, e.Answers[item].Sound
	case item < len(e.Pairs):
		return &e.Pairs[item].Vary, e.Pairs[item].One
	}
	return nil, synth.Sound{}
}

// CanVary lists the fields that may differ from question to question in a sound: numbers of
// which something is heard. The note is drawn for the exercise as a whole.
func CanVary(s synth.Sound) []*synth.Field {
	return slices.DeleteFunc(Heard(s), func(f *synth.Field) bool { return len(f.Choices) > 0 || f.Name == "note" })
}

// Varies says whether a field is among variations.
func Varies(all []sheet.Variation, name string) bool {
	return slices.ContainsFunc(all, func(v sheet.Variation) bool { return slices.Contains(v.Set, name) })
}

// around is how far a variation goes to either side of the sound's own value at first, as a
// part of the field's range (design choice).
const around = 0.1

// ToggleVary lets a field differ from question to question, round its value in the sound, or
// stay as it is.
func ToggleVary(e *sheet.Exercise, item int, f *synth.Field) {
	all, s := Varied(e, item)
	switch {
	case all == nil:
	case Varies(*all, f.Name):
		*all = slices.DeleteFunc(*all, func(v sheet.Variation) bool { return slices.Contains(v.Set, f.Name) })
	case len(*all) < MostVaried:
		v := f.Get(&s)
		low, high := v-around*(f.Max-f.Min), v+around*(f.Max-f.Min)
		if f.Log && f.Min > 0 {
			times := math.Pow(f.Max/f.Min, around)
			low, high = v/times, v*times
		}
		*all = append(*all, sheet.Variation{Set: []string{f.Name}, Between: sheet.Range{settled(f, low), settled(f, high)}})
	}
}

// SetVary sets the lower or the upper value of a variation, which stay in their order.
func SetVary(e *sheet.Exercise, item, n int, end End, v float64) {
	all, _ := Varied(e, item)
	if all == nil || n < 0 || n >= len(*all) || len((*all)[n].Set) == 0 {
		return
	}
	between := &(*all)[n].Between
	f, ok := synth.FieldByName((*all)[n].Set[0])
	if !ok {
		return
	}
	if end == Lowest {
		between[0] = min(settled(f, v), between[1])
	} else {
		between[1] = max(settled(f, v), between[0])
	}
}

// settled is a value of a field that reads well.
func settled(f *synth.Field, v float64) float64 {
	if len(f.Choices) > 0 {
		return f.Clamp(math.Round(v))
	}
	return f.Clamp(sheet.Rounded(f, f.Clamp(v)))
}

// ToggleReference lets a sound be heard before each question of a naming, or none.
func ToggleReference(e *sheet.Exercise, s synth.Sound) {
	if e.Reference != nil {
		e.Reference = nil
		return
	}
	s = short(s)
	e.Reference = &s
}

// TogglePublished gives a limit a published threshold to compare with, or none. Its value
// is a just-noticeable step at first; its source must be written.
func TogglePublished(e *sheet.Exercise) {
	q := e.Quantity
	switch {
	case q == nil:
	case q.Published != nil:
		q.Published = nil
	default:
		most := Most(q, e.Target)
		q.Published = &sheet.Published{Value: figures(min(max(q.Start/easySteps, q.Least), most), most)}
	}
}

// SetPublished sets the value of a published threshold, in the unit of the quantity.
func SetPublished(e *sheet.Exercise, v float64) {
	if q := e.Quantity; q != nil && q.Published != nil && v > 0 {
		q.Published.Value = figures(v, math.Inf(1))
	}
}
