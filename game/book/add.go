package book

import "partialcredit/game/sheet"

// A Fate is what became of something that was added.
type Fate int

const (
	Taken   Fate = iota
	Double       // the same slip again: it is in the book once
	Newer        // a later slip of a learner and a sheet in the book: it counts from now on, the earlier one is kept
	Older        // an earlier one: it is kept, the later one goes on counting
	Waiting      // its sheet has not been opened
	Damaged      // kept aside
	ASheet       // no slip but a sheet, which is for the teacher to open: see [Book.Open]
)

// A Receipt says what became of something that was added.
type Receipt struct {
	Fate  Fate
	From  string
	Line  int          // where in the text it began, from 1
	Entry *Entry       // nil where it is damaged, or a sheet
	Other *Entry       // of a Newer and an Older: the one that counted before, or that counts; of a Double: the one in the book
	Sheet *sheet.Sheet // of a sheet
	Name  string       // of the learner, where it can be read
	Why   error        // of what is damaged: a sentence
}

// Add takes every slip that is in a text: a link, a file of many, a mail. A text without
// any has no receipts. From says where it comes from.
func (b *Book) Add(text, from string) []Receipt {
	var receipts []Receipt
	for _, f := range find(text) {
		receipts = append(receipts, b.add(f, from))
	}
	return receipts
}

func (b *Book) add(f found, from string) Receipt {
	switch {
	case f.sheet != nil:
		return Receipt{Fate: ASheet, From: from, Line: f.line, Sheet: f.sheet}
	case f.err != nil:
		return b.setAside(Aside{Text: f.text, From: from, Line: f.line, Why: f.err})
	}
	e := newEntry(f.slip, f.text, from, f.line)
	if known := b.known[e.identity]; known != nil {
		return Receipt{Fate: Double, From: from, Line: f.line, Entry: known, Other: known, Name: e.Slip.Name}
	}
	return b.take(e)
}

// take puts a slip into the book that is not in it.
func (b *Book) take(e *Entry) Receipt {
	if d := b.drawing(e.Slip.Sheet); d != nil {
		drawn, err := e.Slip.Drawn(d)
		if err != nil {
			return b.setAside(Aside{e.text, e.From, e.Line, e.Slip.Name, err})
		}
		e.sheet, e.drawn = d.Sheet, drawn
		b.expect(e)
	}
	if b.known == nil {
		b.known, b.learners = map[string]*Entry{}, map[string][]*Entry{}
	}
	before := b.counting(e.learner)
	b.entries = append(b.entries, e)
	b.known[e.identity] = e
	b.learners[e.learner] = append(b.learners[e.learner], e)
	b.count(e.learner)
	r := Receipt{Fate: Taken, From: e.From, Line: e.Line, Entry: e, Other: before, Name: e.Slip.Name}
	switch {
	case e.Waits():
		r.Fate = Waiting
	case before != nil && e.Counts:
		r.Fate = Newer
	case before != nil:
		r.Fate = Older
	}
	return r
}

// counting is the slip that counts of a learner for a sheet.
func (b *Book) counting(learner string) *Entry {
	for _, e := range b.learners[learner] {
		if e.Counts {
			return e
		}
	}
	return nil
}

func (b *Book) setAside(a Aside) Receipt {
	r := Receipt{Fate: Damaged, From: a.From, Line: a.Line, Name: a.Name, Why: a.Why}
	for _, other := range b.aside {
		if other.Text == a.Text && other.Why.Error() == a.Why.Error() {
			return r // it lies there already
		}
	}
	b.aside = append(b.aside, a)
	return r
}
