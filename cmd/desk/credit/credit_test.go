package credit

import (
	"bytes"
	"testing"

	"partialcredit/cmd/desk/measure"
	"partialcredit/game/mark"
)

// The bounds of the reasons; none that says the opposite is wanted, one in a hundred holds today.
const (
	wantedRight    = 0.95
	wantedOpposite = 0.01
)

// The bounds of the brief. A few targets of every technique keep the test
// short; desk credit makes the whole table.
func TestTheTableKeepsItsBounds(t *testing.T) {
	t.Parallel()
	table, err := Run(Options{Targets: 1, Seed: 3, Tries: 4, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	table.Write(&text, "go test", measure.ThisMachine(""))
	t.Log(text.String())
	for _, what := range table.Amiss {
		t.Log(what)
	}
	s := table.Summary()
	for _, c := range []struct {
		what         string
		got          float64
		least, above float64
	}{
		{"share of sweeps without a rise or return", float64(s.Steady) / float64(s.Sweeps), 0.97, 1},
		{"share of long sweeps that get below 30", float64(s.Gone) / float64(s.Long), 0.97, 1},
		{"marks at one step", s.AtOne, 95, 100},
		{"least half-mark error of a control", s.HalfLow, 5, 10},
		{"greatest half-mark error of a control", s.HalfHigh, 5, 10},
		{"least marks of what sounds alike", s.Alike, 98, 100},
		{"mean marks of what is confused", s.Confused, 0, 30},
		{"mean marks of guesses", s.Guesses, 0, 30},
		{"share of first reasons that are right", float64(s.Reasons.Right) / float64(s.Reasons.Cases), wantedRight, 1},
		{"share of cases in which a reason says the opposite", float64(s.Reasons.Contradicting) / float64(s.Reasons.Cases), 0, wantedOpposite},
		{"dB of the most different setting with more than 90 marks", s.Ear, 0, plainly},
	} {
		if !(c.got >= c.least && c.got <= c.above) {
			t.Errorf("%s: %.3f, wanted %v to %v", c.what, c.got, c.least, c.above)
		}
	}
	for _, c := range table.Confused {
		if c.Marks > 40 {
			t.Errorf("%s for %s at note %d: %.1f marks", c.B, c.Name, c.Note, c.Marks)
		}
	}
	if s.Sweeps < 60 || s.Long < 40 {
		t.Errorf("%d sweeps, %d of them long, are too few to say anything", s.Sweeps, s.Long)
	}
}

// A judge of steadiness must be able to say no.
func TestFalls(t *testing.T) {
	course := func(marks ...float64) *Course {
		c := &Course{}
		for _, m := range marks {
			c.Results = append(c.Results, mark.Result{Marks: m})
		}
		return c
	}
	for _, c := range []struct {
		marks         []float64
		steady, below bool
	}{
		{[]float64{96, 80, 50, 20}, true, true},
		{[]float64{96, 80, 81.5, 20}, true, true},   // a rise of less than 2
		{[]float64{96, 80, 83, 20}, false, false},   // a rise
		{[]float64{96, 80, 20, 39, 10}, true, true}, // a return that is allowed
		{[]float64{96, 80, 20, 41}, false, true},    // a return
		{[]float64{96, 80, 50}, true, false},
	} {
		if steady, below := course(c.marks...).Falls(); steady != c.steady || below != c.below {
			t.Errorf("%v: steady %v, below %v", c.marks, steady, below)
		}
	}
	if h := course(100, 96, 88, 80, 60, 40).Half(); h != 5 {
		t.Errorf("half the marks gone at %v, wanted 5: midway between 4 and 6", h)
	}
}
