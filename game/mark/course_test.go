package mark_test

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Every match of the course can be solved, and there is something to solve: as
// strictly as its sheet is marked, the target earns everything and the start
// not more than mostAtStart.
func TestMatchesOfTheCourseAreWorthSolving(t *testing.T) {
	const mostAtStart = 60.0 // design choice: what is no longer close (hearing.md 8(a)4)
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Match {
				continue
			}
			t.Run(e.ID, func(t *testing.T) {
				t.Parallel()
				r := mark.Prepare(e.Target)
				target, start := r.Mark(e.Target, s.Strictness.Times()).Marks, r.Mark(e.Start(), s.Strictness.Times()).Marks
				t.Logf("target %.1f, start %.1f", target, start)
				if target < 99.999 || start > mostAtStart {
					t.Errorf("the target earns %.1f, the start %.1f", target, start)
				}
			})
		}
	}
}

// No two answers of a naming sound alike, however each is varied: at the ends of
// all variations, at the lowest and the highest note, they lie further apart
// than leastApart just-noticeable steps of a practised listener.
func TestAnswersOfTheCourseDiffer(t *testing.T) {
	const leastApart = 4.0 // design choice: a beginner's step is four (hearing.md 8(a)2)
	var lock sync.Mutex
	var closest []string
	t.Cleanup(func() {
		slices.Sort(closest)
		for _, line := range closest {
			t.Log(line)
		}
	})
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Name {
				continue
			}
			t.Run(e.ID, func(t *testing.T) {
				t.Parallel()
				least, which := 1e9, ""
				for i, a := range e.Answers {
					for _, one := range corners(a, e.Notes) {
						r := mark.Prepare(one)
						for _, b := range e.Answers[i+1:] {
							for _, other := range corners(b, e.Notes) {
								if one.Note != other.Note && e.Notes != nil {
									continue
								}
								steps := r.Mark(other, 1).Steps
								if steps < least {
									least, which = steps, a.Name+" and "+b.Name
								}
								if steps < leastApart {
									t.Errorf("%s and %s are %.1f steps apart at %s and %s", a.Name, b.Name, steps, settings(one, a), settings(other, b))
								}
							}
						}
					}
				}
				lock.Lock()
				closest = append(closest, fmt.Sprintf("%5.1f steps: %s, %s", least, e.ID, which))
				lock.Unlock()
			})
		}
	}
}

// corners are an answer with every variation at its lowest and at its highest,
// at the lowest and the highest note.
func corners(a sheet.Answer, notes *sheet.Range) (all []synth.Sound) {
	for _, at := range []float64{0, 1} {
		s := a.Sound
		for _, v := range a.Vary {
			v.Apply(&s, at)
		}
		if notes == nil {
			all = append(all, s)
			continue
		}
		for _, note := range notes {
			s.Note = note
			all = append(all, s)
		}
	}
	return
}

func settings(s synth.Sound, a sheet.Answer) (said string) {
	said = fmt.Sprintf("note %v", s.Note)
	for _, v := range a.Vary {
		f, _ := synth.FieldByName(v.Set[0])
		said += fmt.Sprintf(", %s %v", f.Name, f.Get(&s))
	}
	return
}
