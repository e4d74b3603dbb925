//go:build !js

package main_test

import (
	"slices"
	"testing"
	"time"
)

// watchMarks keeps the time from the last key to the marks in the status line.
const watchMarks = `
addEventListener('keydown', e => { window.pressedAt = e.timeStamp; window.markedAfter = null; }, true);
addEventListener('DOMContentLoaded', () => new MutationObserver(() => {
	const status = document.querySelector('#mirror [role=status]');
	if (status && markedAfter === null && status.textContent.includes('marks of 100')) markedAfter = performance.now() - pressedAt;
}).observe(document.body, { childList: true, subtree: true, characterData: true }));
window.markedAfter = 0;`

// TestHandInIsQuick hands exercises in as they start, and times the way from the key to the marks.
// Issue 2 asks for 300 ms on a machine that does nothing else. The bound is wider, because tests run
// beside other programs; the log has the figures.
func TestHandInIsQuick(t *testing.T) {
	const most = 1500.0 // ms
	var all []float64
	for _, id := range []string{"shape", "ring", "two-at-once"} { // steady, inharmonic, and moving
		l := resume(t, at(id), Visit{Before: []string{watchMarks}})
		l.settle()
		for try := range 2 {
			l.Press("h")
			l.Wait("markedAfter", limit)
			var took float64
			l.Eval("markedAfter", &took)
			t.Logf("%-12s %4.0f ms from the key to the marks, try %d", id, took, try+1)
			all = append(all, took)
			l.Wait(`document.querySelector('`+widget("again")+`') !== null`, 5*time.Second)
			l.Press("a")
			l.Wait(`document.querySelector('`+widget("hand in")+`') !== null`, 5*time.Second)
		}
	}
	slices.Sort(all)
	t.Logf("median %.0f ms, longest %.0f ms", all[len(all)/2], all[len(all)-1])
	if all[len(all)/2] > most {
		t.Errorf("half of the exercises take more than %.0f ms to mark", most)
	}
}
