package practice

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

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
	if math.Abs(down-0.5) > 1e-12 {
		t.Errorf("at the target the quantity falls with probability %v, want one half", down)
	}
	if math.Abs(Target-0.7071) > 5e-5 {
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
		if math.Abs(g.Value/w.Value-1) > 1e-12 || g.Right != w.Right || g.Reversal != w.Reversal {
			t.Errorf("trial %d: %v, want %v", i+1, g, w)
		}
	}
	if next := s.Next(); math.Abs(next/(0.25/math.Sqrt2)-1) > 1e-12 {
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
	if !ok || math.Abs(value/want-1) > 1e-12 || math.Abs(factor/wantFactor-1) > 1e-12 {
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

// listen plays a run with a listener of three intervals: a Weibull function of
// slope 1.5 with 2 % lapses (hearing 3), 70.7 % right at the threshold.
func listen(s Staircase, threshold float64, rng *rand.Rand) *Staircase {
	const guess, slope, lapse = 1.0 / 3, 1.5, 0.02
	scale := threshold / math.Pow(-math.Log(1-(math.Sqrt(0.5)-guess)/(1-guess-lapse)), 1/slope)
	for !s.Done() {
		p := guess + (1-guess-lapse)*(1-math.Exp(-math.Pow(s.Next()/scale, slope)))
		s.Answer(rng.Float64() < p)
	}
	return &s
}

// Hearing 3 and 8(c)24: the geometric mean of 500 runs is within 7 % of the
// threshold; a run takes 31 trials (median), and its spread is 0.48 octaves.
func TestRecoversASimulatedListener(t *testing.T) {
	for _, threshold := range []float64{0.003, 1, 37} {
		for _, start := range []float64{2, 4, 10, 16, 32} {
			t.Run(fmt.Sprintf("%v from %v times", threshold, start), func(t *testing.T) {
				rng := rand.New(rand.NewPCG(math.Float64bits(threshold), uint64(start)))
				const runs = 500
				var sum, squares, found, within float64
				var trials []int
				for range runs {
					s := listen(Staircase{Start: start * threshold}, threshold, rng)
					trials = append(trials, len(s.Answers))
					value, factor, ok := s.Threshold()
					if !ok {
						continue // too few reversals in fifty trials
					}
					off := math.Log2(value / threshold)
					sum, squares, found = sum+off, squares+off*off, found+1
					if math.Abs(off) <= math.Log2(factor) {
						within++
					}
				}
				if found < 0.99*runs {
					t.Errorf("a threshold in %v runs only of %d", found, runs)
				}
				mean := sum / found
				if ratio := math.Exp2(mean); ratio < 0.93 || ratio > 1.07 {
					t.Errorf("the geometric mean is %.3f times the threshold", ratio)
				}
				if share := within / found; share < 0.72 || share > 0.88 {
					t.Errorf("the threshold is within the factor in %.2f of the runs, want about 0.8", share)
				}
				slices.Sort(trials)
				sd := math.Sqrt(squares/found - mean*mean)
				if start == 16 && (trials[runs/2] < 30 || trials[runs/2] > 32 || math.Abs(sd-0.48) > 0.05) {
					t.Errorf("%d trials, spread %.2f octaves; hearing 3 has 31 and 0.48", trials[runs/2], sd)
				}
			})
		}
	}
}
