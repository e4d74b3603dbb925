package sheet

import (
	"fmt"
	"math"
	"testing"
)

func varying(t *testing.T) *Sheet {
	t.Helper()
	s, err := Parse([]byte(`{"version": 1, "title": "T", "vary": true, "exercises": [
		{"id": "duty", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1, "a.shape": "pulse", "a.duty": 0.25},
		 "controls": [{"set": ["a.duty"], "min": 0.05, "max": 0.5, "start": 0.5}]},
		{"id": "ratio", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1, "combine.how": "ring", "combine.ratio": 2},
		 "controls": [{"set": ["combine.ratio"], "min": 1, "max": 4, "start": 1, "draw": [2, 3]},
		              {"set": ["a.shape", "b.shape"]}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestVariation(t *testing.T) {
	s := varying(t)
	seen := map[string]bool{}
	shapes := map[float64]int{}
	sum, n := 0.0, 400
	for i := range n {
		name := fmt.Sprint("Wren ", i)
		d := s.For(name)
		if err := d.check(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		duty := d.Exercises[0].Target.A.Duty
		if duty < 0.05 || duty > 0.5-clear*0.45+0.001 {
			t.Errorf("%s: the duty %v is met at the start, 0.5, or out of range", name, duty)
		}
		ratio := d.Exercises[1].Target.Combine.Ratio
		if ratio < 2 || ratio > 3 {
			t.Errorf("%s: the ratio %v is not drawn from 2 to 3", name, ratio)
		}
		shapes[d.Exercises[1].Controls[1].Get(&d.Exercises[1].Target)]++
		sum += duty
		seen[fmt.Sprint(duty, ratio)] = true
	}
	if s.Exercises[0].Target.A.Duty != 0.25 {
		t.Error("drawing has changed the sheet itself")
	}
	// Uniform from 0.05 to 0.32: the mean of 400 lies within four standard errors.
	if mean, want := sum/float64(n), (0.05+0.32)/2; math.Abs(mean-want) > 4*0.27/math.Sqrt(12*float64(n)) {
		t.Errorf("the mean duty is %v, want %v", mean, want)
	}
	if len(seen) < 390 {
		t.Errorf("only %d of %d differ", len(seen), n)
	}
	if _, start := shapes[s.Exercises[1].Controls[1].Start]; start || len(shapes) != 4 {
		t.Errorf("shapes drawn: %v, want the four that are not the start", shapes)
	}
}

// What was drawn once is drawn again in every later version (values of this version).
func TestVariationStays(t *testing.T) {
	s := varying(t)
	a, b := s.For("Wren"), s.For("  wREN ")
	if a.Exercises[0].Target != b.Exercises[0].Target {
		t.Error("upper case and spaces make a difference")
	}
	got := fmt.Sprint(s.Fingerprint(), a.Exercises[0].Target.A.Duty, a.Exercises[1].Target.Combine.Ratio, s.Seed("Wren", "duty", 0))
	if want := "82C6hd3XXRw0.06 2.98 9324298131439849943"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
