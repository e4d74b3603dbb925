package ui

import (
	"unicode"
	"unicode/utf8"
)

// Cluster is how many bytes the first character of s takes, as a reader counts characters: a letter
// with its marks, an emoji of several parts, a syllable of jamo. These are the extended grapheme
// clusters of Unicode's UAX #29 (17.0), but for the prepended signs of a few scripts (GB9b) and for
// signs that it no longer counts as emoji or as marks.
func Cluster(s string) int {
	base, n := utf8.DecodeRuneInString(s)
	if n == len(s) || s[n] < utf8.RuneSelf && s[n] != '\n' { // ASCII continues nothing
		return n
	}
	if controls(base) {
		if base == '\r' && s[n] == '\n' {
			return n + 1
		}
		return n
	}
	linkable, linked := isConsonant(base), false
	for before := base; n < len(s); {
		r, size := utf8.DecodeRuneInString(s[n:])
		switch {
		case extends(r): // GB9, GB9a
			linkable = linkable && r != nonJoiner
			linked = linkable && (linked || links(r))
		case linked && isConsonant(r): // GB9c
			linked = false
		case before == joiner && isPicture(base) && isPicture(r): // GB11
		case isFlag(r) && isFlag(before) && n == 4: // GB12: two and no more
		case sameSyllable(before, r):
		default:
			return n
		}
		before = r
		n += size
	}
	return n
}

const joiner, nonJoiner = 0x200D, 0x200C // of no width

// extends reports whether r belongs to the character before it: marks, joiners, tones of skin, tags.
func extends(r rune) bool {
	switch {
	case r < 0x300:
		return false
	case r == joiner, r == nonJoiner, r == 0x0E33, r == 0x0EB3, // the vowels AM of Thai and Lao
		r >= 0x1F3FB && r <= 0x1F3FF, r >= 0xE0020 && r <= 0xE007F, r == 0xFF9E, r == 0xFF9F:
		return true
	}
	return unicode.IsMark(r)
}

// links reports whether r makes one of two consonants (InCB=Linker; the scripts of plane 1 are left out).
func links(r rune) bool {
	switch r {
	case 0x094D, 0x09CD, 0x0ACD, 0x0B4D, 0x0C4D, 0x0D4D, 0x1039, 0x17D2, 0x1A60, 0x1B44, 0x1BAB, 0xA9C0, 0xAAF6:
		return true
	}
	return false
}

// isConsonant holds for the letters of the scripts that link some, vowels too: no linker stands before them.
func isConsonant(r rune) bool {
	return Joins(r) && (r < 0x0D80 || r >= 0x1000) && unicode.IsLetter(r)
}

// Joins reports whether r belongs to one of the scripts from left to right whose letters touch, change
// or move with their neighbours, by the blocks of Unicode: those of South and Southeast Asia, Tibetan
// and Mongolian (and not the jamo among them).
func Joins(r rune) bool {
	return r >= 0x0900 && r <= 0x109F || r >= 0x1780 && r <= 0x1CFF || r >= 0xA800 && r <= 0xABFF && r>>5 != 0xA960>>5 || r >= 0x11000 && r <= 0x11FFF
}

// controls reports whether nothing joins r (GB4, GB5).
func controls(r rune) bool {
	return r < ' ' || r >= 0x7F && r < 0xA0 || r == 0xAD || r == 0x200B || r >= 0x200E && r <= 0x200F ||
		r >= 0x2028 && r <= 0x202E || r >= 0x2060 && r <= 0x206F || r == 0xFEFF || r >= 0xFFF0 && r <= 0xFFFB
}

func isFlag(r rune) bool { return r >= 0x1F1E6 && r <= 0x1F1FF }

// isPicture holds for all emoji that are joined to others, and for signs that never are.
func isPicture(r rune) bool {
	switch r {
	case 0xA9, 0xAE, 0x203C, 0x2049, 0x2122, 0x2139, 0x3030, 0x303D, 0x3297, 0x3299:
		return true
	}
	return r >= 0x2194 && r <= 0x2BFF || r >= 0x1F000 && r <= 0x1FAFF && !isFlag(r) && !extends(r)
}

// sameSyllable reports whether a syllable of hangul goes on (GB6 to GB8).
func sameSyllable(a, b rune) bool {
	in := func(r, lo, hi rune) bool { return r >= lo && r <= hi }
	whole := func(r rune) bool { return in(r, 0xAC00, 0xD7A3) }
	lead := func(r rune) bool { return in(r, 0x1100, 0x115F) || in(r, 0xA960, 0xA97C) }
	vowel := func(r rune) bool { return in(r, 0x1160, 0x11A7) || in(r, 0xD7B0, 0xD7C6) }
	tail := func(r rune) bool { return in(r, 0x11A8, 0x11FF) || in(r, 0xD7CB, 0xD7FB) }
	open := whole(a) && (a-0xAC00)%28 == 0
	switch {
	case lead(a):
		return lead(b) || vowel(b) || whole(b)
	case vowel(a), open:
		return vowel(b) || tail(b)
	case tail(a), whole(a):
		return tail(b)
	}
	return false
}
