package plot

import (
	"math"
	"strconv"
)

// A LogAxis is an axis on which equal ratios are equal lengths.
type LogAxis struct {
	Lo, Hi float64 // the values at its ends
	X, W   float64
}

// At is the place of a value.
func (a LogAxis) At(v float64) float64 {
	return a.X + a.W*math.Log(v/a.Lo)/math.Log(a.Hi/a.Lo)
}

// A Number stands on an axis, its middle at X.
type Number struct {
	X    float64
	Text string
}

// numberGap is the least room between two numbers.
const numberGap = 8.0 // pixels at a scale of 1

// PartialNumbers appends the numbers of partials that fit on an axis in hertz:
// the octaves first, then what lies between them. width measures a text.
func (a LogAxis) PartialNumbers(dst []Number, f0, scale float64, width func(string) float64) []Number {
	if !(f0 > 0) {
		return dst
	}
	for _, n := range [...]int{1, 2, 4, 8, 16, 32, 3, 6, 12, 24, 5, 10} {
		dst = a.fit(dst, f0*float64(n), strconv.Itoa(n), numberGap*scale, width)
	}
	return dst
}

// HertzNumbers appends the frequencies that fit on an axis in hertz: decades
// first, then 2 and 5 times. The lowest of them carries the unit.
func (a LogAxis) HertzNumbers(dst []Number, scale float64, width func(string) float64) []Number {
	// What is placed first is sure of its room: the leftmost, which carries the unit.
	for _, first := range [...]bool{true, false} {
		for _, multiple := range [...]float64{1, 2, 5} {
			for decade := 10.0; decade <= 10000; decade *= 10 {
				hz := decade * multiple
				if first && hz != a.leftmost() {
					continue
				}
				text := hertz(hz)
				if first {
					text += " Hz"
				}
				dst = a.fit(dst, hz, text, numberGap*scale, width)
			}
		}
	}
	return dst
}

// leftmost is the lowest of 1, 2 and 5 times a power of ten on the axis, with
// some room to its left.
func (a LogAxis) leftmost() float64 {
	for decade := 10.0; decade <= 10000; decade *= 10 {
		for _, multiple := range [...]float64{1, 2, 5} {
			if decade*multiple >= a.Lo*1.12 {
				return decade * multiple
			}
		}
	}
	return 0
}

// hertz writes 200 and 2k.
func hertz(hz float64) string {
	if hz >= 1000 {
		return strconv.Itoa(int(hz/1000)) + "k"
	}
	return strconv.Itoa(int(hz))
}

// fit appends a number if it lies on the axis and clear of all others.
func (a LogAxis) fit(dst []Number, value float64, text string, gap float64, width func(string) float64) []Number {
	if !(value >= a.Lo && value <= a.Hi) {
		return dst
	}
	x, half := a.At(value), width(text)/2
	for _, other := range dst {
		if math.Abs(other.X-x) < half+width(other.Text)/2+gap {
			return dst
		}
	}
	return append(dst, Number{x, text})
}
