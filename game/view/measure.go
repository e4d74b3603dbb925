package view

import "partialcredit/game/ui"

// Measure gives the width of text as it will be drawn.
func Measure() ui.Measure { return width }

// width is the width of a line of text set at a size.
func width(s string, size float64, isBold bool) float64 {
	f := face(isBold)
	sum := 0.0
	for _, r := range s {
		g, advance := f.glyph(r)
		if g == 0 && letters.letterer != nil {
			return lettered(s, isBold) * size
		}
		sum += advance
	}
	return sum * size
}

// lettered is the width in ems of a line that has more than the fonts.
func lettered(s string, isBold bool) (sum float64) {
	for _, p := range letters.lay(s, isBold) {
		sum += p.advance
	}
	return sum
}

// fit shortens a text, with an ellipsis, to what the width holds.
func fit(s string, size float64, isBold bool, room float64) string {
	return ui.Measure(width).Fit(s, size, isBold, room)
}
