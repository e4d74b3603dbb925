package view

import (
	"encoding/binary"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// A typeface reads the outlines and widths of a TrueType font (OpenType 1.9,
// tables cmap format 4, glyf, head, hhea, hmtx, loca). It reads what the Go
// fonts need and no more: no hints, no kerning (they have none), no shaping.
// golang.org/x/image/font/sfnt reads more, needs golang.org/x/text as well, and
// with the fonts adds 0.19 MB to the download; all of this package adds 0.17 MB.
type typeface struct {
	data             []byte
	glyf, loca, hmtx []byte
	cmap             []byte // the subtable of format 4
	longLoca         bool
	metrics          int // how many glyphs have a width of their own
	em               float64
	quick            [0x250]glyphID // Latin at hand
}

type glyphID uint16

// The Go fonts by Bigelow & Holmes; their licence, that of Go itself, lies
// beside this file.
var (
	regular = newTypeface(goregular.TTF)
	bold    = newTypeface(gobold.TTF)
)

func face(isBold bool) *typeface {
	if isBold {
		return bold
	}
	return regular
}

func u16(b []byte, at int) int { return int(binary.BigEndian.Uint16(b[at:])) }
func i16(b []byte, at int) int { return int(int16(binary.BigEndian.Uint16(b[at:]))) }
func u32(b []byte, at int) int { return int(binary.BigEndian.Uint32(b[at:])) }

func newTypeface(data []byte) *typeface {
	f := &typeface{data: data}
	table := func(tag string) []byte {
		for i := range u16(data, 4) {
			if at := 12 + 16*i; string(data[at:at+4]) == tag {
				return data[u32(data, at+8):][:u32(data, at+12)]
			}
		}
		panic("view: the font has no table " + tag)
	}
	f.glyf, f.loca, f.hmtx = table("glyf"), table("loca"), table("hmtx")
	head, cmap := table("head"), table("cmap")
	f.em = float64(u16(head, 18))
	f.longLoca = u16(head, 50) == 1
	f.metrics = u16(table("hhea"), 34)
	for i := range u16(cmap, 2) {
		if sub := cmap[u32(cmap, 8+8*i):]; u16(sub, 0) == 4 {
			f.cmap = sub
		}
	}
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

// glyph is the glyph of a character, 0 (a box) where the font has none.
func (f *typeface) glyph(r rune) glyphID {
	if r >= 0 && int(r) < len(f.quick) {
		return f.quick[r]
	}
	return f.search(r)
}

func (f *typeface) search(r rune) glyphID {
	if r < 0 || r > 0xFFFF {
		return 0
	}
	n := u16(f.cmap, 6) / 2 // segments
	ends, starts, deltas, offsets := 14, 16+2*n, 16+4*n, 16+6*n
	for i := range n {
		if int(r) > u16(f.cmap, ends+2*i) {
			continue
		}
		start := u16(f.cmap, starts+2*i)
		if int(r) < start {
			return 0
		}
		delta := u16(f.cmap, deltas+2*i)
		at := offsets + 2*i
		offset := u16(f.cmap, at)
		if offset == 0 {
			return glyphID(uint16(int(r) + delta))
		}
		id := u16(f.cmap, at+offset+2*(int(r)-start))
		if id == 0 {
			return 0
		}
		return glyphID(uint16(id + delta))
	}
	return 0
}

// advance is the width of a glyph in ems.
func (f *typeface) advance(g glyphID) float64 {
	return float64(u16(f.hmtx, 4*min(int(g), f.metrics-1))) / f.em
}

// outline is the part of the table glyf that describes a glyph.
func (f *typeface) outline(g glyphID) []byte {
	if f.longLoca {
		return f.glyf[u32(f.loca, 4*int(g)):u32(f.loca, 4*int(g)+4)]
	}
	return f.glyf[2*u16(f.loca, 2*int(g)) : 2*u16(f.loca, 2*int(g)+2)]
}
