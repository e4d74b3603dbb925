package advice

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// apart is how many steps lie between two sounds. Two shapes, footages or ways to
// combine are simply different to the marking (twenty steps); which of them are easily
// taken for one another, only the sounds say.
func (a *Adviser) apart(one, other synth.Sound) float64 {
	steps, heard := a.steps(a.prepare(one), other)
	for _, f := range synth.Fields() {
		if len(f.Choices) > 0 && f.Get(&one) != f.Get(&other) {
			return heard / a.times
		}
	}
	return steps / a.times
}

// A pairing is two answers at their nearest.
type pairing struct {
	a, b       int
	one, other synth.Sound
	steps      float64
}

// naming tells which answers are most easily taken for one another.
func (a *Adviser) naming() {
	e := a.exercise
	var all []pairing
	for i := range e.Answers {
		for j := i + 1; j < len(e.Answers); j++ {
			p := pairing{a: i, b: j, steps: math.Inf(1)}
			for _, one := range corners(&e.Answers[i], e.Notes) {
				for _, other := range corners(&e.Answers[j], e.Notes) {
					if one.Note != other.Note && e.Notes != nil {
						continue
					}
					if steps := mark.Apart(one, other); steps < p.steps {
						p.one, p.other, p.steps = one, other, steps
					}
				}
			}
			all = append(all, p)
			a.pause()
		}
	}
	closest := pairing{steps: math.Inf(1)}
	for _, p := range all {
		if p.steps = a.apart(p.one, p.other); p.steps < closest.steps {
			closest = p
		}
	}
	steps := closest.steps
	one, other := e.Answers[closest.a].Name, e.Answers[closest.b].Name
	switch {
	case steps < 1:
		a.tell(Alike, -1, Mistake, words.Say("“%s” and “%s” can sound the same: at their nearest they lie %s just-noticeable steps apart.", one, other, stepped(steps)))
	case steps < 2:
		a.tell(Alike, -1, Warning, words.Say("“%s” and “%s” can hardly be told apart: at their nearest they lie %s just-noticeable steps apart.", one, other, stepped(steps)))
	default:
		a.tell(Difficulty, -1, Note, words.Say("Most easily taken for one another are “%s” and “%s”, at their nearest %s just-noticeable steps apart: %s.", one, other, stepped(steps), told(steps)))
	}
	for _, answer := range e.Answers {
		a.ends(answer.Sound, e.Notes, words.Say("“%s”", answer.Name))
	}
}

// told says how hard it is to tell two sounds apart that lie so many steps apart (design
// choice: at 7 half the marks would be gone, at 20 nearly all).
func told(steps float64) words.Message {
	switch {
	case steps < 7:
		return words.Say("hard")
	case steps < 20:
		return words.Say("of middling difficulty")
	}
	return words.Say("easy")
}

// ends tells how a sound comes out at its lowest note and, where there is nothing to
// tell of that, at its highest.
func (a *Adviser) ends(s synth.Sound, notes *sheet.Range, what words.Message) (told bool) {
	if notes == nil {
		return a.comesOut(s, what)
	}
	for _, note := range notes {
		s.Note = note
		if a.comesOut(s, words.Say("%s at note %s", what, whole(note))) {
			return true
		}
		if notes[0] == notes[1] {
			break
		}
	}
	return false
}

// corners are an answer with each of its variations at its lowest and at its
// highest, in all combinations, at the lowest and the highest note.
func corners(answer *sheet.Answer, notes *sheet.Range) []synth.Sound {
	all := []synth.Sound{answer.Sound}
	double := func(v sheet.Variation) {
		for _, s := range all {
			v.Apply(&s, 1)
			all = append(all, s)
		}
		for i := range len(all) / 2 {
			v.Apply(&all[i], 0)
		}
	}
	for _, v := range answer.Vary[:min(mostVaried, len(answer.Vary))] {
		double(v)
	}
	if notes != nil {
		double(sheet.Variation{Set: []string{"note"}, Between: *notes})
	}
	return all
}

// mostVaried is how many variations of an answer are looked at: each doubles the work.
const mostVaried = 3
