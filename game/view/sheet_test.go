package view

import (
	"testing"

	"partialcredit/game/sheet"
)

// game's test that everything fits takes characters to be 0.56 em wide. No
// text of the built-in sheet may be wider in the font that is drawn.
func TestTextsAreNoWiderThanTheLayoutTestTakesThemToBe(t *testing.T) {
	for _, e := range sheet.Matches().Exercises {
		for _, text := range []string{e.Title, e.Task, e.Teach} {
			for _, isBold := range []bool{false, true} {
				if w, most := width(text, 1, isBold), 0.56*float64(len([]rune(text))); w > most {
					t.Errorf("%q, bold %v: %.1f em, at most %.1f", text, isBold, w, most)
				}
			}
		}
	}
}
