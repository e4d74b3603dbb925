//go:build !js

package main_test

import (
	"testing"
	"time"

	"partialcredit/game"
	"partialcredit/game/sheet"
)

func TestUncoveringShowsTheTargetAndCapsTheMarks(t *testing.T) {
	k := at("duty")
	l := resume(t, k, Visit{})
	l.settle()
	e := exercise(t, "duty")
	scene := k.scene(Desktop)
	trace, partials := scene.Trace.Rect, scene.Partials.Rect
	coveredTrace, coveredPartials := l.Picture(trace), l.Picture(partials)
	l.press("uncover")
	l.settle()
	if d := differing(coveredTrace, l.Picture(trace)); d < 0.003 {
		t.Errorf("uncovering changes %.2f %% of the trace, want the target's", 100*d)
	}
	if d := differing(coveredPartials, l.Picture(partials)); d < 0.003 {
		t.Errorf("uncovering changes %.2f %% of the partials, want the target's", 100*d)
	}
	if !l.disabled("uncover") {
		t.Error("the target can be uncovered twice")
	}
	l.Wait(`JSON.parse(localStorage.getItem("partialcredit.progress")).uncovered`, 5*time.Second)
	l.Reload()
	l.Started()
	if !l.disabled("uncover") {
		t.Error("loading the page again covers the target")
	}
	l.set(e, 0)
	l.press("hand in")
	l.WaitText(`#mirror [role=status]`, "marks of 100", limit)
	if got := l.marks(); got != game.UncoveredCap {
		t.Errorf("%v marks for a full match with the target uncovered, want %v", got, game.UncoveredCap)
	}
	l.WaitText("#mirror p", "uncovered before it was handed in", 5*time.Second)
}

func exercise(t *testing.T, id string) *sheet.Exercise {
	t.Helper()
	s := sheet.Matches()
	for i := range s.Exercises {
		if s.Exercises[i].ID == id {
			return &s.Exercises[i]
		}
	}
	t.Fatalf("there is no exercise %q", id)
	return nil
}
