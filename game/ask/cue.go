package ask

import (
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Compared are the two sounds to hear and to see after an answer, at one note:
// what was asked, and what it was taken for or, after a right answer, the answer
// that stands after it; of a comparison its two sounds; of a limit the common sound
// and the one that differs.
func (q *Question) Compared(e *sheet.Exercise, answer int) (asked, other synth.Sound) {
	switch e.Kind {
	case sheet.Same:
		return q.Sounds[0], q.Sounds[1]
	case sheet.Limit:
		return q.Sounds[(q.Right+1)%len(q.Sounds)], q.Sounds[q.Right]
	}
	asked = q.Sounds[0]
	other = e.Answers[q.Other(answer)].Sound
	if e.Notes != nil {
		other.Note = asked.Note
	}
	return asked, other
}

// Other is the answer of a naming to compare the right one with: what was answered
// or, where that was right, the one that stands after it.
func (q *Question) Other(answer int) int {
	if answer == q.Right {
		return (q.Right + 1) % len(q.Answers)
	}
	return answer
}

// Cue is what to listen for, in English: of the right answer, or why the two
// sounds are the same or differ; nothing for a limit.
func (q *Question) Cue(e *sheet.Exercise) string {
	switch e.Kind {
	case sheet.Name:
		return e.Answers[q.Right].Cue
	case sheet.Same:
		for _, p := range e.Pairs {
			if p.Name == q.Item {
				return p.Why
			}
		}
	}
	return ""
}
