package mark

import (
	"fmt"
	"math"
	"strconv"
)

// decimals writes a number with two figures that count, and no more than asked.
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

// count writes "once", "twice" or "2.1 times".
func times(hz float64) string {
	switch n := number(hz); n {
	case "1":
		return "once"
	case "2":
		return "twice"
	default:
		return n + " times"
	}
}

// duration writes a time in milliseconds or seconds.
func duration(s float64) string {
	if s < 0.0995 {
		return strconv.Itoa(int(math.Round(s*1000))) + " ms"
	}
	return number(s) + " s"
}

var ordinals = []string{"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"}

func ordinal(n int) string {
	if n > 0 && n < len(ordinals) {
		return ordinals[n]
	}
	return fmt.Sprintf("%dth", n)
}

// more chooses a word by the sign of a difference.
func more(yours, target float64, above, below string) string {
	if yours > target {
		return above
	}
	return below
}
