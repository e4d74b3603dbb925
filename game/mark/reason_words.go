package mark

import (
	"math"
	"strconv"

	"partialcredit/game/words"
)

// number writes a number with two figures that count, and no more than asked.
func number(v float64) string {
	a := math.Abs(v)
	switch {
	case a >= 9.95 || a == 0:
		return strconv.Itoa(int(math.Round(v)))
	case a >= 0.995:
		return trim(strconv.FormatFloat(v, 'f', 1, 64))
	}
	return trim(strconv.FormatFloat(v, 'f', 2, 64))
}

// several is number for what is counted in the plural: "1.0 semitones".
func several(v float64) string {
	if s := number(v); s != "1" {
		return s
	}
	return "1.0"
}

func trim(s string) string {
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}

// two writes two numbers so that they differ: with one figure more where two
// would look alike.
func two(a, b float64) (string, string) {
	x, y := number(a), number(b)
	for d := 1; x == y && d <= 4; d++ {
		x, y = strconv.FormatFloat(a, 'f', d, 64), strconv.FormatFloat(b, 'f', d, 64)
	}
	return x, y
}

// times writes "once", "twice" or "2.1 times".
func times(hz float64) words.Message {
	switch n := number(hz); n {
	case "1":
		return words.Say("once")
	case "2":
		return words.Say("twice")
	default:
		return words.Say("%s times", n)
	}
}

// duration writes a time in milliseconds or seconds.
func duration(s float64) string {
	if s < 0.0995 {
		return strconv.Itoa(int(math.Round(s*1000))) + " ms"
	}
	return number(s) + " s"
}

// ordinals are those of the partials that a pulse can be without (see missing).
var ordinals = []words.Message{2: words.Say("second"), 3: words.Say("third"), 4: words.Say("fourth"), 5: words.Say("fifth"),
	6: words.Say("sixth"), 7: words.Say("seventh"), 8: words.Say("eighth"), 9: words.Say("ninth"), 10: words.Say("tenth")}

// octavesApart, longer and shorter write what n octaves are, n from 1.
func octavesApart(n int) words.Message {
	return []words.Message{words.Say("an octave"), words.Say("two octaves"), words.Say("three octaves"), words.Say("four octaves"), words.Say("five octaves"),
		words.Say("six octaves"), words.Say("seven octaves"), words.Say("eight octaves"), words.Say("nine octaves")}[min(n, 9)-1]
}

func longer(n int) words.Message {
	return []words.Message{words.Say("twice as long"), words.Say("four times as long"), words.Say("eight times as long"), words.Say("sixteen times as long")}[min(n, 4)-1]
}

func shorter(n int) words.Message {
	return []words.Message{words.Say("half as long"), words.Say("a quarter as long"), words.Say("an eighth as long"), words.Say("a sixteenth as long")}[min(n, 4)-1]
}

// more chooses a word by the sign of a difference. The word is one that no
// language inflects where it stands: an adverb, or what comes after "is".
func more(yours, target float64, above, below string) string {
	if yours > target {
		return above
	}
	return below
}
