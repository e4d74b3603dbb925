//go:build !js

package main_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"partialcredit/game/sheet"
)

// watchMarks keeps the time from the last key to the marks in the status line.
const watchMarks = `
addEventListener('keydown', e => { window.pressedAt = e.timeStamp; window.markedAfter = null; }, true);
addEventListener('DOMContentLoaded', () => new MutationObserver(() => {
	const status = document.querySelector('#mirror [role=status]');
	if (status && markedAfter === null && status.textContent.includes('marks of 100')) markedAfter = performance.now() - pressedAt;
}).observe(document.body, { childList: true, subtree: true, characterData: true }));
window.markedAfter = 0;`

// TestHandInIsQuick hands every exercise in as it starts, and times the way from the key to the marks.
// Issue 2 asks for 300 ms on a machine that does nothing else. The bound is wider, because tests run
// beside other programs; the log has the figures.
func TestHandInIsQuick(t *testing.T) {
	const most = 1500.0 // ms
	s := sheet.Matches()
	l := resume(t, at(s.Exercises[0].ID), Visit{Before: []string{watchMarks}})
	var all []float64
	for i := range s.Exercises {
		l.WaitText("#mirror h1", fmt.Sprintf("%d. ", i+1), 5*time.Second)
		l.settle()
		l.Press("h")
		l.Wait("markedAfter", limit)
		var took float64
		l.Eval("markedAfter", &took)
		t.Logf("%-12s %4.0f ms from the key to the marks", s.Exercises[i].ID, took)
		all = append(all, took)
		l.Press("n")
	}
	slices.Sort(all)
	t.Logf("median %.0f ms, longest %.0f ms", all[len(all)/2], all[len(all)-1])
	if all[len(all)/2] > most {
		t.Errorf("half of the exercises take more than %.0f ms to mark", most)
	}
}
