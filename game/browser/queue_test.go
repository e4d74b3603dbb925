package browser

import (
	"slices"
	"testing"

	"partialcredit/game/ui"
)

func TestQueueKeepsTheLastMove(t *testing.T) {
	move := func(pointer int, x float64) ui.Event { return ui.Event{Kind: ui.PointerMove, Pointer: pointer, X: x} }
	key := ui.Event{Kind: ui.KeyDown, Key: "a"}
	up := ui.Event{Kind: ui.PointerUp, Pointer: 1, X: 4}
	tests := []struct {
		name       string
		push, want []ui.Event
	}{
		{"nothing", nil, nil},
		{"one finger", []ui.Event{move(1, 1), move(1, 2), move(1, 3)}, []ui.Event{move(1, 3)}},
		{"two fingers", []ui.Event{move(1, 1), move(2, 1), move(1, 2), move(2, 2)}, []ui.Event{move(1, 2), move(2, 2)}},
		{"not past a key", []ui.Event{move(1, 1), key, move(1, 2)}, []ui.Event{move(1, 1), key, move(1, 2)}},
		{"not past a lift", []ui.Event{move(1, 1), up, move(1, 5)}, []ui.Event{move(1, 1), up, move(1, 5)}},
	}
	for _, tt := range tests {
		var q queue
		for range 2 { // also when it has been drained
			for _, e := range tt.push {
				q.push(e)
			}
			if got := q.drain(); !slices.Equal(got, tt.want) {
				t.Errorf("%s: %+v, want %+v", tt.name, got, tt.want)
			}
		}
		if got := q.drain(); len(got) != 0 {
			t.Errorf("%s: again %+v", tt.name, got)
		}
	}
}

func TestDrainedEventsHoldUntilTheNextDrain(t *testing.T) {
	var q queue
	q.push(ui.Event{Key: "a"})
	got := q.drain()
	q.push(ui.Event{Key: "b"})
	if got[0].Key != "a" {
		t.Errorf("an event became %q", got[0].Key)
	}
}

func TestOnlyMovesAreNotUrgent(t *testing.T) {
	var q queue
	check := func(what string, want bool) {
		t.Helper()
		if q.urgent() != want {
			t.Errorf("%s: urgent is %v", what, !want)
		}
	}
	check("nothing", false)
	q.push(ui.Event{Kind: ui.PointerMove, Pointer: 1})
	check("a move", false)
	q.push(ui.Event{Kind: ui.KeyDown})
	q.push(ui.Event{Kind: ui.PointerMove, Pointer: 1})
	check("a key between moves", true)
	q.drain()
	check("nothing again", false)
}
