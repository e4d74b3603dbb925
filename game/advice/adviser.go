package advice

import (
	"iter"
	"slices"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// MostMarks bounds how many sounds are rendered and measured for a match: some 30 where
// one coarse control is set, 260 where three are, and 80 more where targets are drawn. A
// comparison takes up to 12 a pair; the other kinds less than 50 in all.
const MostMarks = 600

// An Adviser works out the advice on one exercise a little at a time.
type Adviser struct {
	sheet    *sheet.Sheet
	at       int
	exercise *sheet.Exercise
	times    float64 // how large the steps of the sheet's strictness are

	found []Advice
	low   []low
	kit   spectrum.Kit
	marks int // sounds that were marked, or prepared for it
	yield func(struct{}) bool
	ended bool // stopped, or done
	next  func() (struct{}, bool)
	stop  func()
}

// New begins on an exercise of a sheet, which must not change meanwhile.
func New(s *sheet.Sheet, exercise int) *Adviser {
	a := &Adviser{sheet: s, at: exercise, exercise: &s.Exercises[exercise], times: s.Strictness.Times()}
	a.next, a.stop = iter.Pull(func(yield func(struct{}) bool) {
		a.yield = yield
		a.work()
	})
	return a
}

// Step goes on until so many sounds more have been rendered and measured, some 10 ms
// each and 30 ms in a browser, and says whether all is done.
func (a *Adviser) Step(budget int) (done bool) {
	for range budget {
		if _, more := a.next(); !more {
			a.ended = true
			return true
		}
	}
	return a.ended
}

// Stop lets go of an adviser that is no longer wanted before it is done.
func (a *Adviser) Stop() {
	a.ended = true
	a.stop()
}

// Found is the advice so far, what matters most first.
func (a *Adviser) Found() (found []Advice) {
	for w := Mistake; w >= Note; w-- {
		for _, f := range a.found {
			if f.Weight == w {
				found = append(found, f)
			}
		}
	}
	return found
}

// Marks is how many sounds have been rendered and measured.
func (a *Adviser) Marks() int { return a.marks }

// breathe counts a rendered sound and lets the one who asked go on with other things.
func (a *Adviser) breathe() {
	a.marks++
	a.pause()
}

func (a *Adviser) pause() {
	if !a.ended && !a.yield(struct{}{}) {
		a.ended = true
	}
}

// prepare is [mark.Measure]. After a stop nothing is worth anything.
func (a *Adviser) prepare(target synth.Sound) *mark.Reference {
	if a.ended {
		return nil
	}
	defer a.breathe()
	return mark.Measure(target)
}

// steps counts those between a sound and a reference, as the marking does and as the
// sounds alone say.
func (a *Adviser) steps(r *mark.Reference, yours synth.Sound) (steps, heard float64) {
	if a.ended {
		return 0, 0
	}
	defer a.breathe()
	return r.Count(yours)
}

func (a *Adviser) tell(rule Rule, control int, weight Weight, text words.Message) *Advice {
	if a.ended {
		return &Advice{}
	}
	a.found = append(a.found, Advice{Rule: rule, Exercise: a.at, Control: control, Weight: weight, Text: text})
	return &a.found[len(a.found)-1]
}

// told says that a rule has been told of.
func (a *Adviser) told(rule Rule) bool {
	return slices.ContainsFunc(a.found, func(f Advice) bool { return f.Rule == rule })
}

func (a *Adviser) work() {
	switch a.exercise.Kind {
	case sheet.Match:
		a.match()
	case sheet.Show:
		a.show()
	case sheet.Name:
		a.naming()
	case sheet.Same:
		a.comparing()
	case sheet.Limit:
		a.limit()
	}
	a.tellLow()
}
