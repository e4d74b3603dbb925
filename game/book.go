package game

import (
	"encoding/json"
	"time"

	"partialcredit/game/book"
	"partialcredit/game/ui"
)

// markBook is the mark book as it lies open. What is kept of it is in the cabinet; marks
// are made anew.
type markBook struct {
	book  *book.Book // nil until somebody looks into it
	stale bool       // it is not in the cabinet as it is

	leaf    int
	print   string // the fingerprint of the sheet that is looked at
	view    book.View
	column  int         // the first exercise that the class is shown with
	learner *book.Entry // whose row was tapped; nil where the class is shown
	aside   int         // which of what is kept aside was tapped
	asks    string      // what the question before something is removed is about

	pasted  string   // into the field
	news    []string // what became of the last slips, the newest first
	scanned int      // codes since the camera went on
	code    string   // the last of them

	table *book.Table   // of the sheet; nil where it must be made anew
	drawn time.Duration // when it was made
}

// The leaves of the mark book.
const (
	leafCollect = iota
	leafClass
	leafItems
	leafConfused
	leafFindings
	leafAside
	leaves
)

// openBook gives the mark book, read from the cabinet the first time.
func (g *Game) openBook() *book.Book {
	m := &g.marks
	if m.book != nil {
		return m.book
	}
	m.book = &book.Book{}
	if c := &g.cabinet; len(c.Book) > 0 {
		if err := json.Unmarshal(c.Book, m.book); err != nil {
			m.book, c.Lost, m.stale = &book.Book{}, c.Book, true
			g.Tell("The mark book that was kept on this device could not be read. It is set aside, not erased.")
			g.file()
		}
	}
	if len(m.book.Entries()) > 0 {
		m.leaf = leafClass
	}
	if since := g.openKnown(); len(since) > 0 {
		g.tellNews(g.became(since))
	}
	return m.book
}

// booked sees to it that what is in the book is kept and seen.
func (g *Game) booked() {
	m := &g.marks
	m.stale, m.table, g.dirty = true, nil, true
	g.file()
}

// shelve puts the book into the cabinet as it is.
func (g *Game) shelve() {
	m := &g.marks
	if !m.stale || m.book == nil {
		return
	}
	data, err := json.Marshal(m.book)
	if err != nil {
		panic("game: the mark book: " + err.Error()) // texts
	}
	g.cabinet.Book, m.stale = data, false
}

// redrawn is how often the marks are drawn anew while they are made (design choice).
const redrawn = 500 * time.Millisecond

// toMark says that marks are still to be made for what is looked at.
func (g *Game) toMark() bool {
	return g.page == bookPage && g.marks.book != nil && g.marks.book.Left() > 0
}

// markSlips goes on with the marks by one sound.
func (g *Game) markSlips() {
	if !g.toMark() || g.playing.what != silence || g.in.Heard.Item >= 0 {
		return
	}
	m := &g.marks
	if more := m.book.Step(); !more || g.in.Now-m.drawn > redrawn {
		m.table, g.dirty = nil, true
	}
}

// bookTable is what the class did with the sheet that is looked at; nil where there is
// no slip for any.
func (g *Game) bookTable() *book.Table {
	m := &g.marks
	b := g.openBook()
	prints := g.bookPrints()
	if len(prints) == 0 {
		m.table = nil
		return nil
	}
	at := g.printAt(prints)
	if m.table == nil || m.print != prints[at] {
		m.print, m.table, m.drawn = prints[at], b.Table(prints[at]), g.in.Now
	}
	return m.table
}

// bookPrints are the sheets, by their fingerprints, that there are slips for.
func (g *Game) bookPrints() (prints []string) {
	seen := map[string]bool{}
	for _, e := range g.openBook().Entries() {
		if print := e.Slip.Sheet; !e.Waits() && !seen[print] {
			seen[print] = true
			prints = append(prints, print)
		}
	}
	return prints
}

// printAt is the place of the sheet that is looked at; the first where it is none.
func (g *Game) printAt(prints []string) int {
	for i, print := range prints {
		if print == g.marks.print {
			return i
		}
	}
	return 0
}

// bookRow is the row of the learner that was tapped; nil where the class is shown.
func (g *Game) bookRow(t *book.Table) *book.Row {
	for i := range t.Rows {
		if t.Rows[i].Entry == g.marks.learner {
			return &t.Rows[i]
		}
	}
	return nil
}

// actOnBook is for the mark book.
func (g *Game) actOnBook(name string, n int, a ui.Action) bool {
	if g.page != bookPage {
		return false
	}
	m := &g.marks
	switch name {
	case "leaf":
		m.leaf, m.learner, g.part = max(0, min(leaves-1, n)), nil, 0
		g.stopScan()
	case "learner":
		if t := g.bookTable(); t != nil {
			if rows := t.View(m.view); n >= 0 && n < len(rows) {
				m.learner, g.part = rows[n].Entry, 0
			}
		}
	case "class":
		m.learner, g.part = nil, 0
	case "sort":
		by := book.Column(max(int(book.ByName), min(int(book.ByTime), n)))
		m.view.Down = by == m.view.By && !m.view.Down || by != m.view.By && by == book.ByMarks
		m.view.By, g.part = by, 0
		if t := g.bookTable(); t != nil {
			g.say = g.sortedText(len(t.View(m.view)), len(t.Rows))
		}
	case "columns":
		m.column = n
	case "find":
		if a.Typed {
			m.view.Find, g.part = a.Text, 0
		}
	case "other sheet":
		if prints := g.bookPrints(); len(prints) > 0 {
			m.print = prints[(g.printAt(prints)+1)%len(prints)]
			m.table, m.learner, m.column, g.part = nil, nil, 0, 0
		}
	default:
		return g.actOnCollecting(name, a) || g.actOnKept(name, n)
	}
	g.dirty = true
	return true
}
