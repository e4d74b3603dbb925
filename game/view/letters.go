package view

import (
	"image"
	"slices"
	"strings"
	"unicode/utf8"

	"partialcredit/game/ui"
)

// A Letterer letters what the built-in fonts lack; the browser is one. Text is one word or less;
// leftwards, it is set from right to left.
type Letterer interface {
	// Advance is the width of a text in ems.
	Advance(text string, bold, leftwards bool) float64
	// Draw letters a text in white on nothing, or in its own colours (premultiplied). Its baseline
	// begins at 0, 0, moved to the right by shift; lengths are pixels of the device. slant is x for each
	// y. It is nil where there is nothing to see.
	Draw(text string, em float64, bold, leftwards bool, slant, shift float64) *image.RGBA
}

// SetLetterer has texts lettered from now on, before anything is measured. Without it, what the fonts
// lack is a box.
func SetLetterer(l Letterer) { letters = lettering{letterer: l, advances: map[advanceKey]float64{}} }

// A piece of a line is set at once: a glyph of the fonts, or text that is lettered.
type piece struct {
	text      string // lettered, where there is any
	leftwards bool
	glyph     glyphID
	advance   float64 // ems
}

// A lettering cuts lines into pieces. What the letterer says of widths is kept, so that it is asked
// once; the list is the same for every line.
type lettering struct {
	letterer Letterer
	advances map[advanceKey]float64
	pieces   []piece
}

type advanceKey struct {
	text            string
	bold, leftwards bool
}

var letters lettering

const (
	mostAdvances = 4096 // kept: a class's names and a teacher's texts, letter by letter (design choice)
	mostTogether = 24   // characters in a piece, so that it has room in the atlas (design choice)
)

// lay cuts a line into pieces, in their order from left to right. They hold until the next call.
func (l *lettering) lay(s string, isBold bool) []piece {
	l.pieces = l.pieces[:0]
	f := face(isBold)
	if l.letterer == nil {
		for _, r := range s {
			g, advance := f.glyph(r)
			l.pieces = append(l.pieces, piece{glyph: g, advance: advance})
		}
		return l.pieces
	}
	if leftwardsAll(s) {
		l.layLeftwards(s, f, isBold)
		return l.pieces
	}
	for len(s) > 0 {
		n := 0
		if r, _ := utf8.DecodeRuneInString(s); isLeftwards(r) {
			n = leftwardsRun(s)
			l.layLeftwards(s[:n], f, isBold)
		} else {
			n = together(s)
			l.add(s[:n], f, isBold, false)
		}
		s = s[n:]
	}
	return l.pieces
}

// layLeftwards adds a run that reads from right to left, word by word.
func (l *lettering) layLeftwards(s string, f *typeface, isBold bool) {
	from := len(l.pieces)
	for len(s) > 0 {
		n := leftwardsWord(s)
		l.add(s[:n], f, isBold, s[:n] != " ")
		s = s[n:]
	}
	slices.Reverse(l.pieces[from:])
}

// add adds a piece: a glyph where the font has one for all of it.
func (l *lettering) add(s string, f *typeface, isBold, left bool) {
	if r, n := utf8.DecodeRuneInString(s); n == len(s) && !left {
		if g, advance := f.glyph(r); g != 0 {
			l.pieces = append(l.pieces, piece{glyph: g, advance: advance})
			return
		}
	}
	key := advanceKey{s, isBold, left}
	advance, known := l.advances[key]
	if !known {
		if len(l.advances) >= mostAdvances {
			clear(l.advances)
		}
		key.text = strings.Clone(s)
		advance = l.letterer.Advance(key.text, isBold, left)
		l.advances[key] = advance
	}
	l.pieces = append(l.pieces, piece{text: s, leftwards: left, advance: advance})
}

// together is how many bytes at the beginning of s are set as one: a character, or as much of a word as
// hangs together.
func together(s string) (n int) {
	for range mostTogether {
		n += ui.Cluster(s[n:])
		if n == len(s) || !joins(s) || !joins(s[n:]) {
			break
		}
	}
	return n
}

func joins(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return ui.Joins(r)
}

// fine reports whether a piece needs even spacing as letters of the fonts do: a single one of an alphabet.
func (p *piece) fine() bool {
	r, n := utf8.DecodeRuneInString(p.text)
	return p.text == "" || n == len(p.text) && (r < 0x590 || r>>9 == 0x1E00>>9) // Greek, Cyrillic, Armenian, Latin
}
