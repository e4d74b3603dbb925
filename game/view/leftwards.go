package view

import (
	"unicode"
	"unicode/utf8"

	"partialcredit/game/ui"
)

// What reads from right to left stands so within lines that read from left to right, by Unicode's
// UAX #9 with two exceptions. A number belongs to the words before it only where nothing but spaces
// parts them, as if every name had been put into the app's sentences as an isolate. And a line that
// has no letters but such, and does not begin with a number, reads from right to left as a whole.

// isLeftwards reports whether r is of a script that reads from right to left: the blocks that
// Unicode has set aside for them (DerivedBidiClass.txt, R and AL), with their marks and numbers.
func isLeftwards(r rune) bool {
	return r >= 0x590 && r <= 0x8FF || r == 0x200F || r >= 0xFB1D && r <= 0xFDFF || r >= 0xFE70 && r <= 0xFEFE ||
		r >= 0x10800 && r <= 0x10FFF || r >= 0x1E800 && r <= 0x1EFFF
}

// leftwardsAll reports whether the whole line reads from right to left.
func leftwardsAll(s string) bool {
	seen := false
	for _, r := range s {
		switch {
		case isLeftwards(r):
			seen = true
		case unicode.IsLetter(r), !seen && isDigit(r):
			return false
		}
	}
	return seen
}

// leftwardsRun is how many bytes of s, which begins with a letter from right to left, belong together.
func leftwardsRun(s string) (end int) {
	before, parted := rune(0), false
	for n := 0; n < len(s); {
		r, _ := utf8.DecodeRuneInString(s[n:])
		n += ui.Cluster(s[n:])
		switch {
		case isLeftwards(r), isDigit(r) && !parted:
			end, parted = n, false
		case unicode.IsLetter(r):
			return end
		case isDigit(before) && n < len(s) && isDigit(rune(s[n])): // 1.2
		case r != ' ':
			parted = true
		}
		before = r
	}
	return end
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// leftwardsWord is how many bytes at the beginning of s are set as one from right to left: a space, an
// emoji, a word or as much of it as has room.
func leftwardsWord(s string) (n int) {
	for range mostTogether {
		if n > 0 && alone(s[n:]) {
			break
		}
		n += ui.Cluster(s[n:])
		if n == len(s) || alone(s) {
			break
		}
	}
	return n
}

// alone reports whether the character at the beginning of s is set by itself.
func alone(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return r == ' ' || r >= 0x2190 && !isLeftwards(r)
}
