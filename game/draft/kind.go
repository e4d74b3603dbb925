package draft

import (
	"slices"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Kinds are those of an exercise in the order in which they are offered.
var Kinds = []sheet.Kind{sheet.Match, sheet.Name, sheet.Same, sheet.Limit, sheet.Show}

// Make is an exercise of a sound, without texts.
func Make(k sheet.Kind, s synth.Sound) sheet.Exercise {
	e := sheet.Exercise{Kind: k, Questions: sheet.DefaultQuestions, Target: s}
	fill(&e)
	return e
}

// fill gives an exercise what its kind needs, as far as it follows from the target.
func fill(e *sheet.Exercise) {
	switch e.Kind {
	case sheet.Match, sheet.Show:
		if len(e.Controls) == 0 {
			e.Controls = []sheet.Control{Control(told(e.Target), e.Target)}
		}
	case sheet.Limit:
		if e.Quantity == nil {
			fields := Measured(e.Target)
			e.Quantity = Quantity(fields[0], e.Target)
			if f := told(e.Target); slices.ContainsFunc(fields, func(g *synth.Field) bool { return g != nil && g.Name == f.Name }) {
				e.Quantity = Quantity(f, e.Target)
			}
		}
	case sheet.Name:
		if len(e.Answers) == 0 {
			e.Answers = []sheet.Answer{{Sound: short(e.Target)}}
		}
	}
}

// mostAsked is how many seconds a sound of a question lasts at the most where it comes
// from the bench, so that a run does not tire (design choice, the course's own bound).
const mostAsked = 4

func short(s synth.Sound) synth.Sound {
	s.Seconds = min(s.Seconds, mostAsked)
	return s
}

// SetKind makes it an exercise of another kind, of the same sound. What the new kind
// has no use for goes.
func SetKind(e *sheet.Exercise, k sheet.Kind) {
	if e.Kind == k {
		return
	}
	s := Sound(e)
	controlled := func(k sheet.Kind) bool { return k == sheet.Match || k == sheet.Show }
	other := sheet.Exercise{ID: e.ID, Kind: k, Title: e.Title, Task: e.Task, Teach: e.Teach, Target: s, Questions: e.Questions}
	if controlled(e.Kind) && controlled(k) {
		other.Controls = e.Controls
	}
	if !controlled(k) {
		other.Notes = e.Notes
	}
	fill(&other)
	*e = other
}

// Sound is the sound that an exercise is about.
func Sound(e *sheet.Exercise) synth.Sound {
	if e.Target.Version == 0 {
		switch {
		case len(e.Answers) > 0:
			return e.Answers[0].Sound
		case len(e.Pairs) > 0:
			return e.Pairs[0].One
		}
		return synth.Default()
	}
	return e.Target
}
