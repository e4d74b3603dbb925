package practice

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

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
				if ratio := math.Exp2(mean); !near(ratio, 1, 0.07) {
					t.Errorf("the geometric mean is %.3f times the threshold", ratio)
				}
				if share := within / found; !near(share, 0.8, 0.08) {
					t.Errorf("the threshold is within the factor in %.2f of the runs, want about 0.8", share)
				}
				slices.Sort(trials)
				sd := math.Sqrt(squares/found - mean*mean)
				if start == 16 && (trials[runs/2] < 30 || trials[runs/2] > 32 || !near(sd, 0.48, 0.05)) {
					t.Errorf("%d trials, spread %.2f octaves; hearing 3 has 31 and 0.48", trials[runs/2], sd)
				}
			})
		}
	}
}
