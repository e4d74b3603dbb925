package view

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// The figures are written in Go-Regular.ttf (2048 units to the em) for glyph 19,
// the 0: its advance in the table hmtx and the bounds at the head of its glyf
// entry, unpacked with Python's struct module. The bounds there are stored, not
// computed from the outline as here.
func TestTypefaceReadsTheFont(t *testing.T) {
	g, advance := regular.glyph('0')
	if got := advance * regular.em; got != 1139 {
		t.Errorf("0 is %v wide", got)
	}
	s := scaler{scale: 1}
	s.trace(regular.outline(g))
	for name, v := range map[string][2]float64{"left": {s.left, 80}, "right": {s.right, 1058}, "top": {s.top, -1517}, "bottom": {s.bottom, 37}} {
		if v[0] != v[1] {
			t.Errorf("0: %s %v, want %v", name, v[0], v[1])
		}
	}
}

// A letter with an accent is the letter and something above it.
func TestPartsAreJoined(t *testing.T) {
	e, accented := scaler{scale: 1}, scaler{scale: 1}
	plain, _ := regular.glyph('e')
	e.trace(regular.outline(plain))
	acute, _ := regular.glyph('é')
	accented.trace(regular.outline(acute))
	if math.Abs(e.left-accented.left) > 1 || math.Abs(e.bottom-accented.bottom) > 1 || accented.top >= e.top {
		t.Errorf("e %+v, é %+v", e, accented)
	}
}

func TestEveryCharacterInUseHasAGlyph(t *testing.T) {
	for _, f := range []*typeface{regular, bold} {
		for _, r := range ahead {
			if g, _ := f.glyph(r); g == 0 {
				t.Errorf("no glyph for %q", r)
			}
		}
		for _, r := range []rune{'漢', utf8.MaxRune, -1} {
			if g, _ := f.glyph(r); g != 0 {
				t.Errorf("a glyph for %q, which the font has not", r)
			}
		}
	}
}

func TestMeasure(t *testing.T) {
	m := Measure()
	if a, b := m("Hand in", 16, true), m("Hand in", 32, true); a <= 0 || math.Abs(b-2*a) > 1e-9 {
		t.Errorf("16 px: %v, 32 px: %v", a, b)
	}
	if a, b := m("mm", 16, false), m("m", 16, false); math.Abs(a-2*b) > 1e-9 {
		t.Errorf("mm %v, m %v", a, b)
	}
	if m("Hand in", 16, true) <= m("Hand in", 16, false) {
		t.Error("bold is not wider")
	}
	if got := m("just-noticeable", 16, false); got >= m("just−noticeable", 16, false) {
		t.Error("the hyphen is as wide as a minus sign")
	}
}

func TestFit(t *testing.T) {
	const text = "Which of the four is it?"
	if got := fit(text, 16, false, 1000); got != text {
		t.Errorf("shortened to %q though there is room", got)
	}
	got := fit(text, 16, false, 100)
	if !strings.HasSuffix(got, "…") || width(got, 16, false) > 100 || len(got) < 8 {
		t.Errorf("%q is %v wide", got, width(got, 16, false))
	}
}
