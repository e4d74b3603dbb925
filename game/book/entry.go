package book

import (
	"encoding/json"
	"reflect"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// An Entry is a slip in the book.
type Entry struct {
	Slip   *slip.Slip
	From   string // where it came from: the name of a file, say
	Line   int    // of the text that it was found in, from 1
	Counts bool   // it is the latest of its learner for its sheet

	text     string                  // the fragment, as it came
	identity string                  // all that is on the slip
	learner  string                  // and its sheet
	sheet    *sheet.Sheet            // nil where it waits for it
	drawn    *sheet.Sheet            // for its learner
	outcomes map[string]slip.Outcome // by exercise, where all is marked
}

func newEntry(s *slip.Slip, text, from string, line int) *Entry {
	data, err := json.Marshal(s)
	if err != nil {
		panic("book: " + err.Error()) // texts and finite numbers
	}
	return &Entry{Slip: s, From: from, Line: line, text: text, identity: string(data), learner: s.Sheet + " " + sheet.Learner(s.Name)}
}

// Waits says that the sheet of the slip has not been opened.
func (e *Entry) Waits() bool { return e.sheet == nil }

// Fragment is the slip as it came.
func (e *Entry) Fragment() string { return e.text }

// after says whether a slip was handed in after another: by the minute, then by how
// often was tried, then by what is on it, so that the order in which they come makes no
// difference.
func (e *Entry) after(other *Entry) bool {
	if a, b := e.Slip.Minute, other.Slip.Minute; a != b {
		return a > b
	}
	if a, b := e.tries(), other.tries(); a != b {
		return a > b
	}
	return e.identity > other.identity
}

func (e *Entry) tries() (n int) {
	for i := range e.Slip.Work {
		n += e.Slip.Work[i].Tries
	}
	return n
}

// contradicts says whether two slips under one name have other first answers to one
// exercise. One learner's first answer stays; unless progress was erased between.
func (e *Entry) contradicts(other *Entry) bool {
	for i := range e.Slip.Work {
		for j := range other.Slip.Work {
			a, b := &e.Slip.Work[i], &other.Slip.Work[j]
			if a.ID == b.ID && !reflect.DeepEqual(a.First, b.First) {
				return true
			}
		}
	}
	return false
}

// When is when the slip was handed in, in UTC (ISO 8601): "2026-11-26 08:15".
func (e *Entry) When() string {
	return time.Unix(e.Slip.Minute*60, 0).UTC().Format("2006-01-02 15:04")
}
