package ask

import (
	"slices"

	"partialcredit/game/chance"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// A Run is one sitting at a naming, a comparison or a limit. The zero value has
// just begun; its seed should be random.
type Run struct {
	Seed    uint64 `json:"seed"`
	Answers []int  `json:"answers"` // which answer was chosen to each question
}

// Question is the i-th question, from 0 to how many have been answered.
func (r *Run) Question(e *sheet.Exercise, i int) Question {
	s := chance.Draws(r.Seed, i)
	switch e.Kind {
	case sheet.Name:
		return naming(e, r.item(len(e.Answers), i), s)
	case sheet.Same:
		return comparing(e, r.item(len(e.Pairs), i), s)
	}
	stairs := r.staircase(e, i)
	return limiting(e, stairs.Next(), s)
}

// About is a question of a naming or a comparison that asks after one item; not
// ok where the exercise has no such item.
func About(e *sheet.Exercise, item string, seed uint64) (q Question, ok bool) {
	switch e.Kind {
	case sheet.Name:
		i := slices.IndexFunc(e.Answers, func(a sheet.Answer) bool { return a.Name == item })
		if i >= 0 {
			return naming(e, i, chance.Draws(seed, 0)), true
		}
	case sheet.Same:
		i := slices.IndexFunc(e.Pairs, func(p sheet.Pair) bool { return p.Name == item })
		if i >= 0 {
			return comparing(e, i, chance.Draws(seed, 0)), true
		}
	}
	return Question{}, false
}

// Items are what the questions of a naming or a comparison ask after.
func Items(e *sheet.Exercise) (items []string) {
	for _, a := range e.Answers {
		items = append(items, a.Name)
	}
	for _, p := range e.Pairs {
		items = append(items, p.Name)
	}
	return items
}

// item is what the i-th question asks after: all n come once, in a random order,
// before any comes again.
func (r *Run) item(n, i int) int {
	return chance.Draws(r.Seed, -1-i/n).Order(n)[i%n]
}

// Done says whether the run has ended.
func (r *Run) Done(e *sheet.Exercise) bool {
	if e.Kind == sheet.Limit {
		s := r.Staircase(e)
		return s.Done()
	}
	return len(r.Answers) >= e.Questions
}

// Answer takes the answer to the next question and says whether it was right.
// After the end it does nothing.
func (r *Run) Answer(e *sheet.Exercise, answer int) (right bool) {
	if r.Done(e) {
		return false
	}
	q := r.Question(e, len(r.Answers))
	r.Answers = append(r.Answers, answer)
	return q.Right == answer
}

// Right is how many of the answers so far were right.
func (r *Run) Right(e *sheet.Exercise) (right int) {
	for i, answer := range r.Answers {
		if r.Question(e, i).Right == answer {
			right++
		}
	}
	return right
}

// Marks are those of a naming or a comparison of which all questions have been
// answered, 0 to 100, less what guessing gives: 100 (p - 1/m) / (1 - 1/m), where p of
// the answers among m were right, the usual correction for guessing (Abbott 1925,
// J. Econ. Entomol. 18:265).
func (r *Run) Marks(e *sheet.Exercise) float64 {
	m := 2.0
	if e.Kind == sheet.Name {
		m = float64(len(e.Answers))
	}
	p := float64(r.Right(e)) / float64(max(1, len(r.Answers)))
	return max(0, 100*(p-1/m)/(1-1/m))
}

// Guessed is the probability, 0 to 1, that mere guessing gets as many of the answers
// right.
func (r *Run) Guessed(e *sheet.Exercise) float64 {
	return practice.AtLeast(r.Right(e), len(r.Answers), len(r.Question(e, 0).Answers))
}

// Table counts what was answered to what: of a naming, by the names; of a
// comparison, by its two answers.
func (r *Run) Table(e *sheet.Exercise) *practice.Confusion {
	var c practice.Confusion
	if e.Kind == sheet.Limit {
		return &c
	}
	for i, answer := range r.Answers {
		q := r.Question(e, i)
		c.Add(q.Answers[q.Right], q.Answers[answer])
	}
	return &c
}

// Staircase is that of a limit, with the answers so far.
func (r *Run) Staircase(e *sheet.Exercise) practice.Staircase { return r.staircase(e, len(r.Answers)) }

func (r *Run) staircase(e *sheet.Exercise, n int) practice.Staircase {
	s := practice.Staircase{Start: e.Quantity.Start, Min: e.Quantity.Least, Max: e.Quantity.Most}
	for i, answer := range r.Answers[:min(n, len(r.Answers))] {
		s.Answer(answer == practice.Different(chance.Draws(r.Seed, i).Part()))
	}
	return s
}

// Valid says whether a run read from a file can be one of the exercise.
func (r *Run) Valid(e *sheet.Exercise) bool {
	if e.Kind == sheet.Match || e.Kind == sheet.Show {
		return false
	}
	n := len(r.Question(e, 0).Answers)
	for i, a := range r.Answers {
		past := Run{r.Seed, r.Answers[:i]}
		if a < 0 || a >= n || past.Done(e) {
			return false
		}
	}
	return true
}
