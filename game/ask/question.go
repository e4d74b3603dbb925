package ask

import (
	"partialcredit/game/chance"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// A Question is put once. Its sounds are heard in order, the lead first.
type Question struct {
	Lead    *synth.Sound // a reference to compare with; none where nil
	Sounds  []synth.Sound
	Louder  []float64 // decibels by which each sound is louder than all are alike; for the lead 0
	Answers []string  // what can be answered, in English
	Right   int       // which answer is
	Item    string    // what it asks after: an answer, a pair; empty for a limit
	Value   float64   // of a limit: the quantity by which one of the sounds differs
}

// The answers to a comparison and to a limit.
var (
	Comparison = []string{"The same", "Different"}
	Intervals  = []string{"First", "Second", "Third"}
)

// Rove is by how many decibels at most sounds are made quieter at random, so that
// loudness gives nothing away. Studies of pitch roved by 6 dB either way (hearing.md of the
// project's references, 1.2).
const Rove = 6

// naming asks for the item-th answer.
func naming(e *sheet.Exercise, item int, s *chance.Source) Question {
	a := e.Answers[item]
	q := Question{Right: item, Item: a.Name}
	for _, other := range e.Answers {
		q.Answers = append(q.Answers, other.Name)
	}
	sound := a.Sound
	for i := range a.Vary {
		a.Vary[i].Apply(&sound, s.Part())
	}
	note(e, s, &sound)
	q.put(sound, s)
	if e.Reference != nil {
		lead := *e.Reference
		if e.Notes != nil {
			lead.Note = sound.Note
		}
		q.Lead = &lead
	}
	return q
}

// comparing asks whether the sounds of the item-th pair are the same.
func comparing(e *sheet.Exercise, item int, s *chance.Source) Question {
	p := e.Pairs[item]
	q := Question{Answers: Comparison, Right: 1, Item: p.Name}
	if p.Same {
		q.Right = 0
	}
	one, other := p.One, p.Other
	for i := range p.Vary {
		at := s.Part()
		p.Vary[i].Apply(&one, at)
		p.Vary[i].Apply(&other, at)
	}
	note(e, s, &one, &other)
	if s.Below(2) == 1 {
		one, other = other, one
	}
	q.put(one, s)
	q.put(other, s)
	return q
}

// limiting asks which of three sounds differs by v.
func limiting(e *sheet.Exercise, v float64, s *chance.Source) Question {
	q := Question{Answers: Intervals, Right: practice.Different(s.Part()), Value: v}
	same, different := e.Target, e.Target
	e.Quantity.Apply(&different, v)
	note(e, s, &same, &different)
	for i := range q.Answers {
		sound := same
		if i == q.Right {
			sound = different
		}
		if !e.Quantity.IsLevel() {
			q.put(sound, s)
			continue
		}
		louder := 0.0
		if i == q.Right {
			louder = v
		}
		q.Sounds, q.Louder = append(q.Sounds, sound), append(q.Louder, louder)
	}
	return q
}

// put adds a sound at a level of its own.
func (q *Question) put(sound synth.Sound, s *chance.Source) {
	q.Sounds = append(q.Sounds, sound)
	q.Louder = append(q.Louder, -Rove*s.Part())
}

// note gives the sounds of one question one note out of those of the exercise. A
// pair that has notes of its own keeps what lies between them.
func note(e *sheet.Exercise, s *chance.Source, sounds ...*synth.Sound) {
	if e.Notes == nil {
		return
	}
	low, high := int(e.Notes[0]), int(e.Notes[1])
	by := float64(low+s.Below(high-low+1)) - sounds[0].Note
	f, _ := synth.FieldByName("note")
	for _, sound := range sounds {
		sound.Note = f.Clamp(sound.Note + by)
	}
}
