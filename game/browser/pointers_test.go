package browser

import (
	"fmt"
	"slices"
	"testing"

	"partialcredit/game/ui"
)

func TestPointers(t *testing.T) {
	finger := func(id int, x float64) contact { return contact{id: id, x: x, buttons: 1} }
	mouse := func(button, buttons int, x float64) contact {
		return contact{id: 9, mouse: true, button: button, buttons: buttons, x: x}
	}
	control := mouse(0, 1, 1)
	control.ctrl = true
	tests := []struct {
		name string
		act  func(p *pointers)
		want []string
	}{
		{"a tap", func(p *pointers) { p.press(finger(3, 1)); p.lift(finger(3, 2)) }, []string{"down 3 1", "up 3 2"}},
		{"two fingers", func(p *pointers) {
			p.press(finger(3, 1))
			p.press(finger(4, 10))
			p.move(finger(3, 2))
			p.lift(finger(3, 2))
			p.move(finger(4, 11))
			p.lift(finger(4, 12))
		}, []string{"down 3 1", "down 4 10", "move 3 2", "up 3 2", "move 4 11", "up 4 12"}},
		{"a mouse that is not held", func(p *pointers) { p.move(mouse(-1, 0, 1)); p.lift(mouse(0, 0, 1)) }, nil},
		{"the other buttons", func(p *pointers) { p.press(mouse(2, 2, 1)); p.move(mouse(-1, 2, 2)); p.lift(mouse(2, 0, 2)) }, nil},
		{"Control and click", func(p *pointers) { p.press(control) }, nil},
		{"let go while another button is held", func(p *pointers) {
			p.press(mouse(0, 1, 1))
			p.move(mouse(2, 3, 2))
			p.move(mouse(0, 2, 3))
			p.move(mouse(-1, 2, 4))
			p.lift(mouse(2, 0, 5))
		}, []string{"down 9 1", "move 9 2", "up 9 3"}},
		{"taken away, then said again to be lost", func(p *pointers) {
			p.press(finger(3, 1))
			p.move(finger(3, 5))
			p.cancel(0, 3)
			p.cancel(0, 3)
			p.lift(finger(3, 6))
		}, []string{"down 3 1", "move 3 5", "cancel 3 5"}},
		{"lifted, then its capture lost", func(p *pointers) { p.press(finger(3, 1)); p.lift(finger(3, 1)); p.cancel(0, 3) },
			[]string{"down 3 1", "up 3 1"}},
		{"all taken away", func(p *pointers) { p.press(finger(3, 1)); p.press(finger(4, 2)); p.cancelAll(0) },
			[]string{"down 3 1", "down 4 2", "cancel 3 1", "cancel 4 2"}},
		{"pressed twice", func(p *pointers) { p.press(finger(3, 1)); p.press(finger(3, 2)) },
			[]string{"down 3 1", "cancel 3 1", "down 3 2"}},
	}
	names := map[ui.Kind]string{ui.PointerDown: "down", ui.PointerMove: "move", ui.PointerUp: "up", ui.PointerCancel: "cancel"}
	for _, tt := range tests {
		var q queue
		tt.act(&pointers{q: &q})
		var got []string
		for _, e := range q.drain() {
			got = append(got, fmt.Sprint(names[e.Kind], " ", e.Pointer, " ", e.X))
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
