package view

import (
	_ "embed"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A typeface is a font with the widths of Latin at hand. All lengths are in
// font units, em of them to the em; there is no kerning (the Go fonts have
// none) and no shaping.
type typeface struct {
	font  *sfnt.Font
	buf   sfnt.Buffer
	units fixed.Int26_6
	em    float64
	quick [0x250]glyphWidth
}

type glyphID = sfnt.GlyphIndex

type glyphWidth struct {
	glyph   glyphID
	advance float64
}

// The Latin part of the Go fonts by Bigelow & Holmes, without instructions for
// coarse screens; their licence, that of Go itself, lies beside them, and the
// command that made them.
//
//go:generate fonts/subset.sh
var (
	//go:embed fonts/Go-Regular.ttf
	regularTTF []byte
	//go:embed fonts/Go-Bold.ttf
	boldTTF []byte

	regular = newTypeface(regularTTF)
	bold    = newTypeface(boldTTF)
)

func face(isBold bool) *typeface {
	if isBold {
		return bold
	}
	return regular
}

func newTypeface(data []byte) *typeface {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("view: the font: " + err.Error()) // it is built in
	}
	f := &typeface{font: parsed, units: fixed.I(int(parsed.UnitsPerEm())), em: float64(parsed.UnitsPerEm())}
	for r := range f.quick {
		f.quick[r] = f.search(rune(r))
	}
	for r, better := range instead {
		f.quick[r] = f.search(better)
	}
	return f
}

// The Go fonts were drawn for program texts: their hyphen is as wide as a minus
// sign, and their middle dot stands as high as an asterisk.
var instead = map[rune]rune{
	'-': '\u00AD', // soft hyphen, which has the shape of a hyphen
	'·': '\u2219', // bullet operator
}

// glyph is the glyph of a character, 0 (a box) where the font has none, and
// its width in ems.
func (f *typeface) glyph(r rune) (g glyphID, advance float64) {
	found := glyphWidth{}
	if r >= 0 && int(r) < len(f.quick) {
		found = f.quick[r]
	} else {
		found = f.search(r)
	}
	return found.glyph, found.advance
}

func (f *typeface) search(r rune) glyphWidth {
	g, err := f.font.GlyphIndex(&f.buf, r)
	if err != nil {
		return glyphWidth{}
	}
	advance, err := f.font.GlyphAdvance(&f.buf, g, f.units, font.HintingNone)
	if err != nil {
		return glyphWidth{}
	}
	return glyphWidth{g, float64(advance) / float64(f.units)}
}

// outline is the outline of a glyph in font units, y downwards; it holds until
// the next call.
func (f *typeface) outline(g glyphID) sfnt.Segments {
	segments, err := f.font.LoadGlyph(&f.buf, g, f.units, nil)
	if err != nil {
		return nil
	}
	return segments
}
