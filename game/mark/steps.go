package mark

import (
	"math"

	"partialcredit/synth"
)

// Step returns one just-noticeable step of a field at its value in s, in the
// field's own unit. For a field with choices it is 1; for one that is not in
// the table, +Inf.
func Step(field string, s synth.Sound) float64 {
	f, ok := synth.FieldByName(field)
	if !ok {
		return math.Inf(1)
	}
	if len(f.Choices) > 0 {
		return 1
	}
	for i := range StepSizes {
		if StepSizes[i].Field == field {
			return StepSizes[i].step(f.Get(&s), &s)
		}
	}
	return math.Inf(1)
}

// Steps returns how many just-noticeable steps lie between two values of a
// field of s, never negative: the integral of 1/step, by the midpoint rule.
// Two choices lie [choiceSteps] apart.
func Steps(field string, s synth.Sound, from, to float64) float64 {
	f, ok := synth.FieldByName(field)
	if !ok || from == to {
		return 0
	}
	if len(f.Choices) > 0 {
		return choiceSteps
	}
	const n = 64 // the steps change slowly: the error is far under one step
	sum := 0.0
	for i := range n {
		f.Set(&s, from+(to-from)*(float64(i)+0.5)/n)
		sum += 1 / Step(field, s)
	}
	return sum * math.Abs(to-from) / n
}

// Away returns the value of a field that lies so many just-noticeable steps
// from its value in s, on the way to end; ok is false where end is nearer.
func Away(field string, s synth.Sound, steps, end float64) (v float64, ok bool) {
	f, ok := synth.FieldByName(field)
	if !ok {
		return 0, false
	}
	at := f.Get(&s)
	if Steps(field, s, at, end) < steps {
		return end, false
	}
	low, high := at, end
	for range 50 {
		if v = (low + high) / 2; Steps(field, s, at, v) < steps {
			low = v
		} else {
			high = v
		}
	}
	return high, true
}

// choiceSteps stands between two shapes or footages: plainly different, as far
// as a difference that earns a fifth of the marks (design choice).
const choiceSteps = 20
