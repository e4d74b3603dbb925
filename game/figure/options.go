package figure

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// Options say how a picture looks. The zero value is a slide on paper.
type Options struct {
	Size   Size
	Ground Ground
	Title  string // written over the picture; none where empty
	About  string // what is seen, for people who cannot see it
	Words  Words
	Pencil bool // a sound that is alone is drawn as the target is: dashed, with open circles
	Inset  bool // among text that says what it is: no heading, and little room around
}

// A Size is how large a picture is. Unit is how long a CSS pixel of the app is in it: lines, dots,
// squares and text grow with it.
type Size struct {
	W, H int
	Unit float64 // chosen by the size where 0
}

// Sizes with names. A thumbnail is looked at a quarter as large as it is: all in it is coarser.
var (
	Slide     = Size{1920, 1080, 2}
	Thumbnail = Size{1280, 720, 2.2}
	Square    = Size{1080, 1080, 2}
)

// SizeNames are the sizes that have names.
var SizeNames = []string{"slide", "thumbnail", "square"}

// Bounds of a picture's sides in pixels (design choice: a stamp, and more than any screen).
const (
	leastSide = 100
	mostSide  = 8000
)

// ParseSize reads the name of a size or two numbers, 1600x900.
func ParseSize(s string) (Size, error) {
	for i, name := range SizeNames {
		if s == name {
			return [...]Size{Slide, Thumbnail, Square}[i], nil
		}
	}
	w, h, ok := strings.Cut(s, "x")
	width, err := strconv.Atoi(w)
	height, err2 := strconv.Atoi(h)
	if !ok || err != nil || err2 != nil {
		return Size{}, errors.New("the size is " + strconv.Quote(s) + "; it must be " + strings.Join(SizeNames, ", ") + " or a width and a height in pixels like 1600x900")
	}
	if min(width, height) < leastSide || max(width, height) > mostSide {
		return Size{}, errors.New("the size is " + s + "; each side must have " + strconv.Itoa(leastSide) + " to " + strconv.Itoa(mostSide) + " pixels")
	}
	return Size{W: width, H: height}, nil
}

// whole is the size with all that was left out. Between a slide and a small picture on paper
// lengths follow the area; text does not get smaller than 11 pixels.
func (s Size) whole() Size {
	if s.W <= 0 || s.H <= 0 {
		return Slide
	}
	s.W, s.H = max(leastSide, min(mostSide, s.W)), max(leastSide, min(mostSide, s.H))
	if !(s.Unit > 0) {
		s.Unit = max(0.75, math.Sqrt(float64(s.W)*float64(s.H)/(960*540)))
		s.Unit = min(s.Unit, max(0.75, float64(min(s.W, s.H))/270))
	}
	return s
}

// Words are the texts of pictures. What is left empty is in English.
type Words struct {
	Yours, Target   string
	Trace, Partials string // headings
	Partial         string // beside the numbers of partials
	Period          string // under one period of a trace
	Sweep, Time     string
	Point           string // the decimal point
}

var english = Words{
	Yours: "yours", Target: "target", Trace: "Trace", Partials: "Partials",
	Partial: "partial", Period: "one period", Sweep: "Sweep", Time: "Time", Point: ".",
}

func (w Words) whole() Words {
	for _, p := range [...]struct{ to, from *string }{
		{&w.Yours, &english.Yours}, {&w.Target, &english.Target}, {&w.Trace, &english.Trace},
		{&w.Partials, &english.Partials}, {&w.Partial, &english.Partial}, {&w.Period, &english.Period},
		{&w.Sweep, &english.Sweep}, {&w.Time, &english.Time}, {&w.Point, &english.Point},
	} {
		if *p.to == "" {
			*p.to = *p.from
		}
	}
	return w
}

// number writes a value with so many significant digits, without noughts at its end.
func (w Words) number(v float64, digits int) string {
	if v == 0 {
		return "0"
	}
	decimals := max(0, digits-1-int(math.Floor(math.Log10(math.Abs(v)))))
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals > 0 {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return strings.Replace(strings.Replace(s, ".", w.Point, 1), "-", "−", 1)
}
