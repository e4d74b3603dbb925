// Package mark compares two sounds: it gives marks and the reasons for them.
//
// The marks are measured from the rendered sounds alone, never read off the
// settings, so settings that sound alike get the same marks.
package mark

import "partialcredit/synth"

// A Reference is a target prepared for marking: rendered once, measured once.
// It keeps buffers and is not safe for concurrent use.
type Reference struct {
	grid   *grid
	note   float64 // Hz, at which the target is written
	sound  []float32
	target *features
	places []place
}

// A Result is what a hand-in earns.
type Result struct {
	Marks    float64   // 0 to 100
	Partials []Partial // the target's audible partials, lowest first
	Reasons  []Reason  // what cost marks, the most costly first
}

// Prepare renders and measures a target.
func Prepare(target synth.Sound) *Reference {
	seconds := listening(target)
	r := &Reference{grid: newGrid(seconds)}
	r.sound = perform(target, seconds)
	r.target = r.grid.measure(r.sound)
	r.note = fundamental(target)
	if r.target != nil {
		r.places = r.grid.places(r.target.power, r.note)
	}
	return r
}

// Mark renders and measures a hand-in and compares it with the target. 100
// means that no difference would be heard. A hand-in or a target without sound
// gets 0, unless both are silent.
func (r *Reference) Mark(yours synth.Sound) Result {
	sound := perform(yours, r.grid.seconds)
	y := r.grid.measure(sound)
	result := Result{Marks: credit(r.target, y)}
	if r.target != nil && y != nil {
		result.Partials = r.grid.ticks(r.places, r.target.power, y.power)
	}
	return result
}

// credit is the mark of a pair of sounds, 0 to 100.
func credit(t, y *features) float64 {
	switch {
	case t == nil && y == nil:
		return 100
	case t == nil || y == nil:
		return 0
	}
	z := compare(t, y).z()
	return 100 / (1 + z*z)
}
