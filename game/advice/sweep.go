package advice

import (
	"math"
	"slices"

	"partialcredit/game/words"
)

// A point is what one setting of one control earns, all others being right.
type point struct {
	value float64
	far   float64 // steps on the control from the target
	marks float64
}

// A sweep is a control on its way from the target to either end of its range.
type sweep struct{ down, up []point }

const (
	nothing  = 4.0  // marks: what one step costs, so that less is not heard
	steady   = 5.0  // marks that may be gained on the way: the marking itself wavers by 3 (DEVELOPERS.md)
	uneven   = 15.0 // marks from which on it misleads (design choice)
	sweepMax = 28   // settings of one control that are marked, beside those next to the target
)

// near are the first settings of a sweep, in steps as large as the sheet takes them.
var near = []float64{1, 2, 3.5, 5.5, 8}

// sweep marks a control over its range. Away from the target its settings lie no
// further apart than what costs half the marks, as long as the range allows it.
func (m *match) sweep(i int) sweep {
	sc, times := m.scales[i], m.times
	target := m.target[i]
	mark := func(v float64) point {
		return point{v, math.Abs(sc.of(v) - sc.of(target)), m.marks(m.moved(i, v))}
	}
	var s sweep
	if sc.choices() {
		for _, v := range sc.value {
			if v < target {
				s.down = append(s.down, mark(v))
			} else if v > target {
				s.up = append(s.up, mark(v))
			}
		}
		return s
	}
	gap := max(8*times, sc.all()/sweepMax)
	side := func(end float64) (all []point) {
		from, to := sc.of(target), sc.of(end)
		last := target
		for n := 0; last != end; n++ {
			far := gap * float64(n-len(near)+2)
			if n < len(near) {
				far = near[n] * times
			}
			if n >= len(near) && far <= near[len(near)-1]*times {
				continue
			}
			v := end
			if far < math.Abs(to-from) {
				v = sc.at(from + math.Copysign(far, to-from))
			}
			if v != last {
				all = append(all, mark(v))
			}
			last = v
		}
		return all
	}
	s.down, s.up = side(sc.control.Min), side(sc.control.Max)
	return s
}

// least is the fewest marks that a setting of the sweep earns.
func (s *sweep) least() float64 {
	least := 100.0
	for _, p := range append(slices.Clone(s.down), s.up...) {
		least = min(least, p.marks)
	}
	return least
}

// reach is how far on one side everything earns nearly full marks; the target itself
// where the first setting does not.
func reach(side []point, target float64) point {
	end := point{value: target, marks: 100}
	for _, p := range side {
		if p.marks < nearly {
			break
		}
		end = p
	}
	return end
}

// rises tells where marks are gained on the way away from the target.
func (m *match) rises(i int, s sweep) {
	if m.scales[i].choices() {
		return // no way leads from one to the next
	}
	for _, side := range [][]point{s.down, s.up} {
		low := point{marks: 100}
		var from, to point
		for _, p := range side {
			if p.marks < low.marks {
				low = p
			} else if p.marks-low.marks > to.marks-from.marks {
				from, to = low, p
			}
		}
		gain := to.marks - from.marks
		if gain < steady || m.leads(i, to.value) {
			continue
		}
		weight := Note
		if gain >= uneven {
			weight = Warning
		}
		c := &m.exercise.Controls[i]
		m.tell(Rises, i, weight, words.Say("%s: the marks do not fall steadily. Moved away from the target, from %s to %s, it gains marks: %s instead of %s. A learner who stands there is led away from the target: leave that part out of the range.",
			c.Label, c.Field().Format(from.value), c.Field().Format(to.value), whole(to.marks), whole(from.marks)))
	}
}

// leads says that another right answer has been told of on the same side of the target,
// to which marks may well rise.
func (m *match) leads(i int, v float64) bool {
	return slices.ContainsFunc(m.found, func(a Advice) bool {
		return a.Rule == Another && a.Control == i && a.Settings != nil && (a.Settings[i] < m.target[i]) == (v < m.target[i])
	})
}
