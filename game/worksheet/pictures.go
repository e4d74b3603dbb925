package worksheet

import (
	"partialcredit/game/figure"
	"partialcredit/synth"
)

// Sizes in CSS pixels of the paper, 96 to the inch: two pictures and a letter fit beside each other
// within 180 mm. At this unit texts in pictures have 10 points.
const (
	wide = 324
	high = 160 // of a picture that stands alone
	unit = 0.9
)

// pictures sets the trace and the partials of a sound beside each other, and what stands before them.
// about says what is seen; h is how high they are.
func (m *Maker) pictures(before, about string, h int, s synth.Sound, other *synth.Sound, pencil bool) {
	o := figure.Options{Size: figure.Size{W: wide, H: h, Unit: unit}, Ground: figure.White, About: about, Words: m.look, Pencil: pencil}
	m.put(`<div class="row">`, before)
	m.later(func() (string, bool) {
		mine := figure.OfSound(s)
		var second *figure.Signal
		if other != nil {
			theirs := figure.OfSound(*other)
			second = &theirs
		}
		return figure.Trace(o, mine, second).SVG() + figure.Partials(o, mine, second).SVG(), true
	})
	m.put("</div>\n")
}

// fitting is how high each of n rows of pictures may be to stand on one page of Letter or A4 with the
// rest of an exercise, where each takes extra besides; and whether they do.
func fitting(n, extra int) (h int, fits bool) {
	const page, rest, least = 920, 190, 96
	h = (page-rest)/n - extra
	return max(least, min(130, h)), h >= least
}
