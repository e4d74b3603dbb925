// Package mark compares two sounds: it gives marks and the reasons for them.
//
// A mark counts just-noticeable steps. How many there are follows from the two
// descriptions, once everything that is not heard has been taken out of them
// ([Apart]), and is held to what the two rendered sounds say: never more than
// thrice, never less than an eighth of the distance between their features. So
// settings that sound alike earn the same marks whether or not anybody knows
// why they do, and a small movement of a control that changes the sound a lot
// costs what is heard. Within these bounds a step is worth the same on every
// control. The reasons are measured from the sounds alone.
package mark

import (
	"math"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// A Reference is a target prepared for marking: rendered once, measured once.
// It is not safe for concurrent use.
type Reference struct {
	sound  synth.Sound
	take   *take.Take // instead of the sound, where the target was recorded
	grid   *grid
	target *features // nil for silence
	heard  *heard    // nil until reasons are asked for
	places []place
	pause  func() // between pieces of work, see [Reference.Pausing]
}

// A Result is what a hand-in earns.
type Result struct {
	Marks    float64   // 0 to 100
	Steps    float64   // just-noticeable steps from the target; +Inf for silence
	Heard    float64   // how many the sounds alone would say, less sure for any one control
	Partials []Partial // the target's audible partials, lowest first
	Reasons  []Reason  // what cost marks, the most costly first
}

// Prepare renders and measures a target.
func Prepare(target synth.Sound) *Reference {
	r := Measure(target)
	r.listen()
	return r
}

// Measure is Prepare for whoever wants [Reference.Marks] without reasons.
func Measure(target synth.Sound) *Reference {
	seconds := listening(target)
	g := newGrid(seconds, fundamental(target))
	r := &Reference{sound: target, grid: g}
	r.target = g.features(perform(target, seconds))
	if r.target != nil {
		r.places = g.places(r.target.power)
	}
	return r
}

// Mark renders and measures a hand-in and compares it with the target. Every
// just-noticeable step is taken times as large: 1 marks as an expert hears, 2
// and 4 are kinder. 100 means that no difference would be heard. Silence gets
// 0, unless the target is silent too.
func (r *Reference) Mark(yours synth.Sound, times float64) Result {
	if r.take != nil {
		return r.side().mark(side{sound: yours}, times, r.pause)
	}
	r.listen()
	y, h := r.grid.take(perform(yours, r.grid.seconds))
	steps, heard := r.steps(yours, y)
	result := Result{
		Marks:   Credit(steps, times),
		Steps:   steps,
		Heard:   heard,
		Reasons: reasons(r.heard, h),
	}
	if r.target != nil {
		result.Partials = r.grid.ticks(r.places, r.target, y)
	}
	return result
}

// listen hears the target, once.
func (r *Reference) listen() {
	if r.heard == nil {
		defer r.grid.borrow()()
		r.heard = hear(&r.grid.kit, perform(r.sound, r.grid.seconds), Rate, r.grid.note)
	}
}

// Marks are those that [Reference.Mark] gives, alone and in half the time.
func (r *Reference) Marks(yours synth.Sound, times float64) float64 {
	steps, _ := r.Count(yours)
	return Credit(steps, times)
}

// Seconds is how long the sounds are that are compared with the target.
func (r *Reference) Seconds() float64 { return r.grid.seconds }

// Count is [Result.Steps] and [Result.Heard], as soon.
func (r *Reference) Count(yours synth.Sound) (steps, heard float64) {
	return r.steps(yours, r.grid.features(perform(yours, r.grid.seconds)))
}

// steps counts how far a sound with features y is from the target, and how far the
// features alone would have it.
func (r *Reference) steps(yours synth.Sound, y *features) (steps, heard float64) {
	heard = r.distance(y)
	return math.Max(heard/mostHarsh, math.Min(heard*mostKind, Apart(r.sound, yours))), heard
}

// Credit is the mark at a number of just-noticeable steps, each taken times as large.
func Credit(steps, times float64) float64 { return credit(steps / times) }

// How many times more, and less, than the sounds say may a step on a control
// be worth. Wide, because the distance of the features means up to eight times
// as much on one control as on another (an index of frequency modulation), and
// narrow where it hears nothing (design choices, from the credit table).
const (
	mostKind  = 3.0
	mostHarsh = 8.0
)

// distance is how many steps features y lie from the target, for all that the
// sounds alone can say.
func (r *Reference) distance(y *features) float64 {
	switch {
	case r.target == nil && y == nil:
		return 0
	case r.target == nil || y == nil:
		return math.Inf(1)
	}
	return audible(compare(r.target, y).z())
}

// audible turns the distance of features into just-noticeable steps, right on
// the whole and not for every control. Distances up to unheard are no
// difference: they come from where a movement stood when the sound began and
// ended. (Fitted with the differences; marking.md 3.)
func audible(z float64) float64 {
	const unheard, steepness = 0.25, 1.3
	return half * math.Pow(steepness*math.Max(0, z-unheard), 4.0/3)
}

// half is the number of steps at which half the marks are gone (design choice).
const half = 7.0

// credit is the mark at a number of just-noticeable steps, 0 to 100: 96 at one,
// 20 at 17.
func credit(steps float64) float64 { return 100 / (1 + math.Pow(steps/half, 1.6)) }
