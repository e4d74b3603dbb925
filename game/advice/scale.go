package advice

import (
	"math"
	"sort"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// A scale lays the range of a control out in just-noticeable steps, as they are with
// everything else as in one sound.
type scale struct {
	control *sheet.Control
	value   []float64
	steps   []float64 // from the first value, rising
}

// laid is into how many parts a range is cut: the steps change slowly.
const laid = 256

func newScale(c *sheet.Control, s synth.Sound) *scale {
	f := c.Field()
	sc := &scale{control: c}
	if len(f.Choices) > 0 || f.Whole && c.Max-c.Min <= laid {
		for v := c.Min; v <= c.Max; v++ {
			sc.value = append(sc.value, v)
		}
	} else {
		for i := range laid + 1 {
			at := float64(i) / laid
			v := c.Min + (c.Max-c.Min)*at
			if f.Log && c.Min > 0 {
				v = c.Min * math.Pow(c.Max/c.Min, at)
			}
			sc.value = append(sc.value, v)
		}
	}
	sc.steps = make([]float64, len(sc.value))
	for i := 1; i < len(sc.value); i++ {
		from, to := sc.value[i-1], sc.value[i]
		steps := 0.0
		if len(f.Choices) > 0 {
			steps = mark.Steps(f.Name, s, from, to)
		} else {
			c.Set(&s, (from+to)/2)
			steps = (to - from) / mark.Step(f.Name, s)
		}
		sc.steps[i] = sc.steps[i-1] + steps
	}
	return sc
}

// all is the number of steps across the range.
func (sc *scale) all() float64 { return sc.steps[len(sc.steps)-1] }

// choices says that the values have no order.
func (sc *scale) choices() bool { return len(sc.control.Field().Choices) > 0 }

// apart is how many steps lie between two values; those that have no order are as far
// apart as can be.
func (sc *scale) apart(a, b float64) float64 {
	if sc.choices() && a != b {
		return math.Inf(1)
	}
	return math.Abs(sc.of(a) - sc.of(b))
}

// of is where a value lies, in steps.
func (sc *scale) of(v float64) float64 { return interpolate(sc.value, sc.steps, v) }

// at is the value that lies so many steps up.
func (sc *scale) at(steps float64) float64 {
	return sc.control.Field().Clamp(interpolate(sc.steps, sc.value, steps))
}

// spread is n values over all of the range, its ends among them, or all there are.
func (sc *scale) spread(n int) []float64 {
	if sc.choices() {
		return sc.value
	}
	values := make([]float64, n)
	for i := range values {
		values[i] = sc.at(sc.all() * float64(i) / float64(max(1, n-1)))
	}
	return values
}

// interpolate is y at x along points that rise in x.
func interpolate(xs, ys []float64, x float64) float64 {
	i := sort.SearchFloat64s(xs, x)
	switch {
	case i == 0:
		return ys[0]
	case i == len(xs):
		return ys[len(ys)-1]
	}
	if xs[i] == xs[i-1] {
		return ys[i]
	}
	return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
}
