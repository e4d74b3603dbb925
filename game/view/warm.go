package view

// ahead are the characters that texts are made of: ASCII and the signs of this
// sheet's language and units.
const ahead = "0123456789 etaoinsrhldcumfpgwybvkxjqzETAOINSRHLDCUMFPGWYBVKXJQZ.,:;!?%'\"()+-*/=<>_&@#[]{}|~^`\\$" +
	"−×·–—’‘“”…°→′″½¼¾≈±"

const glyphsATick = 20 // a millisecond or so

// warm makes a few glyphs before they are first needed, in the sizes in use,
// so that a text that changes does not stutter. It reports whether it made any.
func (p *painter) warm() bool {
	return p.canvas.atlas.warm(glyphsATick)
}

// A warming is how far the characters of one cut have been made.
type warming struct {
	cut  cut
	next int // into runesAhead
}

var runesAhead = []rune(ahead)

// warm makes up to n glyphs. It stops for good when the atlas is three
// quarters full: what is needed then makes its own way.
func (a *atlas) warm(n int) bool {
	before := n
	for n > 0 && len(a.warming) > 0 && 4*(a.y+a.shelf) < 3*a.side {
		w := &a.warming[0]
		if w.next >= len(runesAhead)*w.cut.places() {
			a.warming = a.warming[1:]
			continue
		}
		places := w.cut.places()
		g, _ := face(w.cut.bold).glyph(runesAhead[w.next/places])
		key := glyphKey{w.cut, g, w.next % places}
		w.next++
		if _, ok := a.sprites[key]; !ok {
			a.sprite(key)
			n--
		}
	}
	return n < before
}

// use notes that a cut is in use.
func (a *atlas) use(c cut) {
	if a.used[c] {
		return
	}
	a.used[c] = true
	a.warming = append(a.warming, warming{cut: c})
}
