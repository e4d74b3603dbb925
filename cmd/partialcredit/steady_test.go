//go:build !js

package main_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"strings"
	"testing"
	"time"

	"partialcredit/game/ui"
)

// grabFrames copies what the app has just drawn, while the browser still has it, when a note has
// sounded for as many quanta as are asked for next. A new note starts from the first again.
const grabFrames = `
window.grabs = [];
window.grabAt = [];
const requestFrame = requestAnimationFrame;
window.requestAnimationFrame = f => requestFrame.call(window, time => {
	const before = draws;
	f(time);
	const sounding = soundTap.counts().sounding, next = grabAt[grabs.length];
	if (grabs.length < grabAt.length && sounding < (grabAt[grabs.length - 1] || 0)) grabs.length = 0;
	if (draws === before || next === undefined || sounding < next) return;
	const from = document.querySelector('canvas'), to = document.createElement('canvas'), r = grabRect;
	[to.width, to.height] = [r.W, r.H];
	to.getContext('2d').drawImage(from, r.X, r.Y, r.W, r.H, 0, 0, r.W, r.H);
	grabs.push(to.toDataURL().split(',')[1]);
});`

// inOneNote takes pictures of a rectangle within one note, each after so many quanta of it. It wants a
// screen with a pixel ratio of 1.
func (l *learner) inOneNote(r ui.Rect, quanta ...int) []image.Image {
	l.t.Helper()
	l.Eval(fmt.Sprintf("grabRect = { X: %d, Y: %d, W: %d, H: %d }", int(r.X), int(r.Y), int(r.W), int(r.H)), nil)
	l.Wait("soundTap.counts().sounding === 0", 20*time.Second)
	l.Eval(fmt.Sprintf("grabAt = %v; grabs = []", strings.Join(strings.Fields(fmt.Sprint(quanta)), ",")), nil)
	l.Wait("grabs.length === grabAt.length", limit)
	var grabs [][]byte
	l.Eval("grabs", &grabs)
	var pictures []image.Image
	for _, data := range grabs {
		m, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			l.t.Fatal(err)
		}
		pictures = append(pictures, m)
	}
	return pictures
}

// mostMoved is the share of a trace's pixels that may differ while the sound is steady: mostly none
// do. Beats change five times as many.
const mostMoved = 0.003

func TestSteadySoundStandsStill(t *testing.T) {
	k := at("shape")
	e := exercise(t, "shape")
	k.Settings = []float64{e.Controls[0].Get(&e.Target)} // a sawtooth
	l := resume(t, k, Visit{Before: []string{countFrames, grabFrames}})
	trace := k.scene(Desktop).Trace.Rect
	l.Press("y")
	pictures := l.inOneNote(trace, 180, 560)
	d := differing(pictures[0], pictures[1])
	t.Logf("a second apart %.3f %% of the pixels of a steady trace differ", 100*d)
	if d > mostMoved {
		t.Errorf("the trace of a steady sawtooth moves: %.2f %% of its pixels differ a second later", 100*d)
	}
}

func TestBeatsAreSeen(t *testing.T) {
	k := at("beats")
	k.Page, k.Settings = "marked", []float64{0}
	l := resume(t, k, Visit{Before: []string{countFrames, grabFrames}})
	trace := k.scene(Desktop).Trace.Rect
	l.Press("t")
	pictures := l.inOneNote(trace, 300, 500, 700)
	for i := range pictures[1:] {
		d := differing(pictures[i], pictures[i+1])
		t.Logf("half a second apart %.2f %% of the pixels of a beating trace differ", 100*d)
		if d < 2*mostMoved {
			t.Errorf("the trace of beats stands still: %.3f %% of its pixels differ half a second later", 100*d)
		}
	}
}
