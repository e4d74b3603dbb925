package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

func TestEveryFieldHasSteps(t *testing.T) {
	s := synth.Default()
	for _, f := range synth.Fields() {
		if f.Name == "seed" {
			continue // another seed is another draw, not a distance
		}
		for _, v := range []float64{f.Min, f.Default, f.Max} {
			f.Set(&s, v)
			if step := mark.Step(f.Name, s); !(step > 0) || math.IsInf(step, 0) {
				t.Errorf("%s at %v: step %v", f.Name, v, step)
			}
		}
		f.Set(&s, f.Default)
		if n := mark.Steps(f.Name, s, f.Min, f.Max); !(n >= 1) || math.IsInf(n, 0) {
			t.Errorf("%s: %v steps in its range", f.Name, n)
		}
	}
	if step := mark.Step("no such field", s); !math.IsInf(step, 1) {
		t.Errorf("an unknown field has steps of %v", step)
	}
}

// Steps that stay in proportion to the value: ln(to/from)/fraction of them lie
// between two values. The fractions are those of the table in steps.go.
func TestSteps(t *testing.T) {
	plain := synth.Default()
	sync := plain
	sync.Combine.How = synth.Sync
	fm, ring := plain, plain
	fm.Combine.How, ring.Combine.How = synth.FM, synth.Ring
	ring.A.Shape, ring.B.Shape = synth.Sine, synth.Sine
	for _, c := range []struct {
		field    string
		s        synth.Sound
		from, to float64
		want     float64
	}{
		{"a.cents", plain, 0, 20, 4},                                   // 5 cents
		{"a.duty", plain, 0.1, 0.2, math.Ln2 / 0.04},                   // 4 % of the width
		{"a.duty", plain, 0.8, 0.9, math.Ln2 / 0.04},                   // of the narrower part
		{"combine.ratio", fm, 2.1, 2.9, math.Log(2.9/2.1) / 0.004},     // outer sidebands
		{"combine.ratio", ring, 2.1, 2.4, math.Log(3.4/3.1) / 0.003},   // the sum of A and B
		{"combine.ratio", sync, 2, 3, math.Log(1.5) / 0.015},           // the peak
		{"envelope.seconds", plain, 0.1, 0.4, math.Log(4) / 0.15},      // time constants
		{"a.level", plain, 0.5, 1, math.Ln2 / (math.Pow(10, .05) - 1)}, // 1 dB
		{"a.shape", plain, 0, 1, 20},
	} {
		there, back := mark.Steps(c.field, c.s, c.from, c.to), mark.Steps(c.field, c.s, c.to, c.from)
		near(t, c.field, there, c.want, 0.01*c.want)
		near(t, c.field+" back", back, there, 1e-9)
	}
	if n := mark.Steps("a.duty", plain, 0.3, 0.3); n != 0 {
		t.Errorf("%v steps between equal values", n)
	}
}
