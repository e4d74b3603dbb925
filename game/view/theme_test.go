package view

import (
	"math"
	"testing"

	"partialcredit/game"
)

// luminance and contrast are defined in WCAG 2.2 (W3C): relative luminance of
// sRGB, and (L1 + 0.05) / (L2 + 0.05).
func luminance(t tint) float64 {
	linear := func(c float32) float64 {
		if c <= 0.04045 {
			return float64(c) / 12.92
		}
		return math.Pow((float64(c)+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(t[0]) + 0.7152*linear(t[1]) + 0.0722*linear(t[2])
}

func contrast(a, b tint) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrastFormula(t *testing.T) {
	if c := contrast(rgb(0), rgb(0xFFFFFF)); math.Abs(c-21) > 1e-6 { // WCAG: ranges from 1 to 21
		t.Errorf("black on white: %v", c)
	}
	if c := contrast(rgb(0x767676), rgb(0xFFFFFF)); math.Abs(c-4.54) > 0.01 { // WCAG technique G18's known grey
		t.Errorf("#767676 on white: %v", c)
	}
}

// Success criterion 1.4.3 asks for 4.5:1 for text; the lines of the squares
// pass under texts and traces, so they count as grounds too.
func TestContrast(t *testing.T) {
	for name, th := range map[string]*theme{"paper": &paper, "blackboard": &blackboard} {
		for ink := game.Black; ink < game.Light; ink++ {
			for ground, c := range map[string]tint{"paper": th.paper, "square": th.square, "fifth": th.fifth, "button": th.face} {
				if got := contrast(th.inks[ink], c); got < 4.5 && !(ink == game.Red && ground == "fifth") {
					t.Errorf("%s: ink %d on %s has %.2f:1", name, ink, ground, got)
				}
			}
		}
		full := th.fifth // the fullest cell of a table, over a line of the paper
		for i := range full {
			full[i] += th.dense * (th.inks[game.Yours][i] - full[i])
		}
		if got := contrast(th.inks[game.Black], full); got < 4.5 {
			t.Errorf("%s: a count on a full cell has %.2f:1", name, got)
		}
		for _, ground := range []game.Ink{game.Black, game.Yours} {
			if got := contrast(th.inks[game.Light], th.inks[ground]); got < 4.5 {
				t.Errorf("%s: light on ink %d has %.2f:1", name, ground, got)
			}
		}
	}
}
