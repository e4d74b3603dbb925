package book

import (
	"math"

	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// An Item is one exercise and what the class did with it. Marks are NaN where nobody has
// any: in a limit, say.
type Item struct {
	Exercise *sheet.Exercise // as it is written, before targets are drawn
	Done     int             // how many learners answered it
	Marked   int             // how many of them have marks
	Mean     float64         // of the first marks: the difficulty of test theory, lower for harder
	Median   float64         // of the first marks
	Best     float64         // mean of the best marks
	Chance   float64         // marks of who guesses, on average, or leaves the controls where they start; NaN as long as they are not known
	Apart    float64         // how well it separates the class, -1 to 1; NaN where there is too little to say: see [LeastLearners]
	Hard     bool            // the first marks are, on average, below [HardBelow] or below Chance
	Easy     bool            // they are above [EasyAbove]

	Found int     // of a limit: how many learners found one
	Limit float64 // of a limit: the median of those found, in the unit of its quantity; NaN where there are none

	Table *practice.Confusion // of a naming or a comparison: what was answered to what; nil for others
}

// Design choices: an exercise is called hard or easy beyond these first marks, and
// nothing is called so from fewer learners than that.
const (
	HardBelow     = 30.0
	EasyAbove     = 95.0
	LeastLearners = 5
)

// judge works out an item from the rows.
//
// How well it separates the class is the corrected item-total correlation of classical
// test theory: Pearson's correlation of the marks of the exercise with the mean of the
// same learner's marks in all others, so that it is not compared with itself (Nunnally
// and Bernstein 1994, Psychometric Theory, 3rd ed., ch. 8, from memory; Allen and Yen
// 1979, Introduction to Measurement Theory, ch. 6, from memory). First marks are used:
// best ones say how long somebody stayed. Learners who answered nothing else are left
// out. Weakness: with few learners one alone can turn it.
func (t *Table) judge(i int) {
	item := &t.Items[i]
	var first, best, limits, own, others []float64
	for j := range t.Rows {
		c := &t.Rows[j].Cells[i]
		if c.Work != nil {
			item.Done++
		}
		if c.Found {
			limits = append(limits, c.Limit)
		}
		if c.Table != nil {
			if item.Table == nil {
				item.Table = &practice.Confusion{}
			}
			item.Table.Merge(c.Table)
		}
		if !c.hasMarks() {
			continue
		}
		first, best = append(first, c.First), append(best, c.Best)
		if rest := t.Rows[j].without(i); !math.IsNaN(rest) {
			own, others = append(own, c.First), append(others, rest)
		}
	}
	item.Marked, item.Mean, item.Median, item.Best = len(first), mean(first), median(first), mean(best)
	item.Found, item.Limit = len(limits), median(limits)
	item.Apart = math.NaN()
	if len(own) >= LeastLearners {
		item.Apart = correlation(own, others)
	}
	if len(first) >= LeastLearners {
		item.Hard = item.Mean < HardBelow || item.Mean < item.Chance
		item.Easy = item.Mean > EasyAbove && !item.Hard
	}
}

// without is the mean of a learner's first marks in all exercises but one; NaN where
// there are none.
func (r *Row) without(i int) float64 {
	var rest []float64
	for j := range r.Cells {
		if j != i && r.Cells[j].hasMarks() {
			rest = append(rest, r.Cells[j].First)
		}
	}
	return mean(rest)
}

// guessing are the marks of a naming or a comparison that mere guessing gives on
// average. Marks are less what guessing gives, but never below 0, so that a little is
// left (the mean of the binomial distribution above its own mean).
func guessing(x *sheet.Exercise) float64 {
	m := 2
	if x.Kind == sheet.Name {
		m = len(x.Answers)
	}
	n, p, sum := x.Questions, 1/float64(m), 0.0
	for right := 1; right <= n; right++ {
		share := practice.AtLeast(right, n, m)
		if right < n {
			share -= practice.AtLeast(right+1, n, m)
		}
		sum += share * max(0, (float64(right)/float64(n)-p)/(1-p))
	}
	return 100 * sum
}
