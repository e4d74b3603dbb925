package mark_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// The bounds of the brief: moving any one control away from the target in
// just-noticeable steps lets the marks fall, never rise by more than
// worstRise, until they are below gone, where the range goes that far.
const (
	worstRise = 3.0
	gone      = 30.0
	far       = 13 // steps: a range that ends before cannot cost so much
)

// walk lists the values of a control from the target to the end of its range,
// a just-noticeable step apart.
func walk(e *sheet.Exercise, c *sheet.Control, up bool) []float64 {
	s := e.Target
	v := c.Get(&s)
	values := []float64{v}
	for {
		c.Set(&s, v)
		step := mark.Step(c.Fields[0], s)
		if up {
			v = math.Min(c.Max, v+step)
		} else {
			v = math.Max(c.Min, v-step)
		}
		if v == values[len(values)-1] {
			return values
		}
		values = append(values, v)
	}
}

// TestMarksFallAwayFromTheTarget is the acceptance test of the method, over
// the controls of the built-in sheet: the first of every field and way to
// combine, for desk credit goes through the others. -v prints the marks per step.
func TestMarksFallAwayFromTheTarget(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, e := range mark.Swept() {
		var controls []*sheet.Control
		for j := range e.Controls {
			if name := e.Target.Combine.How.String() + " " + e.Controls[j].Fields[0]; !seen[name] {
				seen[name] = true
				controls = append(controls, &e.Controls[j])
			}
		}
		if len(controls) == 0 {
			continue
		}
		t.Run(e.ID, func(t *testing.T) {
			t.Parallel()
			r := mark.Prepare(e.Target)
			for _, c := range controls {
				for _, up := range []bool{false, true} {
					sweep(t, &e, c, r, up)
				}
			}
		})
	}
}

func sweep(t *testing.T, e *sheet.Exercise, c *sheet.Control, r *mark.Reference, up bool) {
	field := c.Field()
	if len(field.Choices) > 0 {
		return // TestConfusedChoices
	}
	values := walk(e, c, up)
	if len(values) == 1 {
		return
	}
	direction := "down"
	if up {
		direction = "up"
	}
	name := fmt.Sprintf("%s %s %s", e.ID, field.Name, direction)
	var row strings.Builder
	last, lowest, rise, below := 100.0, 100.0, 0.0, -1
	for n, v := range values {
		s := e.Target
		c.Set(&s, v)
		m := r.Mark(s, 1).Marks
		if n == 0 && m < 99.999 {
			t.Errorf("%s: the target itself gets %.2f", name, m)
		}
		fmt.Fprintf(&row, " %.0f", m)
		if below < 0 {
			rise = math.Max(rise, math.Max(m-last, m-lowest))
			if m < gone {
				below = n
			}
		}
		last, lowest = m, math.Min(lowest, m)
		if below >= 0 && n >= below+1 {
			break
		}
	}
	t.Logf("%-34s rise %4.1f, below %.0f at step %d of %d:%s", name, rise, gone, below, len(values)-1, row.String())
	if rise > worstRise {
		t.Errorf("%s: the marks rise by %.1f", name, rise)
	}
	if below < 0 && len(values)-1 >= far {
		t.Errorf("%s: the marks never fall below %.0f", name, gone)
	}
}

// Other choices than the target's are plainly different: at most 40, but for
// the two directions of a sawtooth, which sound alike.
func TestConfusedChoices(t *testing.T) {
	t.Parallel()
	for _, e := range mark.Swept() {
		r := mark.Prepare(e.Target)
		for j := range e.Controls {
			c := &e.Controls[j]
			f := c.Field()
			for v := range f.Choices {
				s := e.Target
				c.Set(&s, float64(v))
				m := r.Mark(s, 1).Marks
				t.Logf("%s: %s %s gets %.1f", e.ID, f.Name, f.Choices[v], m)
				same := s == e.Target || isSawtooth(f, s) && isSawtooth(f, e.Target)
				switch {
				case same && m < 98:
					t.Errorf("%s: %s %s sounds the same but gets %.1f", e.ID, f.Name, f.Choices[v], m)
				case !same && m > 40:
					t.Errorf("%s: %s %s gets %.1f", e.ID, f.Name, f.Choices[v], m)
				}
			}
		}
	}
}

func isSawtooth(f *synth.Field, s synth.Sound) bool {
	shape := synth.Shape(f.Get(&s))
	return strings.HasSuffix(f.Name, ".shape") && (shape == synth.Sawtooth || shape == synth.FallingSawtooth)
}
