// Package mark compares two sounds: it gives marks and the reasons for them.
//
// The marks are measured from the rendered sounds alone, never read off the
// settings, so settings that sound alike get the same marks.
package mark

import (
	"math"

	"partialcredit/synth"
)

// A Reference is a target prepared for marking: rendered once, measured once.
// It is not safe for concurrent use.
type Reference struct {
	grid   *grid
	target *features // nil for silence
	heard  *heard
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
	g := newGrid(seconds, fundamental(target))
	r := &Reference{grid: g}
	r.target, r.heard = g.take(perform(target, seconds))
	if r.target != nil {
		r.places = g.places(r.target.power)
	}
	return r
}

// Mark renders and measures a hand-in and compares it with the target. 100
// means that no difference would be heard. Silence gets 0, unless the target
// is silent too.
func (r *Reference) Mark(yours synth.Sound) Result {
	y, h := r.grid.take(perform(yours, r.grid.seconds))
	result := Result{Marks: credit(r.target, y), Reasons: reasons(r.heard, h)}
	if r.target != nil {
		result.Partials = r.grid.ticks(r.places, r.target, y)
	}
	return result
}

// The curve from distance to marks. Distances up to unheard are no difference:
// they come from where a movement stood when the sound began and ended. Half
// the marks are gone 1/steepness beyond it. (Design choices: the one is the
// distance of one just-noticeable step, the other lets half the marks go at 3
// to 6 of them; see TestMarksFallAwayFromTheTarget.)
const (
	unheard   = 0.25
	steepness = 1.3
)

// credit is the mark of a pair of sounds, 0 to 100.
func credit(t, y *features) float64 {
	switch {
	case t == nil && y == nil:
		return 100
	case t == nil || y == nil:
		return 0
	}
	x := steepness * math.Max(0, compare(t, y).z()-unheard)
	return 100 / (1 + x*x)
}
