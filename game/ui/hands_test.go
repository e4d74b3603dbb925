package ui

import (
	"math"
	"testing"
	"time"
)

func ruled(id string, x, y float64) Widget {
	return Widget{ID: id, Role: Ruled, Rect: Rect{x, y, 400, 60}, Ruler: Ruler{
		Min: 0, Max: 100, Start: 50, Value: 50, Step: 0.2, Scale: Rect{X: x + 50, Y: y + 30, W: 300},
	}}
}

// play sends events and keeps the rulers' values, as the game does.
func play(h *Hands, widgets []Widget, events ...Event) (last Action) {
	for _, e := range events {
		if a, ok := h.Take(e, widgets); ok {
			last = a
			if w := find(widgets, a.Widget); a.Moved {
				w.Ruler.Value = a.Value
			}
		}
	}
	return last
}

func TestDragAlongTheRuler(t *testing.T) {
	w := []Widget{ruled("r", 0, 100)}
	var h Hands
	a := play(&h, w,
		Event{Kind: PointerDown, X: 205, Y: 130}, // near the handle at 200: it stays
		Event{Kind: PointerMove, X: 265, Y: 130})
	if a.Value != 70 {
		t.Errorf("60 px of a scale of 300 px moved the handle from 50 to %v, want 70", a.Value)
	}
	a = play(&h, w, Event{Kind: PointerMove, X: 265 + 30, Y: 160 + 30})
	if want := 70 + 10.0/4; math.Abs(a.Value-want) > 1e-9 {
		t.Errorf("30 px off the ruler a quarter of the movement: %v, want %v", a.Value, want)
	}
	play(&h, w, Event{Kind: PointerUp, X: 295, Y: 190})
	if a := play(&h, w, Event{Kind: PointerMove, X: 60, Y: 130}); a.Widget != "" {
		t.Errorf("a lifted finger still moved %v", a)
	}
}

func TestFingerFarFromTheHandleCallsIt(t *testing.T) {
	w := []Widget{ruled("r", 0, 100)}
	var h Hands
	if a := play(&h, w, Event{Kind: PointerDown, X: 320, Y: 130}); a.Value != 90 {
		t.Errorf("got %v, want 90", a.Value)
	}
}

func TestTwoFingersOnTwoRulers(t *testing.T) {
	w := []Widget{ruled("one", 0, 100), ruled("two", 0, 200)}
	var h Hands
	play(&h, w,
		Event{Kind: PointerDown, Pointer: 1, X: 200, Y: 130},
		Event{Kind: PointerDown, Pointer: 2, X: 200, Y: 230},
		Event{Kind: PointerMove, Pointer: 1, X: 230, Y: 130},
		Event{Kind: PointerMove, Pointer: 2, X: 140, Y: 230},
		Event{Kind: PointerMove, Pointer: 1, X: 260, Y: 130})
	if w[0].Ruler.Value != 70 || w[1].Ruler.Value != 30 {
		t.Errorf("got %v and %v, want 70 and 30", w[0].Ruler.Value, w[1].Ruler.Value)
	}
}

func TestCancelledTouchLetsGo(t *testing.T) {
	w := []Widget{ruled("r", 0, 100), {ID: "b", Rect: Rect{0, 200, 100, 50}}}
	var h Hands
	play(&h, w, Event{Kind: PointerDown, X: 200, Y: 130}, Event{Kind: PointerCancel})
	if h.Holds("r") {
		t.Error("the ruler is still held")
	}
	if a := play(&h, w, Event{Kind: PointerDown, X: 50, Y: 220}, Event{Kind: PointerCancel}, Event{Kind: PointerUp, X: 50, Y: 220}); a.Widget != "" {
		t.Errorf("a cancelled touch pressed %v", a)
	}
}

func TestFingerMovedOffAButtonDoesNotPressIt(t *testing.T) {
	w := []Widget{{ID: "b", Rect: Rect{0, 0, 100, 50}}}
	var h Hands
	if a := play(&h, w, Event{Kind: PointerDown, X: 50, Y: 20}, Event{Kind: PointerUp, X: 50, Y: 90}); a.Widget != "" {
		t.Errorf("pressed %v", a)
	}
	if a := play(&h, w, Event{Kind: PointerDown, X: 50, Y: 20}, Event{Kind: PointerUp, X: 51, Y: 21}); a.Widget != "b" {
		t.Error("not pressed")
	}
}

func TestDoubleTapReturnsToTheStart(t *testing.T) {
	tap := func(at time.Duration) []Event {
		return []Event{{Kind: PointerDown, X: 320, Y: 130, At: at}, {Kind: PointerUp, X: 320, Y: 130, At: at}}
	}
	for _, c := range []struct {
		gap  time.Duration
		want float64
	}{{200 * time.Millisecond, 50}, {time.Second, 90}} {
		w := []Widget{ruled("r", 0, 100)}
		var h Hands
		play(&h, w, append(tap(0), tap(c.gap)...)...)
		if w[0].Ruler.Value != c.want {
			t.Errorf("two taps %v apart: %v, want %v", c.gap, w[0].Ruler.Value, c.want)
		}
	}
}

func TestKeys(t *testing.T) {
	log := Ruler{Min: 1, Max: 16, Value: 4, Step: 1.01, Log: true}
	whole := Ruler{Min: 0, Max: 4, Value: 2, Step: 1, Whole: true}
	linear := Ruler{Min: 0, Max: 100, Value: 50, Step: 0.2}
	for _, c := range []struct {
		ruler Ruler
		key   string
		shift bool
		want  float64
	}{
		{linear, "ArrowRight", false, 51}, {linear, "ArrowRight", true, 50.2}, {linear, "ArrowDown", false, 49},
		{linear, "PageUp", false, 55}, {linear, "Home", false, 0}, {linear, "End", false, 100},
		{whole, "ArrowRight", false, 3}, {whole, "ArrowLeft", true, 1}, {whole, "PageDown", false, 0},
		{log, "ArrowRight", true, 4.04}, {log, "ArrowLeft", true, 4 / 1.01}, {log, "End", false, 16},
	} {
		w := []Widget{{ID: "r", Role: Ruled, Ruler: c.ruler}}
		var h Hands
		a := play(&h, w, Event{Kind: KeyDown, Key: c.key, Shift: c.shift, Widget: "r"})
		if math.Abs(a.Value-c.want) > 1e-9 {
			t.Errorf("%s, shift %v, from %v: %v, want %v", c.key, c.shift, c.ruler.Value, a.Value, c.want)
		}
	}
}

func TestRulerPlacesAreInverse(t *testing.T) {
	for _, r := range []Ruler{{Min: -50, Max: 50}, {Min: 0.25, Max: 8, Log: true}, {Min: 0, Max: 4, Whole: true}} {
		for _, v := range []float64{r.Min, r.Max, r.At(0.5)} {
			if got := r.At(r.Pos(v)); math.Abs(got-v) > 1e-9 {
				t.Errorf("%v: At(Pos(%v)) = %v", r, v, got)
			}
		}
	}
}

func TestPressOnADisabledButtonDoesNothing(t *testing.T) {
	w := []Widget{{ID: "b", Rect: Rect{0, 0, 100, 50}, Disabled: true}}
	for _, e := range []Event{{Kind: Press, Widget: "b"}, {Kind: KeyDown, Key: "Enter", Widget: "b"}} {
		var h Hands
		if a := play(&h, w, e); a.Widget != "" {
			t.Errorf("%v pressed it", e)
		}
	}
}
