// Package figure makes pictures of sounds for slides, videos and paper: the trace, the partials,
// both, and a sweep as a spectrogram, in the look of the exercise book. A picture is a list of
// shapes, which [Drawing.SVG] writes down and whoever has pixels may paint: both are the same
// picture. Yours is drawn in solid ink with filled dots, the target in dashed pencil with open
// circles.
//
// Lengths are in pixels of the picture, levels in decibels under the strongest line.
package figure

import "partialcredit/game/plot"

// A Drawing is a picture.
type Drawing struct {
	W, H   int
	Name   string // what it is called, for people who cannot see it
	About  string // what is seen in it, for the same; may be empty
	Shapes []Shape
}

// A Shape is one thing that is drawn. Later ones lie over earlier ones.
type Shape struct {
	Kind   Kind
	Points []plot.Point // the corners of a line; the one place of all else
	Boxes  []Box
	R      float64    // radius of a dot and of the middle of a ring's line
	Width  float64    // of the line, which has round ends and corners
	Dash   [2]float64 // lengths on and off; a line that is whole where they are 0
	Colour uint32     // 0xRRGGBB
	Alpha  float64    // 0 to 1
	Text   string
	Size   float64 // of the text
	Bold   bool
	Align  Align
	Turned bool // text that reads upwards
}

// A Kind says what a shape is.
type Kind int

// The kinds of shapes.
const (
	Line  Kind = iota
	Dot        // a filled circle
	Ring       // an open circle
	Boxes      // filled boxes that do not overlap
	Label      // text; the place is on its base line
)

// A Box is an upright rectangle.
type Box struct{ X, Y, W, H float64 }

// An Align says which part of a text is at its place.
type Align int

// The ways to align text.
const (
	Left Align = iota
	Middle
	Right
)
