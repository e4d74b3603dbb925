package book

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"partialcredit/game/sheet"
)

func near(a, b, tolerance float64) bool {
	return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= tolerance
}

// gonum's stat judges mean and correlation, and its empirical quantiles the median.
func TestStatisticsAgreeWithGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for n := 2; n < 60; n++ {
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = 100 * rng.Float64()
			y[i] = 0.6*x[i] + 40*rng.NormFloat64()
		}
		if got, want := mean(x), stat.Mean(x, nil); !near(got, want, 1e-9) {
			t.Errorf("mean of %d: %v, want %v", n, got, want)
		}
		if got, want := correlation(x, y), stat.Correlation(x, y, nil); !near(got, want, 1e-12) {
			t.Errorf("correlation of %d: %v, want %v", n, got, want)
		}
		sorted := slices.Sorted(slices.Values(x))
		want := (stat.Quantile(0.5, stat.Empirical, sorted, nil) + stat.Quantile(math.Nextafter(0.5, 1), stat.Empirical, sorted, nil)) / 2
		if got := median(x); !near(got, want, 1e-9) {
			t.Errorf("median of %d: %v, want %v", n, got, want)
		}
	}
}

// Anscombe 1973, The American Statistician 27:17, table: four sets, each of correlation
// 0.816 (from memory; gonum judges the digits that follow).
func TestCorrelationOfAnscombe(t *testing.T) {
	x := []float64{10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5}
	y := []float64{8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68}
	if got := correlation(x, y); !near(got, 0.816, 0.0005) || !near(got, stat.Correlation(x, y, nil), 1e-12) {
		t.Errorf("correlation %v, want 0.816", got)
	}
}

func TestNothingIsSaidOfWhatDoesNotVary(t *testing.T) {
	same := []float64{0.1 + 0.2, 0.3, 0.3, 0.1 + 0.2, 0.3}
	if got := correlation(same, []float64{1, 2, 3, 4, 5}); !math.IsNaN(got) {
		t.Errorf("a correlation with what is the same for all: %v", got)
	}
	if !math.IsNaN(mean(nil)) || !math.IsNaN(median(nil)) {
		t.Error("the mean or the median of nothing is a number")
	}
}

// gonum's binomial distribution judges what guessing gives.
func TestGuessing(t *testing.T) {
	for _, c := range []struct{ answers, questions int }{{0, 12}, {2, 4}, {3, 12}, {4, 12}, {6, 40}} {
		x := &sheet.Exercise{Kind: sheet.Name, Questions: c.questions, Answers: make([]sheet.Answer, c.answers)}
		m := float64(c.answers)
		if c.answers == 0 {
			x.Kind, m = sheet.Same, 2
		}
		b := distuv.Binomial{N: float64(c.questions), P: 1 / m}
		want := 0.0
		for k := 0.0; k <= b.N; k++ {
			want += b.Prob(k) * max(0, 100*(k/b.N-b.P)/(1-b.P))
		}
		if got := guessing(x); !near(got, want, 1e-9) {
			t.Errorf("guessing among %v in %d questions: %v, want %v", m, c.questions, got, want)
		}
	}
}
