// Package advice tells a teacher what a sheet will be like to work: what of it
// cannot be heard, can be answered in more ways than one, or comes out badly on
// small loudspeakers. All of it is computed from rendered sounds and from the
// marking itself, with the strictness of the sheet; nothing is guessed.
package advice

import (
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// An Advice is one thing to know about an exercise.
type Advice struct {
	Rule     Rule
	Exercise int    // its place in the sheet, from 0
	Control  int    // the place of the control that it is about; -1 where it is about none alone
	Weight   Weight // how much it matters
	Text     words.Message
	Settings []float64 // of another right answer: the values of all controls, to be heard and seen
}

// Say is the advice in a language: one or two sentences.
func (a Advice) Say(l *words.Language) string { return l.In(a.Text) }

// A Rule says what an advice is about.
type Rule string

// The rules.
const (
	Unheard    Rule = "unheard"    // a control does nothing that is heard
	Another    Rule = "another"    // another setting earns nearly full marks too
	Met        Rule = "met"        // the start is the target, or nearly
	Rises      Rule = "rises"      // marks rise on the way away from the target
	Difficulty Rule = "difficulty" // how hard it will be
	Alike      Rule = "alike"      // answers or sounds that cannot be told apart
	Told       Rule = "told"       // sounds that are said to be the same and are not
	Threshold  Rule = "threshold"  // the range of a limit does not fit what is heard
	Low        Rule = "low"        // too low for small loudspeakers
	High       Rule = "high"       // too high to be heard well
	Loud       Rule = "loud"       // too loud for the limit of the output, so that it comes out softer
	Silent     Rule = "silent"     // nothing is heard
)

// A Weight says how much an advice matters.
type Weight int

// The weights.
const (
	Note    Weight = iota // good to know
	Warning               // probably not what was meant
	Mistake               // it cannot be worked as it stands
)

var weights = []string{"note", "warning", "mistake"}

// String is the weight in English.
func (w Weight) String() string { return weights[w] }

// MarshalText writes the weight.
func (w Weight) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// Advise gives all the advice on one exercise of a sheet. It takes seconds: where a
// frame waits, use an [Adviser].
func Advise(s *sheet.Sheet, exercise int) []Advice {
	a := New(s, exercise)
	for !a.Step(1) {
	}
	return a.Found()
}
