package ui

import "math"

// A Role says what kind of control a widget is.
type Role int

// The roles.
const (
	Button  Role = iota
	Ruled        // a widget with a Ruler
	Written      // a widget with a Text: the page's own text field lies over it
)

// A Widget is one control on the screen.
type Widget struct {
	ID       string // unique on the screen, the same from tick to tick
	Role     Role
	Label    string // what it is called
	Face     string // what is drawn on it; the label where empty
	Rect     Rect   // where it takes a finger, at least 44 by 44
	On       bool   // a button that shows what is going on now: it sounds
	Primary  bool   // the button that goes on
	Round    bool   // a numbered exercise in the margin
	Plain    bool   // a line of a list: no frame, its label at the left
	Note     string // of a Plain button: at its right end, in red
	Ticked   bool   // an exercise that has marks
	Disabled bool
	NoTab    bool   // the Tab key passes it by: another widget does the same
	Keys     string // the key that presses it, as people read it
	Ruler    Ruler  // of a Ruled widget
	Text     Text   // of a Written widget
}

// A Ruler is a ruled scale with a handle.
type Ruler struct {
	Min, Max float64
	Start    float64 // double tap returns here
	Value    float64
	Step     float64 // fine step: a difference, or a factor where Log
	Log      bool    // equal ratios are equal lengths
	Whole    bool    // only whole numbers
	Text     string  // the value as people read it
	MinText  string
	MaxText  string
	Scale    Rect // where the scale is drawn: Pos 0 is its left edge, 1 its right
}

// Pos is the place of v on the scale, 0 to 1.
func (r *Ruler) Pos(v float64) float64 {
	if r.Log {
		return math.Log(v/r.Min) / math.Log(r.Max/r.Min)
	}
	return (v - r.Min) / (r.Max - r.Min)
}

// At is the value at a place on the scale, brought into the range.
func (r *Ruler) At(pos float64) float64 {
	pos = max(0, min(1, pos))
	v := r.Min + pos*(r.Max-r.Min)
	if r.Log {
		v = r.Min * math.Pow(r.Max/r.Min, pos)
	}
	return r.Clamp(v)
}

// Clamp brings v into the range and, where Whole, to a whole number.
func (r *Ruler) Clamp(v float64) float64 {
	if r.Whole {
		v = math.Round(v)
	}
	return max(r.Min, min(r.Max, v))
}

// Stepped is the value n fine steps from the present one.
func (r *Ruler) Stepped(n float64) float64 {
	if r.Log {
		return r.Clamp(r.Value * math.Pow(r.Step, n))
	}
	return r.Clamp(r.Value + n*r.Step)
}

// Fraction is the handle's place, 0 to 1.
func (r *Ruler) Fraction() float64 { return r.Pos(r.Value) }

// Ticks are the places of the marks on the scale, 0 to 1, and whether each is
// a long one. A ruler of whole numbers has a mark for each.
func (r *Ruler) Ticks() (pos []float64, long []bool) {
	if r.Whole && r.Max-r.Min <= 12 {
		for v := r.Min; v <= r.Max; v++ {
			pos, long = append(pos, r.Pos(v)), append(long, true)
		}
		return pos, long
	}
	const n = 20
	for i := 0; i <= n; i++ {
		pos, long = append(pos, float64(i)/n), append(long, i%5 == 0)
	}
	return pos, long
}
