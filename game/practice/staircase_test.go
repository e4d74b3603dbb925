package practice

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// near is false for what is not a number.
func near(got, want, off float64) bool { return math.Abs(got-want) <= off }

// answers puts a run of r (right) and w (wrong) to a staircase.
func answers(s *Staircase, text string) {
	for _, c := range text {
		s.Answer(c == 'r')
	}
}

// Levitt 1971, table I: two-down one-up moves down after ++, up after +- and -,
// and settles where both have a probability of one half: 0.707.
func TestSettlesAtLevittsTarget(t *testing.T) {
	down := 0.0
	for _, first := range []bool{false, true} {
		for _, second := range []bool{false, true} {
			var s Staircase
			s.Answer(first)
			if moved := s.Next() > 1; moved == first {
				t.Errorf("after a first answer %v: moved up is %v", first, moved)
			}
			if !first {
				continue
			}
			s.Answer(second)
			if s.Next() < 1 {
				p := map[bool]float64{true: Target, false: 1 - Target}
				down += p[first] * p[second]
			}
		}
	}
	if !near(down, 0.5, 1e-12) {
		t.Errorf("at the target the quantity falls with probability %v, want one half", down)
	}
	if !near(Target, 0.7071, 5e-5) {
		t.Errorf("target %v, Levitt has 0.707 and hearing 3 has 0.7071", Target)
	}
}

// The rule of hearing 3 by hand: factor 2 up to and with the second reversal,
// then √2.
func TestSteps(t *testing.T) {
	var s Staircase
	answers(&s, "rrrrwrrrrwrr")
	want := []Trial{
		{1, true, false}, {1, true, false},
		{0.5, true, false}, {0.5, true, false},
		{0.25, false, true},
		{0.5, true, false}, {0.5, true, true},
		{0.25, true, false}, {0.25, true, false},
		{0.25 / math.Sqrt2, false, true},
		{0.25, true, false}, {0.25, true, true},
	}
	got := s.Run()
	if len(got) != len(want) {
		t.Fatalf("%d trials, want %d", len(got), len(want))
	}
	for i, w := range want {
		g := got[i]
		if !near(g.Value/w.Value, 1, 1e-12) || g.Right != w.Right || g.Reversal != w.Reversal {
			t.Errorf("trial %d: %v, want %v", i+1, g, w)
		}
	}
	if next := s.Next(); !near(next/(0.25/math.Sqrt2), 1, 1e-12) {
		t.Errorf("next %v, want 0.25/√2", next)
	}
}

func TestEnds(t *testing.T) {
	for _, tt := range []struct {
		name, unit        string
		trials, reversals int
	}{
		{"eight reversals", "rrw", 25, 8}, // the first two right answers turn nothing
		{"fifty trials", "r", 50, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var s Staircase
			for range 100 {
				answers(&s, tt.unit)
			}
			n := len(reversals(s.Run()))
			if !s.Done() || len(s.Answers) > tt.trials || n != tt.reversals {
				t.Errorf("done %v after %d trials, %d reversals; want %d and %d", s.Done(), len(s.Answers), n, tt.trials, tt.reversals)
			}
			s.Answers = s.Answers[:len(s.Answers)-1]
			if s.Done() {
				t.Error("done a trial earlier already")
			}
			for range 9 { // as a file might have it
				for _, c := range tt.unit {
					s.Answers = append(s.Answers, c == 'r')
				}
			}
			if !s.Done() {
				t.Error("not done with more than is asked")
			}
		})
	}
}

// After the two steps of 2 the run rrw swings between v and v/√2: geometric mean
// v/⁴√2, and standard deviation of the logarithms ln √2 · √(6/5)/2.
func TestThresholdByHand(t *testing.T) {
	s := Staircase{Start: 8}
	if v, f, ok := s.Threshold(); v != 0 || f != 0 || ok {
		t.Errorf("before the start: %v, %v, %v", v, f, ok)
	}
	for range 10 {
		answers(&s, "rrw")
	}
	value, factor, ok := s.Threshold()
	// 8 falls to 4, rises to 8 (first reversal), falls to 4 (second), rises to 4√2.
	want := 4 * math.Pow(2, 0.25)
	wantFactor := math.Exp(math.Log(math.Sqrt2) * math.Sqrt(1.2) / 2)
	if !ok || !near(value/want, 1, 1e-12) || !near(factor/wantFactor, 1, 1e-12) {
		t.Errorf("about %v within a factor %v, ok %v; want %v and %v", value, factor, ok, want, wantFactor)
	}
}

func TestBounds(t *testing.T) {
	for _, tt := range []struct {
		name, unit string
		value      float64
	}{
		{"always right", "r", 0.25},
		{"always wrong", "w", 4},
		{"turns at the upper bound", "wrr", 4},
		{"turns at the lower bound", "rrrrrrw", 0.25},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := Staircase{Start: 2, Min: 0.25, Max: 4}
			for !s.Done() {
				answers(&s, tt.unit)
			}
			for i, trial := range s.Run() {
				if trial.Value < s.Min || trial.Value > s.Max {
					t.Errorf("trial %d asks for %v", i+1, trial.Value)
				}
			}
			if value, _, ok := s.Threshold(); ok || value != tt.value {
				t.Errorf("threshold %v, ok %v, want the bound %v and not ok", value, ok, tt.value)
			}
		})
	}
	var endless Staircase
	for !endless.Done() {
		endless.Answer(true)
	}
	if value, factor, ok := endless.Threshold(); value != 0 || factor != 0 || ok {
		t.Errorf("always right, without bounds: %v, %v, %v", value, factor, ok)
	}
	for _, tt := range []struct {
		s    Staircase
		want float64
	}{
		{Staircase{}, 1},
		{Staircase{Start: 9, Min: 2, Max: 3}, 3},
		{Staircase{Start: 1, Min: 2, Max: 3}, 2},
		{Staircase{Start: -1, Min: -2, Max: -3}, 1},
	} {
		if got := tt.s.Next(); got != tt.want {
			t.Errorf("%+v starts at %v, want %v", tt.s, got, tt.want)
		}
	}
}

func TestDifferentIsFair(t *testing.T) {
	var counts [Intervals]int
	for i := range 300 {
		counts[Different(float64(i)/300)]++
	}
	if counts != [Intervals]int{100, 100, 100} {
		t.Errorf("%v, want each a hundred times", counts)
	}
}

// A run that is written and read after every trial is the run that is not.
func TestResumesMidRun(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	whole := Staircase{Start: 0.3, Min: 0.01, Max: 0.45}
	broken := whole
	for !whole.Done() {
		if whole.Next() != broken.Next() {
			t.Fatalf("trial %d: %v and %v", len(whole.Answers), whole.Next(), broken.Next())
		}
		right := rng.Float64() < 0.7
		whole.Answer(right)
		broken.Answer(right)
		data, err := json.Marshal(&broken)
		if err != nil {
			t.Fatal(err)
		}
		broken = Staircase{}
		if err := json.Unmarshal(data, &broken); err != nil {
			t.Fatal(err)
		}
	}
	if !broken.Done() || !slices.Equal(whole.Run(), broken.Run()) {
		t.Errorf("runs differ:\n%v\n%v", whole.Run(), broken.Run())
	}
}
