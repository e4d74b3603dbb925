package worksheet

import (
	"partialcredit/game/figure"
	"partialcredit/synth"
)

// Sizes in CSS pixels of the paper, 96 to the inch, within 180 mm. At this unit texts in pictures have
// 10 points.
const (
	unit   = 0.9
	wide   = 332 // of each of two pictures that fill a line
	high   = 160
	narrow = 240 // of each of two with a letter and something to write or to read beside them
	low    = 110 // the most of these; lower ones have fewer decibels
	least  = 92
)

// Heights of a page and of what stands on it, in the same pixels: what Letter, which is the shorter,
// leaves within its margins, and estimates on the safe side.
const (
	pageHeight    = 940
	headingHeight = 150 // of the sheet, with a small code
	textHeight    = 190 // of the title and task of an exercise and what is written under it
)

// pictures sets the trace and the partials of a sound beside each other, with a second one over it
// where other is not nil. about says what is seen.
func (m *Maker) pictures(about string, w, h int, s synth.Sound, other *synth.Sound, pencil bool) {
	o := figure.Options{Size: figure.Size{W: w, H: h, Unit: unit}, Ground: figure.White, About: about, Words: m.look, Pencil: pencil, Inset: true}
	m.later(func() (string, bool) {
		mine := figure.OfSound(s)
		var second *figure.Signal
		if other != nil {
			theirs := figure.OfSound(*other)
			second = &theirs
		}
		return figure.Trace(o, mine, second).SVG() + figure.Partials(o, mine, second).SVG(), true
	})
}

// alone fills a line with the pictures of a sound.
func (m *Maker) alone(about string, s synth.Sound, pencil bool) {
	m.put(`<div class="row">`)
	m.pictures(about, wide, high, s, nil, pencil)
	m.put("</div>\n")
}

// row is a line of pictures with a letter before and HTML beside it.
func (m *Maker) row(letter, about string, h int, s synth.Sound, other *synth.Sound, pencil bool, beside string) {
	m.put(`<div class="row">`, element("span", "letter", letter))
	m.pictures(about, narrow, h, s, other, pencil)
	m.put(`<div class="beside">`, beside, "</div></div>\n")
}

// fitting is how high each of n rows may be, so that they stand on one page with the rest of their
// exercise and what else takes room; and whether they do.
func fitting(n, taken int) (h int, fits bool) {
	h = (pageHeight-textHeight-taken)/n - 5
	return max(least, min(low, h)), h >= least
}
