package sheet

import (
	"fmt"
	"slices"
	"strings"

	"partialcredit/synth"
)

// A Kind is a way to find out, or to show, whether someone hears a thing.
type Kind string

// The kinds; an exercise that names none is a match.
const (
	Match Kind = "match" // set the controls until the sound is like the target
	Name  Kind = "name"  // say which of the answers sounds
	Same  Kind = "same"  // say whether two sounds are the same to the ear
	Limit Kind = "limit" // find the smallest difference that is heard
	Show  Kind = "show"  // hear it, see it, sweep it: a demonstration, without marks
)

// An Exercise asks the learner for one thing. Which of the fields it has depends
// on its kind.
type Exercise struct {
	ID    string `json:"id"`    // short and unique in the course; progress is kept under it
	Kind  Kind   `json:"kind"`  // a match where it is left out
	Title string `json:"title"` // a question
	Task  string `json:"task"`  // what to listen for, or what to do
	Teach string `json:"teach"` // what to know, shown afterwards

	// Of a match, a limit and a demonstration.
	Target   synth.Sound `json:"target"`   // what to match, what differs from it, what to show
	Controls []Control   `json:"controls"` // of a match and a demonstration: what the learner sets, 1 to [MaxControls]; the learner starts from the target with every control at its start
	Quantity *Quantity   `json:"quantity"` // of a limit

	// Of a naming and a comparison.
	Answers   []Answer     `json:"answers"`   // of a naming, [LeastAnswers] to [MostAnswers]
	Reference *synth.Sound `json:"reference"` // of a naming: heard before each sound, at the same note; none where left out
	Pairs     []Pair       `json:"pairs"`     // of a comparison
	Notes     *Range       `json:"notes"`     // each question has a note of its own out of these; the sounds' own where left out
	Questions int          `json:"questions"` // in one run, 4 to 40; [DefaultQuestions] where left out
}

// MaxControls is the most an exercise lets a learner set.
const MaxControls = 4

// DefaultQuestions is how many questions a naming or a comparison asks where it
// says nothing: with four answers, 7 right are then beyond guessing (hearing.md
// of the project's references, 3).
const DefaultQuestions = 12

// Bounds of the number of questions: fewer say nothing, more tire.
const (
	leastQuestions = 4
	mostQuestions  = 40
)

// A Range is two values, the lower first.
type Range [2]float64

// Start returns the sound the learner starts from.
func (e *Exercise) Start() synth.Sound {
	s := e.Target
	for i := range e.Controls {
		e.Controls[i].Set(&s, e.Controls[i].Start)
	}
	return s
}

func (e *Exercise) check() error {
	for _, f := range []struct{ name, value string }{{"id", e.ID}, {"title", e.Title}, {"task", e.Task}, {"teach", e.Teach}} {
		if strings.TrimSpace(f.value) == "" {
			return fmt.Errorf("%s is missing", f.name)
		}
	}
	if e.Kind == "" {
		e.Kind = Match
	}
	if e.Questions == 0 {
		e.Questions = DefaultQuestions
	}
	if e.Questions < leastQuestions || e.Questions > mostQuestions {
		return fmt.Errorf("questions is %d; it must be %d to %d", e.Questions, leastQuestions, mostQuestions)
	}
	if err := e.checkNotes(); err != nil {
		return err
	}
	switch e.Kind {
	case Match, Show:
		return e.checkControls()
	case Name:
		return e.checkAnswers()
	case Same:
		return e.checkPairs()
	case Limit:
		return e.checkLimit()
	}
	return fmt.Errorf("kind is %q; it must be match, name, same, limit or show", e.Kind)
}

func (e *Exercise) checkNotes() error {
	if e.Notes == nil {
		return nil
	}
	f, _ := synth.FieldByName("note")
	for _, v := range e.Notes {
		if err := f.Check(v); err != nil {
			return fmt.Errorf("notes: %w", err)
		}
	}
	if e.Notes[0] > e.Notes[1] {
		return fmt.Errorf("notes: the lower note must come first")
	}
	return nil
}

func (e *Exercise) checkControls() error {
	if e.Target.Version == 0 {
		return fmt.Errorf("target is missing")
	}
	if n := len(e.Controls); n < 1 || n > MaxControls {
		return fmt.Errorf("it has %d controls; it must have 1 to %d", n, MaxControls)
	}
	var all []string
	for i := range e.Controls {
		c := &e.Controls[i]
		target := c.Get(&e.Target)
		if target < c.Min || target > c.Max {
			return fmt.Errorf("control %s: the target %v lies outside its range, %v to %v", c.Fields[0], target, c.Min, c.Max)
		}
		for _, name := range c.Fields {
			if slices.Contains(all, name) {
				return fmt.Errorf("two controls set %s", name)
			}
			all = append(all, name)
		}
	}
	return nil
}
