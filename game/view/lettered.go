package view

import (
	"strings"

	"github.com/hajimehoshi/ebiten/v2"
)

// A letteredKey is what lettered pieces are kept by.
type letteredKey struct {
	cut       cut
	text      string
	leftwards bool
	place     int
}

// piece finds a piece of a line, or makes it. It fails where the atlas is full.
func (a *atlas) piece(c cut, p *piece, place int) (sprite, bool) {
	if p.text == "" {
		return a.sprite(glyphKey{c, p.glyph, place})
	}
	k := letteredKey{c, p.text, p.leftwards, place}
	if s, ok := a.lettered[k]; ok {
		return s, true
	}
	k.text = strings.Clone(k.text) // the line may be long
	s, ok := a.letter(k)
	if ok {
		a.lettered[k] = s
	}
	return s, ok
}

// letter has a piece lettered and puts it into the atlas. What is larger than the atlas loses its end.
func (a *atlas) letter(k letteredKey) (sprite, bool) {
	lean := 0.0
	if k.cut.slanted {
		lean = slant
	}
	drawn := letters.letterer.Draw(k.text, k.cut.em(), k.cut.bold, k.leftwards, lean, float64(k.place)/float64(k.cut.places()))
	if drawn == nil || drawn.Rect.Empty() {
		return sprite{}, true
	}
	r := drawn.Rect
	w, h := min(r.Dx(), a.side), min(r.Dy(), a.side)
	at, ok := a.place(w, h)
	if !ok {
		return sprite{}, false
	}
	s := spriteAt(at, r.Min.X, r.Min.Y)
	a.pixels = a.pixels[:0]
	for y := range h {
		a.pixels = append(a.pixels, drawn.Pix[y*drawn.Stride:][:4*w]...)
	}
	s.coloured = coloured(a.pixels)
	a.image.SubImage(at).(*ebiten.Image).WritePixels(a.pixels)
	return s, true
}

// coloured reports whether premultiplied pixels are anything but white. Browsers that guard against being
// recognised change the last bits of what is read back.
func coloured(pixels []byte) bool {
	const slack = 24
	for i := 0; i+3 < len(pixels); i += 4 {
		if least := min(pixels[i], pixels[i+1], pixels[i+2]); int(least)+slack < int(pixels[i+3]) {
			return true
		}
	}
	return false
}

// own is the tint of what has colours of its own: as dense as the ink would be.
func (t tint) own() tint { return tint{t[3], t[3], t[3], t[3]} }
