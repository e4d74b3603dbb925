package ui

import (
	"strings"
	"unicode/utf8"
)

// breakable is how many bytes of a word stand before the first place where a line may end: between
// two characters of which one is ideographic, but not before a sign that closes or after one that
// opens (Unicode's UAX #14, classes ID, CJ, CL, EX, OP and NS of what is usual).
func breakable(word string) int {
	n := 0
	for before := rune(0); n < len(word); {
		r, _ := utf8.DecodeRuneInString(word[n:])
		if n > 0 && (ideographic(before) || ideographic(r)) && !strings.ContainsRune(opening, before) && !strings.ContainsRune(closing, r) {
			break
		}
		before = r
		n += Cluster(word[n:])
	}
	return n
}

// ideographic holds for what Chinese and Japanese write, full-width forms too. Korean has spaces.
func ideographic(r rune) bool {
	return r >= 0x2E80 && r <= 0x312F || r >= 0x3190 && r <= 0xA4CF || r >= 0xF900 && r <= 0xFAFF ||
		r >= 0xFE30 && r <= 0xFE4F || r >= 0xFF01 && r <= 0xFF9F || r >= 0x20000 && r <= 0x3FFFF
}

const (
	opening = "([{“‘（［｛｟〔〈《「『【〖〘〚〝"
	closing = ")]}”’%.,:;!?…）］｝｠〕〉》」』】〗〙〛〟、。，．：；！？・‥" +
		"々〻ー〜ヽヾゝゞぁぃぅぇぉっゃゅょゎゕゖァィゥェォッャュョヮヵヶ"
)
