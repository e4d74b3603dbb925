package game

import (
	"partialcredit/game/code"
	"partialcredit/game/mark"
	"partialcredit/game/ui"
)

// A Scene is what to draw and what to mirror for assistive devices. It holds
// until the next Update.
type Scene struct {
	W, H   float64 // of the screen, in CSS pixels
	Margin float64 // the x of the margin line; none where 0

	Trace    *Trace    // none where nil
	Partials *Partials // none where nil
	Charts   []Chart
	Tables   []Table
	Code     *Code // none where nil
	Meter    Meter
	Camera   ui.Rect // where the page shows what the camera sees, over everything; none where empty
	Texts    []Text
	Widgets  []ui.Widget // in the order of the Tab key
	Focus    string      // the widget that has the keyboard's focus and shows it
	Panel    ui.Rect     // a sheet of paper laid over the page, with its texts and widgets in Over; none where empty
	Over     []Text
	Strokes  []Stroke // of the red pen

	Title string // for assistive devices: the heading of the page
	Body  string // for assistive devices: the texts of the page
	Say   string // for assistive devices: announced when it changes
}

// A Code is a QR code: dark on light in every theme, as large as whole pixels of the device allow in
// the middle of Rect, its quiet zone within. Title or Body say what it holds.
type Code struct {
	Rect ui.Rect // on the panel where it lies within, else on the page
	Code code.Code
}

// A Meter is a level that is shown as a bar; none where Rect is empty.
type Meter struct {
	Rect  ui.Rect
	Level float64 // 0 to 1
}

// A Text is one line of text.
type Text struct {
	X, Y   float64 // left end (right end, middle) of the baseline
	String string
	Size   float64 // of the em, in CSS pixels
	Bold   bool
	Slant  bool // handwritten figures lean
	Ink    Ink
	Align  Align
}

// An Ink is a colour by its meaning.
type Ink int

// The inks.
const (
	Black Ink = iota
	Faint
	Yours
	Target
	Red
	Light // on a dark button
)

// An Align says which end of a text stands at X.
type Align int

// The alignments.
const (
	Left Align = iota
	Middle
	Right
)

// A Stroke is one stroke of the red pen.
type Stroke struct {
	Kind    StrokeKind
	X, Y, R float64 // its middle and half its width
}

// A StrokeKind is a shape the red pen makes.
type StrokeKind int

// The strokes.
const (
	Tick StrokeKind = iota
	Cross
	Underline
)

// A Trace is the oscilloscope.
type Trace struct {
	Rect    ui.Rect
	Yours   Wave
	Target  Wave // no samples while it is covered
	Covered bool
}

// A Line is a partial as it is drawn.
type Line = mark.Line

// A Verdict is what the marks say of one partial.
type Verdict = mark.Partial

// A Wave is a stretch of sound to draw.
type Wave struct {
	Samples []float32 // the newest last
	Cycle   []float32 // beside each sample the phase, 0 to 1, of what it is triggered by
	Rate    float64   // samples a second
	Period  float64   // of the trigger, in samples
	Scale   float64   // multiplies the samples: ±1 is the height of the box
	Live    bool      // it sounds now
}

// Partials is the spectrum.
type Partials struct {
	Rect    ui.Rect
	F0      float64 // of partial 1, in hertz
	Yours   []Line  // dB re the strongest
	Target  []Line  // none while it is covered
	Marked  []Verdict
	Covered bool
}
