package ui

import "time"

// A Kind says what happened.
type Kind int

// The kinds of event.
const (
	PointerDown   Kind = iota // a finger, pen or mouse button went down
	PointerMove               // it moved while down
	PointerUp                 // it was lifted
	PointerCancel             // the system took it away: let go, change nothing
	KeyDown                   // a key went down, or repeats
	Press                     // an assistive device pressed the widget
	SetValue                  // an assistive device set the ruler to Value
	Focus                     // the widget took the focus; none where Widget is empty
	Typed                     // what is written in the widget is Text now
)

// An Event is one thing a person did.
type Event struct {
	Kind    Kind
	At      time.Duration // since the program started
	Pointer int           // which finger
	X, Y    float64       // where it is
	Key     string        // KeyDown: the name in the UI Events KeyboardEvent key values (W3C): "ArrowLeft", "a", " "
	Shift   bool          // KeyDown: with Shift held
	Widget  string        // Press, SetValue, Focus, Typed: which; KeyDown: which has the focus
	Value   float64       // SetValue
	Text    string        // Typed: all that is written now
}
