package book

import (
	"cmp"
	"slices"
	"strings"

	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// A Group is exercises in which the same answers are asked: namings with the same names,
// or all comparisons.
type Group struct {
	Items      []int    // of the table
	Answers    []string // as they stand in the first of the exercises
	Comparison bool
	Table      *practice.Confusion // of all of them together
}

// Groups are those of a table, in the order of its items, of what was answered at all.
func (t *Table) Groups() []*Group {
	var groups []*Group
	by := map[string]*Group{}
	for i := range t.Items {
		item := &t.Items[i]
		if item.Table == nil {
			continue
		}
		key, answers := "", []string(nil)
		if item.Exercise.Kind == sheet.Name {
			for _, a := range item.Exercise.Answers {
				answers = append(answers, a.Name)
			}
			key = strings.Join(slices.Sorted(slices.Values(answers)), "\n")
		} else {
			answers = comparison
		}
		g := by[key]
		if g == nil {
			g = &Group{Answers: answers, Comparison: key == "", Table: &practice.Confusion{}}
			by[key] = g
			groups = append(groups, g)
		}
		g.Items = append(g.Items, i)
		g.Table.Merge(item.Table)
	}
	return groups
}

// A Confused pair is two answers and how often one was taken for the other.
type Confused struct {
	practice.Pair
	Group     *Group
	Low, High float64 // the 95 % interval of its share, 0 to 1, of Wilson
}

// Confused are the pairs of names most often taken for each other: those first of which
// most can be said for sure, by the lower end of the interval of their share. Weakness: the
// intervals take all answers for independent, and many come from one learner.
func (t *Table) Confused() []Confused {
	var all []Confused
	for _, g := range t.Groups() {
		if g.Comparison {
			continue
		}
		for _, p := range g.Table.Pairs() {
			c := Confused{Pair: p, Group: g}
			c.Low, c.High = practice.Wilson(p.Times, p.Played)
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b Confused) int {
		return cmp.Or(cmp.Compare(b.Low, a.Low), cmp.Compare(b.Times, a.Times))
	})
	return all
}
