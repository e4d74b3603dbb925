package view

import "partialcredit/game/ui"

// Measure gives the width of text as it will be drawn.
func Measure() ui.Measure { return width }

// width is the width of a line of text set at a size.
func width(s string, size float64, isBold bool) float64 {
	f := face(isBold)
	sum := 0.0
	for _, r := range s {
		_, advance := f.glyph(r)
		sum += advance
	}
	return sum * size
}

// fit shortens a text, with an ellipsis, to what the width holds.
func fit(s string, size float64, isBold bool, room float64) string {
	if width(s, size, isBold) <= room {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n]) + "…"; width(short, size, isBold) <= room {
			return short
		}
	}
	return "…"
}
