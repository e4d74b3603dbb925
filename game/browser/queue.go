package browser

import (
	"slices"

	"partialcredit/game/ui"
)

// A queue keeps events between two ticks. Of several moves of one pointer it
// keeps the last.
type queue struct {
	events, spare []ui.Event
}

// push adds e at the end, or puts it in the place of an older move that
// nothing but other moves has followed.
func (q *queue) push(e ui.Event) {
	if e.Kind == ui.PointerMove {
		for i := len(q.events) - 1; i >= 0 && q.events[i].Kind == ui.PointerMove; i-- {
			if q.events[i].Pointer == e.Pointer {
				q.events[i] = e
				return
			}
		}
	}
	q.events = append(q.events, e)
}

// urgent reports whether something waits that is more than a pointer's move.
func (q *queue) urgent() bool {
	return slices.ContainsFunc(q.events, func(e ui.Event) bool { return e.Kind != ui.PointerMove })
}

// drain gives all events, oldest first, and forgets them. They hold until the
// next call.
func (q *queue) drain() []ui.Event {
	out := q.events
	q.events, q.spare = q.spare[:0], out
	return out
}
