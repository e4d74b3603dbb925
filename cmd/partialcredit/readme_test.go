//go:build !js

package main_test

import (
	"testing"
	"time"
)

// TestReadmePicture hands in a pulse that is too wide. The README's picture is
// made by SCREENSHOTS=testdata/screens go test ./cmd/partialcredit -run ReadmePicture
func TestReadmePicture(t *testing.T) {
	const kept = `localStorage.setItem("partialcredit.progress", localStorage.getItem("partialcredit.progress") ||
		'{"version": 1, "exercise": "duty", "page": "work", "settings": [0.31], "marks": {"shape": {"best": 100, "last": 100, "tries": 1}}}')`
	l := learner{Page: Open(t, Visit{Screen: Screen{1180, 820, 1, true}, Before: []string{kept}})}
	l.Started()
	l.press("hand in")
	l.WaitText(`#mirror [role=status]`, "marks of 100", 5*time.Second)
	if m := l.marks(); m < 20 || m > 80 {
		t.Errorf("%v marks for a duty of 31 %% instead of 25 %%", m)
	}
	l.Wait(`document.querySelector('[data-widget="next"]') !== null`, 5*time.Second)
	time.Sleep(300 * time.Millisecond) // until it is drawn
	l.Screenshot("marked-tablet.png")
}
