package ui

import "strings"

// A Text is what is written in a text field.
type Text struct {
	Value string
	Hint  string // an example of what to write, shown while there is nothing; the label says what it is
	Lines int    // how many are seen at once: above 1 it takes line breaks
	Most  int    // how many characters (Unicode code points) it takes; any number where 0
}

// TextLabel is how high the label of a Written widget is, at the top of its
// rectangle: the field lies below it. In CSS pixels, a design choice.
const TextLabel = 24

// Field is where the page's text field lies on a Written widget.
func (w *Widget) Field() Rect {
	_, field := w.Rect.CutTop(TextLabel, 0)
	return field
}

// TextHeight is how high a Written widget of that many lines is: a line of 16
// px and what lies round it, at least 44 px for a finger, below the label.
func TextHeight(lines int) float64 { return TextLabel + 24 + 22*float64(max(1, lines)) }

// Fit makes a text one that the field takes: no longer than it may be, and in one
// line where it has but one.
func (t *Text) Fit(s string) string {
	s = strings.ToValidUTF8(s, "")
	s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	if t.Lines <= 1 {
		s = strings.ReplaceAll(s, "\n", " ")
	}
	if t.Most > 0 {
		n := 0
		for i := range s {
			if n == t.Most {
				return s[:i]
			}
			n++
		}
	}
	return s
}
