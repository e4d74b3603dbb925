package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Every match of the course can be solved, and there is something to solve: the
// target earns everything, and the start not more than 60, which is no longer
// close (hearing.md 8(a)4); a little more where beginners are marked, for whom
// another choice, twenty steps, costs 37.
func TestMatchesOfTheCourseAreWorthSolving(t *testing.T) {
	t.Parallel()
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Match {
				continue
			}
			t.Run(e.ID, func(t *testing.T) {
				t.Parallel()
				r := mark.Prepare(e.Target)
				most := 60.0
				if s.Strictness == sheet.Beginner {
					most = 64
				}
				target, start := r.Mark(e.Target, 1).Marks, r.Mark(e.Start(), s.Strictness.Times()).Marks
				t.Logf("target %.1f, start %.1f", target, start)
				if target < 99.999 || start > most {
					t.Errorf("the target earns %.1f, the start %.1f", target, start)
				}
			})
		}
	}
}

// No two answers of a naming sound alike: as they stand, at a note in the middle,
// by their sounds, and however each is varied, at the lowest and the highest
// note, by their descriptions, they lie more than leastApart just-noticeable
// steps apart.
func TestAnswersOfTheCourseDiffer(t *testing.T) {
	t.Parallel()
	const leastApart = 8.0 // design choice: two steps of a beginner (hearing.md 8(a)2)
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Name {
				continue
			}
			t.Run(e.ID, func(t *testing.T) {
				t.Parallel()
				least, which := math.Inf(1), ""
				keep := func(a, b sheet.Answer, steps float64, how string) {
					if steps < least {
						least, which = steps, a.Name+" and "+b.Name+how
					}
				}
				for i, a := range e.Answers {
					r := mark.Prepare(middle(a, e.Notes))
					for _, b := range e.Answers[i+1:] {
						keep(a, b, r.Mark(middle(b, e.Notes), 1).Steps, "")
						for _, one := range corners(a, e.Notes) {
							for _, other := range corners(b, e.Notes) {
								if one.Note == other.Note || e.Notes == nil {
									keep(a, b, mark.Apart(one, other), ", varied")
								}
							}
						}
					}
				}
				t.Logf("%.1f steps: %s", least, which)
				if least < leastApart {
					t.Errorf("%s are only %.1f steps apart", which, least)
				}
			})
		}
	}
}

// middle is an answer as it stands, at a note in the middle.
func middle(a sheet.Answer, notes *sheet.Range) synth.Sound {
	s := a.Sound
	if notes != nil {
		s.Note = math.Round((notes[0] + notes[1]) / 2)
	}
	return s
}

// corners are an answer with each of its variations at its lowest and at its
// highest, in all combinations, at the lowest and the highest note.
func corners(a sheet.Answer, notes *sheet.Range) []synth.Sound {
	all := []synth.Sound{a.Sound}
	double := func(v sheet.Variation) {
		for _, s := range all {
			v.Apply(&s, 1)
			all = append(all, s)
		}
		for i := range len(all) / 2 {
			v.Apply(&all[i], 0)
		}
	}
	for _, v := range a.Vary {
		double(v)
	}
	if notes != nil {
		double(sheet.Variation{Set: []string{"note"}, Between: *notes})
	}
	return all
}
