// Package book is the mark book: the slips of a class, and what they say about the
// learners and about the exercises. Nothing that was handed in is lost, and nothing that
// a slip says of itself is believed but its answers.
package book

import (
	"slices"

	"partialcredit/game/sheet"
)

// A Book holds slips and the sheets that they answer. The zero value is empty. It is not
// safe for concurrent use.
type Book struct {
	sheets   []sheet.Drawing
	entries  []*Entry
	aside    []Aside
	known    map[string]*Entry   // by what is on the slip
	learners map[string][]*Entry // by learner and sheet
	marking
}

// An Aside is what could not be taken.
type Aside struct {
	Text string // as it was found
	From string
	Line int    // of the text that it was found in, from 1
	Name string // of the learner, where it can be read
	Why  error  // a sentence
}

// Open has the book know a sheet, and gives what became of the slips that waited for it.
func (b *Book) Open(sh *sheet.Sheet) []Receipt {
	d := sh.Drawing()
	print := d.Fingerprint
	if b.Sheet(print) != nil {
		return nil
	}
	b.sheets = append(b.sheets, d)
	waited := b.without(func(e *Entry) bool { return e.Slip.Sheet == print })
	var receipts []Receipt
	for _, e := range waited {
		receipts = append(receipts, b.take(e))
	}
	return receipts
}

// Sheets are those that were opened, in that order.
func (b *Book) Sheets() []*sheet.Sheet {
	all := make([]*sheet.Sheet, len(b.sheets))
	for i, o := range b.sheets {
		all[i] = o.Sheet
	}
	return all
}

// Sheet is the one with a fingerprint, nil where it was not opened.
func (b *Book) Sheet(print string) *sheet.Sheet {
	if d := b.drawing(print); d != nil {
		return d.Sheet
	}
	return nil
}

func (b *Book) drawing(print string) *sheet.Drawing {
	for i := range b.sheets {
		if b.sheets[i].Fingerprint == print {
			return &b.sheets[i]
		}
	}
	return nil
}

// Entries are all slips, in the order in which they came: also those that wait for their
// sheet and those that do not count any more.
func (b *Book) Entries() []*Entry { return b.entries }

// Asides are what could not be taken, in the order in which it came.
func (b *Book) Asides() []Aside { return b.aside }

// Discard removes a slip for good. Where it counted, the one before it counts again.
func (b *Book) Discard(e *Entry) {
	b.without(func(other *Entry) bool { return other == e })
	b.count(e.learner)
}

// DiscardAside removes what was kept aside, by its place in [Book.Asides].
func (b *Book) DiscardAside(i int) { b.aside = slices.Delete(b.aside, i, i+1) }

// Close has the book forget a sheet, by its fingerprint, and all slips that answer it,
// opened or not.
func (b *Book) Close(print string) {
	b.sheets = slices.DeleteFunc(b.sheets, func(d sheet.Drawing) bool { return d.Fingerprint == print })
	b.without(func(e *Entry) bool { return e.Slip.Sheet == print })
}

// without takes entries out of the book.
func (b *Book) without(out func(*Entry) bool) (taken []*Entry) {
	var stay []*Entry
	for _, e := range b.entries {
		if !out(e) {
			stay = append(stay, e)
			continue
		}
		taken = append(taken, e)
		delete(b.known, e.identity)
		rest := slices.DeleteFunc(b.learners[e.learner], func(other *Entry) bool { return other == e })
		if b.learners[e.learner] = rest; len(rest) == 0 {
			delete(b.learners, e.learner)
		}
	}
	b.entries = stay
	return taken
}

// count has the latest slip of a learner for a sheet count, and no other.
func (b *Book) count(learner string) {
	var latest *Entry
	for _, e := range b.learners[learner] {
		e.Counts = false
		if latest == nil || e.after(latest) {
			latest = e
		}
	}
	if latest != nil {
		latest.Counts = true
	}
}
