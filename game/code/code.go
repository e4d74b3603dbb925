// Package code turns links and slips into QR codes (ISO/IEC 18004).
package code

import (
	"rsc.io/qr/coding"

	"partialcredit/game/words"
)

// A Level is how much of a code may be lost and still be corrected.
type Level int

// The levels, with the share of the code words that each corrects (ISO/IEC 18004, 6.5.1).
const (
	Auto Level = iota // M while a camera can read it, else L
	L                 // 7 %
	M                 // 15 %
)

// Most is the longest text in bytes that a code holds: version 40 at level L (ISO/IEC 18004, table 7).
const Most = 2953

// Quiet is how many light modules a code needs around it (ISO/IEC 18004, 6.3.8).
const Quiet = 4

// A Code is a square of dark and light modules, without its quiet zone. Codes that are equal look
// alike. The zero Code is none.
type Code struct {
	Size int // modules on a side: 17 and 4 for each version
	dark string
}

// At reports whether the module in a column and a row is dark; none is outside.
func (c Code) At(x, y int) bool {
	return x >= 0 && y >= 0 && x < c.Size && y < c.Size && c.dark[(y*c.Size+x)/8]>>((y*c.Size+x)%8)&1 != 0
}

// Version is from 1 for the smallest codes to 40 for the largest.
func (c Code) Version() int { return (c.Size - 17) / 4 }

// Encode makes the smallest code that holds the text. An error is a sentence for the learner.
func Encode(text string, level Level) (Code, error) {
	if len(text) == 0 {
		return Code{}, words.Say("There is nothing to make a code of.")
	}
	how := segments(text)
	at := coding.M
	if level == L || level == Auto && least(how, coding.M) > Camera {
		at = coding.L
	}
	v := least(how, at)
	if v > coding.MaxVersion && level == Auto {
		at = coding.L
		v = least(how, at)
	}
	if v > coding.MaxVersion {
		return Code{}, words.Say("This is too long for a code. Use the link or the file.")
	}
	return masked(how, coding.Version(v), at)
}

// leastTail is how many characters in the end are worth being written in another way:
// changing it takes up to 20 bits (ISO/IEC 18004, 7.4).
const leastTail = 16

// segments cuts a text in two where its end can be written in fewer bits.
func segments(text string) []coding.Encoding {
	tail := len(text)
	for tail > 0 && coding.Alpha(text[tail-1:tail]).Check() == nil {
		tail--
	}
	if tail == 0 || len(text)-tail < leastTail {
		return []coding.Encoding{packed(text)}
	}
	return []coding.Encoding{packed(text[:tail]), packed(text[tail:])}
}

// packed chooses how the characters are written: digits and capitals take less room.
func packed(text string) coding.Encoding {
	switch {
	case coding.Num(text).Check() == nil:
		return coding.Num(text)
	case coding.Alpha(text).Check() == nil:
		return coding.Alpha(text)
	}
	return coding.String(text)
}

// least is the smallest version with room for the text, 41 where none has.
func least(text []coding.Encoding, at coding.Level) int {
	v := coding.Version(coding.MinVersion)
	for v <= coding.MaxVersion && bits(text, v) > 8*v.DataBytes(at) {
		v++
	}
	return int(v)
}

func bits(text []coding.Encoding, v coding.Version) (n int) {
	for _, t := range text {
		n += t.Bits(v)
	}
	return n
}

// masked writes the code with each of the eight masks and takes the one with the least penalty.
func masked(text []coding.Encoding, v coding.Version, at coding.Level) (Code, error) {
	size := 17 + 4*int(v)
	best, lowest := []bool(nil), 0
	for mask := range coding.Mask(8) {
		plan, err := coding.NewPlan(v, at, mask)
		if err != nil {
			return Code{}, err
		}
		drawn, err := plan.Encode(text...)
		if err != nil {
			return Code{}, err
		}
		dark := make([]bool, size*size)
		for i := range dark {
			dark[i] = drawn.Black(i%size, i/size)
		}
		if p := penalty(dark, size); best == nil || p < lowest {
			best, lowest = dark, p
		}
	}
	return pack(best, size), nil
}

func pack(dark []bool, size int) Code {
	bits := make([]byte, (len(dark)+7)/8)
	for i, d := range dark {
		if d {
			bits[i/8] |= 1 << (i % 8)
		}
	}
	return Code{size, string(bits)}
}
