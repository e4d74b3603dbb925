package credit

import (
	"math"
	"slices"
)

// A Summary holds the figures that have a bound.
type Summary struct {
	Targets, Sweeps int
	Steady          int // sweeps without a rise or a return
	Long, Gone      int // sweeps of 16 steps or more; of these, steady ones that get below 30
	AtOne           float64
	HalfLow         float64 // the least and the greatest half-mark error of a control, medians over its sweeps
	HalfHigh        float64
	Alike           float64 // the least
	Confused        float64 // means
	Guesses         float64
	Ear             float64 // dB, of the worst counterexample
	Reasons         Tally   // of all controls
}

// Summary works out the figures.
func (t *Table) Summary() Summary {
	s := Summary{
		Targets: len(Techniques) * t.Targets, Sweeps: len(t.Courses),
		Reasons: total(t.Reasons), AtOne: 100, HalfLow: math.Inf(1), Alike: 100,
	}
	for _, c := range t.Courses {
		steady, below := c.Falls()
		if steady {
			s.Steady++
		}
		if len(c.Results) >= index(16)+1 {
			s.Long++
			if steady && below {
				s.Gone++
			}
		}
		s.AtOne = math.Min(s.AtOne, c.Results[index(1)].Marks)
	}
	names, of := t.rows()
	for _, name := range names {
		if h := median(halves(of[name])); !math.IsNaN(h) {
			s.HalfLow, s.HalfHigh = math.Min(s.HalfLow, h), math.Max(s.HalfHigh, h)
		}
	}
	for _, p := range t.Alike {
		s.Alike = math.Min(s.Alike, p.Marks)
	}
	for _, p := range t.Confused {
		s.Confused += p.Marks / float64(len(t.Confused))
	}
	for _, m := range t.Guesses {
		s.Guesses += m / float64(len(t.Guesses))
	}
	for _, w := range t.Worst {
		s.Ear = math.Max(s.Ear, w.Ear)
	}
	return s
}

// index is where an error stands in [Errors].
func index(e float64) int { return slices.Index(Errors, e) }

// halves are the half-mark errors of the courses long enough to have one: of 8
// steps or more.
func halves(courses []*Course) (h []float64) {
	for _, c := range courses {
		if len(c.Results) > index(8) {
			h = append(h, c.Half())
		}
	}
	return h
}

// median of values; NaN where there are none.
func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	v = slices.Sorted(slices.Values(v))
	return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
}
