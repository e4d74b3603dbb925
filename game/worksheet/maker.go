package worksheet

import (
	"strings"

	"partialcredit/game/figure"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// A Maker makes a document piece by piece.
type Maker struct {
	sheet *sheet.Sheet
	draw  sheet.Drawing
	o     Options
	words *words.Language
	look  figure.Words

	drawn  map[string]*sheet.Sheet // by name
	linked string                  // the link and its code
	apart  bool                    // each exercise has a code of its own
	parts  []part
	next   int // the first that may still have to be made
}

// A part is a stretch of the document, or what will make it: make is called until it says that it is
// done.
type part struct {
	html string
	make func() (html string, done bool)
}

// New begins a document. The sheet must not change while it is made.
func New(s *sheet.Sheet, o Options) *Maker {
	m := &Maker{sheet: s, draw: s.Drawing(), o: o, drawn: map[string]*sheet.Sheet{}, words: o.Words}
	if m.words == nil {
		m.words = words.English
	}
	m.look = figure.Words{
		Yours: "1", Target: "2", Trace: m.t("Trace"), Partials: m.t("Partials"), Partial: m.t("partial"),
		Period: m.t("one period"), Point: m.words.Value("1.5")[1:2],
	}
	m.document()
	return m
}

// Step makes one picture, or marks one sound, and says whether the document is done.
func (m *Maker) Step() (done bool) {
	for m.next < len(m.parts) {
		p := &m.parts[m.next]
		if p.make == nil {
			m.next++
			continue
		}
		html, made := p.make()
		if made {
			p.html, p.make = html, nil
		}
		return false
	}
	return true
}

// Left is how many pictures and answers are still to be made, for whoever waits.
func (m *Maker) Left() (n int) {
	for i := m.next; i < len(m.parts); i++ {
		if m.parts[i].make != nil {
			n++
		}
	}
	return n
}

// Document is the document; what is not made of it yet is made now.
func (m *Maker) Document() string {
	for !m.Step() {
	}
	var all strings.Builder
	for i := range m.parts {
		all.WriteString(m.parts[i].html)
	}
	return all.String()
}

// put writes HTML.
func (m *Maker) put(html ...string) {
	m.parts = append(m.parts, part{html: strings.Join(html, "")})
}

// later has HTML made in its place when its time comes.
func (m *Maker) later(make func() (html string, done bool)) {
	m.parts = append(m.parts, part{make: make})
}

// t says a text of the program in the language of the paper.
func (m *Maker) t(format string, args ...any) string { return m.words.Say(format, args...) }

// own is a text of the sheet: in the language of the paper where the course has it, else as it is.
func (m *Maker) own(text string) string {
	if m.words.Has(text) {
		return m.words.Value(text)
	}
	return text
}
