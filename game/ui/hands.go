package ui

import (
	"math"
	"time"
)

// Hands knows which finger holds which widget and turns events into actions.
// The zero value is ready to use.
type Hands struct {
	grips map[int]*grip
	tap   struct {
		widget string
		at     time.Duration
		x, y   float64
	}
}

// A grip is a finger on a widget.
type grip struct {
	widget string
	ruler  bool
	x, y   float64 // where the finger is
	pos    float64 // the place on the scale it has carried the handle to
	moved  bool
}

// An Action is what a person did to a widget.
type Action struct {
	Widget string
	Moved  bool    // a ruler was set to Value
	Typed  bool    // a text field has Text in it now; where neither, the widget was pressed
	Value  float64 // in the ruler's own unit
	Text   string  // fit for the field
}

// The feel of a ruler: design choices, in CSS pixels and seconds.
const (
	reach     = 28   // a finger this near the handle takes it along instead of calling it
	fineness  = 30   // a finger this far off the ruler moves the handle at a quarter of the speed
	finest    = 1e-2 // the slowest
	slop      = 8    // a finger that moves less than this taps
	doubleTap = 400 * time.Millisecond
	keySteps  = 5  // fine steps of an arrow key
	pageSteps = 25 // fine steps of a page key
)

// Holds reports whether a finger is on the widget.
func (h *Hands) Holds(widget string) bool {
	for _, g := range h.grips {
		if g.widget == widget {
			return true
		}
	}
	return false
}

// LetGo makes every finger let go without an action.
func (h *Hands) LetGo() { clear(h.grips) }

// Take turns one event into an action on one of the widgets, if it makes one.
func (h *Hands) Take(e Event, widgets []Widget) (Action, bool) {
	switch e.Kind {
	case PointerDown:
		return h.down(e, widgets)
	case PointerMove:
		return h.move(e, widgets)
	case PointerUp:
		return h.up(e, widgets)
	case PointerCancel:
		delete(h.grips, e.Pointer)
	case KeyDown:
		return key(e, widgets)
	case Press:
		if w := find(widgets, e.Widget); w != nil && w.Role == Button && !w.Disabled {
			return Action{Widget: w.ID}, true
		}
	case SetValue:
		if w := find(widgets, e.Widget); w != nil && w.Role == Ruled && !w.Disabled {
			return moved(w, w.Ruler.Clamp(e.Value))
		}
	case Typed:
		if w := find(widgets, e.Widget); w != nil && w.Role == Written && !w.Disabled {
			return Action{Widget: w.ID, Typed: true, Text: w.Text.Fit(e.Text)}, true
		}
	}
	return Action{}, false
}

func (h *Hands) down(e Event, widgets []Widget) (Action, bool) {
	w := at(widgets, e.X, e.Y)
	if w == nil || w.Disabled || w.Role == Written { // the page's own field takes what is done to it
		return Action{}, false
	}
	if h.grips == nil {
		h.grips = map[int]*grip{}
	}
	g := &grip{widget: w.ID, ruler: w.Role == Ruled, x: e.X, y: e.Y}
	h.grips[e.Pointer] = g
	if !g.ruler {
		return Action{}, false
	}
	r := &w.Ruler
	g.pos = r.Fraction()
	if math.Abs(e.X-(r.Scale.X+g.pos*r.Scale.W)) <= reach {
		return Action{}, false
	}
	g.pos = max(0, min(1, (e.X-r.Scale.X)/r.Scale.W))
	return moved(w, r.At(g.pos))
}

func (h *Hands) move(e Event, widgets []Widget) (Action, bool) {
	g := h.grips[e.Pointer]
	if g == nil {
		return Action{}, false
	}
	dx, dy := e.X-g.x, e.Y-g.y
	if !g.moved && math.Hypot(dx, dy) < slop {
		return Action{}, false
	}
	g.moved = true
	w := find(widgets, g.widget)
	if !g.ruler || w == nil {
		return Action{}, false
	}
	g.x = e.X
	r := &w.Ruler
	g.pos = max(0, min(1, g.pos+dx/r.Scale.W*speed(w.Rect, e.Y)))
	return moved(w, r.At(g.pos))
}

// speed is how much of a finger's movement the handle follows: all of it on
// the ruler, less the further the finger is above or below.
func speed(r Rect, y float64) float64 {
	off := max(r.Y-y, y-r.Bottom(), 0)
	return max(finest, 1/math.Pow(1+off/fineness, 2))
}

func (h *Hands) up(e Event, widgets []Widget) (Action, bool) {
	g := h.grips[e.Pointer]
	delete(h.grips, e.Pointer)
	if g == nil {
		return Action{}, false
	}
	w := find(widgets, g.widget)
	if w == nil || w.Disabled || w.Role == Written {
		return Action{}, false
	}
	if !g.ruler {
		if !w.Rect.Contains(e.X, e.Y) {
			return Action{}, false // moved off: the way to change one's mind
		}
		return Action{Widget: w.ID}, true
	}
	if g.moved {
		return Action{}, false
	}
	second := h.tap.widget == w.ID && e.At-h.tap.at < doubleTap && math.Hypot(e.X-h.tap.x, e.Y-h.tap.y) < 3*slop
	h.tap.widget, h.tap.at, h.tap.x, h.tap.y = w.ID, e.At, e.X, e.Y
	if second {
		h.tap.widget = ""
		return moved(w, w.Ruler.Start)
	}
	return Action{}, false
}

// key lets the keyboard act on the widget that has the focus.
func key(e Event, widgets []Widget) (Action, bool) {
	w := find(widgets, e.Widget)
	if w == nil || w.Disabled || w.Role == Written {
		return Action{}, false
	}
	if w.Role == Button {
		if e.Key == " " || e.Key == "Enter" {
			return Action{Widget: w.ID}, true
		}
		return Action{}, false
	}
	r := &w.Ruler
	arrow, page := float64(keySteps), float64(pageSteps)
	if r.Whole {
		arrow, page = 1, 2
	}
	if e.Shift {
		arrow = 1
	}
	switch e.Key {
	case "ArrowRight", "ArrowUp":
		return moved(w, r.Stepped(arrow))
	case "ArrowLeft", "ArrowDown":
		return moved(w, r.Stepped(-arrow))
	case "PageUp":
		return moved(w, r.Stepped(page))
	case "PageDown":
		return moved(w, r.Stepped(-page))
	case "Home":
		return moved(w, r.Min)
	case "End":
		return moved(w, r.Max)
	}
	return Action{}, false
}

func moved(w *Widget, v float64) (Action, bool) {
	return Action{Widget: w.ID, Moved: true, Value: v}, true
}

func find(widgets []Widget, id string) *Widget {
	for i := range widgets {
		if widgets[i].ID == id {
			return &widgets[i]
		}
	}
	return nil
}

// at finds the widget under a point.
func at(widgets []Widget, x, y float64) *Widget {
	for i := range widgets {
		if widgets[i].Rect.Contains(x, y) {
			return &widgets[i]
		}
	}
	return nil
}
