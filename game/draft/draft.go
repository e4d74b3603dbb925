package draft

import (
	"encoding/json"
	"slices"

	"partialcredit/game/sheet"
)

// MostSteps is how many changes can be undone.
const MostSteps = 100

// A Draft is a sheet and how it came about. The zero value is an empty sheet.
type Draft struct {
	sheet        sheet.Sheet
	past, future []sheet.Sheet
	missing      *gap   // of the sheet as it is; nil where it is not known
	text         []byte // and its JSON
	last         string // what the last change was to; empty where another one is a step of its own
}

// New begins with a sheet, of which nothing can be undone.
func New(s sheet.Sheet) *Draft {
	s.Version = sheet.Version
	return &Draft{sheet: s}
}

// Sheet is the sheet as it is now. It must not be changed, and never changes: the next
// change makes another one.
func (d *Draft) Sheet() *sheet.Sheet {
	s := d.sheet
	return &s
}

// Change makes a change that can be undone. Changes to the same thing, one after the
// other, are one step: letters typed, a ruler drawn along. An empty name is a step of
// its own.
func (d *Draft) Change(what string, change func(s *sheet.Sheet)) {
	if what == "" || what != d.last || len(d.past) == 0 {
		d.past = append(d.past[max(0, len(d.past)-MostSteps+1):], d.sheet)
	}
	d.last, d.future, d.missing, d.text = what, nil, nil, nil
	d.sheet.Exercises = slices.Clone(d.sheet.Exercises)
	change(&d.sheet)
}

// ChangeExercise changes one exercise, and sees to it that it stays one that can be
// kept.
func (d *Draft) ChangeExercise(i int, what string, change func(e *sheet.Exercise)) {
	if i < 0 || i >= len(d.sheet.Exercises) {
		return
	}
	d.Change(what, func(s *sheet.Sheet) {
		e := copied(s.Exercises[i])
		change(&e)
		mend(&e)
		s.Exercises[i] = e
	})
}

// Pause makes the next change a step of its own.
func (d *Draft) Pause() { d.last = "" }

// CanUndo says whether there is a change to undo.
func (d *Draft) CanUndo() bool { return len(d.past) > 0 }

// CanRedo says whether a change was undone and none made since.
func (d *Draft) CanRedo() bool { return len(d.future) > 0 }

// Undo takes the last change back.
func (d *Draft) Undo() { d.step(&d.past, &d.future) }

// Redo makes the change again that was undone last.
func (d *Draft) Redo() { d.step(&d.future, &d.past) }

func (d *Draft) step(from, to *[]sheet.Sheet) {
	n := len(*from)
	if n == 0 {
		return
	}
	*to = append(*to, d.sheet)
	d.sheet, *from, d.last = (*from)[n-1], (*from)[:n-1], ""
	d.missing, d.text = nil, nil
}

// MarshalJSON writes the sheet; what was undone is not kept.
func (d *Draft) MarshalJSON() ([]byte, error) {
	if d.text == nil {
		d.text = d.sheet.JSON()
	}
	return d.text, nil
}

// UnmarshalJSON reads what MarshalJSON wrote, finished or not.
func (d *Draft) UnmarshalJSON(data []byte) error {
	var s sheet.Sheet
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	for i := range s.Exercises {
		e := &s.Exercises[i]
		if e.Kind == "" {
			e.Kind = sheet.Match
		}
		if e.Questions == 0 {
			e.Questions = sheet.DefaultQuestions
		}
		mend(e)
	}
	*d = *New(s)
	return nil
}

// copied is an exercise that shares nothing with the one it comes from.
func copied(e sheet.Exercise) sheet.Exercise {
	e.Controls = slices.Clone(e.Controls)
	for i := range e.Controls {
		e.Controls[i].Draw = pointed(e.Controls[i].Draw)
	}
	e.Quantity, e.Reference, e.Notes = pointed(e.Quantity), pointed(e.Reference), pointed(e.Notes)
	if e.Quantity != nil {
		e.Quantity.Published = pointed(e.Quantity.Published)
	}
	e.Answers, e.Pairs = slices.Clone(e.Answers), slices.Clone(e.Pairs)
	for i := range e.Answers {
		e.Answers[i].Vary = slices.Clone(e.Answers[i].Vary)
	}
	for i := range e.Pairs {
		e.Pairs[i].Vary = slices.Clone(e.Pairs[i].Vary)
	}
	return e
}

func pointed[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
