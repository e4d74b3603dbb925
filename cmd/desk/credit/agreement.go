package credit

import (
	"slices"

	"partialcredit/game/mark"
)

// Agreement returns the marks of cases of every kind, to be compared between
// the builds of the program: pairs that sound alike, pairs that are confused,
// and a target of every technique with each of its controls four steps off.
func Agreement() (marks []float64, err error) {
	m := markers{}
	for _, p := range slices.Concat(Alike, Confused) {
		earned, err := m.at(p, 57)
		if err != nil {
			return nil, err
		}
		marks = append(marks, earned)
	}
	for i := range Techniques {
		q := &Techniques[i]
		target := q.Target(1, 0)
		r := mark.Prepare(target)
		for _, s := range q.Sweeps(target) {
			if four := index(4); s.Up && len(s.Values) > four {
				marks = append(marks, r.Mark(s.Settings()[four], 1).Marks)
			}
		}
	}
	return marks, nil
}
