//go:build !js

package main_test

import (
	"fmt"
	"testing"
	"time"
)

// The pictures of the README, of invented learners. They are made by
// SCREENSHOTS=$PWD/testdata/screens go test ./cmd/partialcredit -run ReadmePictures
var readmePictures = []struct {
	name   string
	screen Screen
	kept   string   // the progress on the device
	press  []string // widgets, one after the other
	says   string   // in the heading or the status at the end
}{
	{"marked-tablet", Screen{1180, 820, 1, true},
		`{"version": 2, "hinted": true, "exercise": "duty", "page": "work", "settings": [0.31], "marks": {"duty-three": {"best": 86, "last": 86, "tries": 1}, "duty-four": {"best": 78, "last": 78, "tries": 1}}}`,
		[]string{"hand in"}, "marks of 100"},
	{"contents-tablet", Screen{1180, 820, 1, true},
		`{"version": 2, "hinted": true, "marks": {"same-shapes": {"best": 83, "last": 83, "tries": 1}, "same-pitch": {"best": 100, "last": 100, "tries": 1}, "same-course": {"best": 92, "last": 92, "tries": 2}, "higher-lower": {"best": 100, "last": 100, "tries": 1}, "tune": {"best": 97, "last": 97, "tries": 1}, "sine-sawtooth": {"best": 100, "last": 100, "tries": 1}}}`,
		nil, "Hear what two oscillators do"},
	{"answered-phone", Phone,
		`{"version": 2, "hinted": true, "exercise": "four-shapes", "page": "question", "runs": {"four-shapes": {"seed": 4, "answers": []}}}`,
		[]string{"answer 1"}, "It was"},
	{"limit-tablet", Screen{1180, 820, 1, true},
		`{"version": 2, "hinted": true, "exercise": "limit-vibrato", "page": "sheet", "limits": {"limit-vibrato": [` +
			`{"day": 20761, "value": 31, "factor": 1.6, "found": true}, {"day": 20763, "value": 22, "factor": 1.4, "found": true}, ` +
			`{"day": 20766, "value": 24, "factor": 1.5, "found": true}, {"day": 20769, "value": 14, "factor": 1.3, "found": true}, {"day": 20772, "value": 12, "factor": 1.4, "found": true}]}, ` +
			`"marks": {"limit-vibrato": {"tries": 5}}}`,
		[]string{"course", "progress", "view 2"}, "Progress"},
	{"confusions-phone", Phone,
		`{"version": 2, "hinted": true, "exercise": "four-shapes", "page": "sheet", "tables": {"four-shapes": {` +
			`"Sine": {"Sine": 9, "Triangle": 3}, "Triangle": {"Triangle": 8, "Sine": 4}, "Square": {"Square": 11, "Sawtooth": 1}, "Sawtooth": {"Sawtooth": 10, "Square": 2}}}}`,
		[]string{"course", "progress", "view 1"}, "Progress"},
	{"bench-tablet", Screen{1180, 820, 1, true},
		`{"version": 2, "hinted": true, "exercise": "fm", "page": "bench"}`,
		[]string{"part 2"}, "Bench"},
}

// TestReadmePictures goes where the README's pictures are taken.
func TestReadmePictures(t *testing.T) {
	var l learner
	ratio := 0.0
	for _, c := range readmePictures {
		if c.screen.Ratio != ratio { // an open page would load itself again
			l, ratio = learner{Page: Open(t, Visit{Screen: c.screen})}, c.screen.Ratio
		}
		l.SetScreen(c.screen)
		l.Started()
		l.Eval(fmt.Sprintf(`window.addEventListener("pagehide", () => localStorage.setItem("partialcredit.progress", %q), {capture: true})`, c.kept), nil)
		l.Reload()
		l.Started()
		for _, id := range c.press {
			l.press(id)
		}
		l.Wait(fmt.Sprintf(`(document.querySelector('#mirror h1').textContent + document.querySelector('#mirror [role=status]').textContent).includes(%q)`, c.says), 5*time.Second)
		l.settle()
		l.Screenshot(c.name + ".png")
	}
}
