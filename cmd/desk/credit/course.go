package credit

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// A Course is what became of a sweep.
type Course struct {
	Sweep
	Results []mark.Result
	Ear     []float64 // see [Different]; only at the first [earErrors] errors
}

// earErrors is at how many errors the ear listens too: up to two steps, where
// it shows whether a step is one.
const earErrors = 3

// run marks every setting of a sweep.
func (s *Sweep) run(r *mark.Reference) *Course {
	c := &Course{Sweep: *s}
	for _, yours := range s.Settings() {
		c.Results = append(c.Results, r.Mark(yours, 1))
	}
	return c
}

// The bounds of a fall: marks that have been below gone stay below mostBack,
// and until then none rises above an earlier one by more than mostRise.
const (
	mostRise = 2.0
	gone     = 30.0
	mostBack = 40.0
)

// Falls says whether the marks fall all the way, and whether they get below
// [gone] in the range of the control.
func (c *Course) Falls() (steadily, below bool) {
	lowest := 100.0
	for _, r := range c.Results {
		if below && r.Marks > mostBack || !below && r.Marks > lowest+mostRise {
			return false, below
		}
		lowest = math.Min(lowest, r.Marks)
		below = below || r.Marks < gone
	}
	return true, below
}

// Half is the error in steps at which half the marks are gone, between the
// errors tried in a straight line; +Inf where they never are.
func (c *Course) Half() float64 {
	at, m := 0.0, 100.0
	for i, r := range c.Results {
		if r.Marks < 50 {
			return at + (Errors[i]-at)*(m-50)/(m-r.Marks)
		}
		at, m = Errors[i], r.Marks
	}
	return math.Inf(1)
}

// courses runs every sweep of a target, which r marks, and every choice.
func (t *Technique) courses(target synth.Sound, r *mark.Reference) (sweeps, choices []*Course) {
	ear := NewEar()
	pattern := ear.Listen(target)
	for _, s := range t.Sweeps(target) {
		c := s.run(r)
		for _, yours := range s.Settings()[:min(earErrors, len(s.Values))] {
			c.Ear = append(c.Ear, Different(pattern, ear.Listen(yours)))
		}
		sweeps = append(sweeps, c)
	}
	for _, s := range t.Choices(target) {
		choices = append(choices, s.run(r))
	}
	return sweeps, choices
}
