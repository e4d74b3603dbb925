package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// product is a way in which two frequencies make sums and differences.
type product int

const (
	noProduct product = iota
	ringed            // k·a ± b, the carriers k·a missing
	modulated         // k·a and k·a ± b
	spread            // a ± n·b
	products
)

// combination is the line |k·a + l·b|.
type combination struct{ k, l int }

// combinations are those that carry most of the power.
var combinations = func() (t [products][]combination) {
	for k := 1; k <= 9; k++ {
		t[ringed] = append(t[ringed], combination{k, 1}, combination{k, -1})
		t[modulated] = append(t[modulated], combination{k, 0}, combination{k, 1}, combination{k, -1})
	}
	for n := -9; n <= 9; n++ {
		t[spread] = append(t[spread], combination{1, n})
	}
	return
}()

func (t combination) hz(a, b float64) float64 { return math.Abs(float64(t.k)*a + float64(t.l)*b) }

// accounts says whether a line at hz is a combination of a and b.
func (p product) accounts(hz, a, b float64) bool {
	multiple := func(x, of float64) bool { // of the carrier, 1 and up
		k := math.Round(x / of)
		return k >= 1 && near(hz, hz-x+k*of)
	}
	switch p {
	case ringed:
		return multiple(hz-b, a) || multiple(hz+b, a) || multiple(b-hz, a)
	case modulated:
		return multiple(hz, a) || multiple(hz-b, a) || multiple(hz+b, a) || multiple(b-hz, a)
	}
	const order = 14 // J15 of an index of 10 is still 0.005
	for _, x := range []float64{hz - a, hz + a} {
		if n := math.Round(x / b); math.Abs(n) <= order && near(hz, hz-x+n*b) {
			return true
		}
	}
	return false
}

// explain says how well a product accounts for the lines: share is the share of
// them that it accounts for, score is lower where lines that must be there are
// missing, pairs are unequal, or hardly any line lies beside the multiples of a
// (then a alone explains them).
func explain(lines []spectrum.Line, how product, a, b float64) (score, share float64) {
	var all, found, beside float64
	for _, l := range lines {
		w := faintCounts.of(l.Amplitude)
		all += w
		if how.accounts(l.Hz, a, b) {
			found += w
		}
		if k := math.Round(l.Hz / a); k < 1 || !near(l.Hz, k*a) {
			beside += w
		}
	}
	share = found / all
	if share < 0.5 || beside < 0.1*all {
		return 0, share
	}
	score = share - unequal(lines, how, a, b)
	switch carrier := lineAt(lines, a); {
	case how == ringed && carrier > 0.03, how == modulated && carrier < 0.1:
		score -= 0.3
	case how == modulated && lineAt(lines, a+2*b) > 0.03:
		score -= 0.1 // a second pair speaks for frequency modulation
	case how == modulated:
		score -= 0.02
	case how == spread:
		score -= 0.05
	}
	return score, share
}

// unequal is how far the pairs k·a ± b, or a ± n·b, are from being equally
// strong: 0 to 0.5. Pairs of which one line is too low to be measured do not
// count.
func unequal(lines []spectrum.Line, how product, a, b float64) float64 {
	var sum, weight float64
	for k := 1.0; k <= 4; k++ {
		up, down := k*a+b, math.Abs(k*a-b)
		if how == spread {
			up, down = a+k*b, math.Abs(a-k*b)
		}
		if down < 20 {
			continue
		}
		u, d := lineAt(lines, up), lineAt(lines, down)
		if u+d == 0 && k == 1 {
			return 0.3 // the first pair must be there
		}
		if u+d == 0 {
			continue
		}
		w := math.Max(0.05, math.Max(u, d))
		e := 0.5
		if u > 0 && d > 0 {
			e = math.Min(0.3, 0.01*math.Abs(20*math.Log10(u/d)))
		}
		sum += w * e
		weight += w
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}
