//go:build !js

package main_test

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"

	"partialcredit/game/sheet"
)

// tabStops walks through the page with the Tab key, from before the app to the button "after" that
// stands behind it, and returns the widgets on the way.
func (l *learner) tabStops() []string {
	l.t.Helper()
	l.Eval(`(() => {
		for (const id of ['before', 'after']) {
			const b = document.getElementById(id) || document.createElement('button');
			b.id = id;
			b.style.position = 'fixed';
			if (id === 'before') document.body.prepend(b); else document.body.append(b);
		}
		document.getElementById('before').focus();
	})()`, nil)
	var stops []string
	for range 40 {
		l.Press("Tab")
		if l.Focused() == "BUTTON#after" {
			return stops
		}
		var at string
		l.Eval(`document.activeElement.dataset.widget || document.activeElement.tagName`, &at)
		stops = append(stops, at)
	}
	l.t.Errorf("the Tab key does not leave the app: %q", stops)
	return stops
}

func TestTabReachesEverything(t *testing.T) {
	l := resume(t, at("octaves"), Visit{})
	check := func(page string, want ...string) {
		t.Helper()
		got := l.tabStops()
		if !slices.Equal(got, want) {
			t.Errorf("on the page of %s the Tab key stops at\n%q, want\n%q", page, got, want)
		}
		l.Press("Tab", input.ModifierShift)
		var last string
		l.Eval(`document.activeElement.dataset.widget || ""`, &last)
		if len(got) > 0 && last != got[len(got)-1] {
			t.Errorf("on the page of %s Shift and Tab come back to %q, want %q", page, last, got[len(got)-1])
		}
	}
	check("work", "control 0", "control 1", "target", "yours", "turn", "record answer", "contents", "uncover", "hand in")
	l.Press("u")
	l.settle()
	check("work, uncovered", "control 0", "control 1", "target", "yours", "turn", "record answer", "contents", "hand in")
	l.Press("h")
	l.Wait(`document.querySelector('`+widget("next")+`')`, limit)
	check("marks", "target", "yours", "turn", "contents", "again", "next")
	numbered := func(name string, n int) (ids []string) {
		for i := range n {
			ids = append(ids, fmt.Sprintf("%s %d", name, i))
		}
		return ids
	}
	l.Press("c")
	l.shows("course")
	sheets := sheet.Course()
	in, _ := whereIs(t, "octaves")
	check("a sheet", append(numbered("exercise", len(sheets[in].Exercises)), "course", "go on")...)
	l.Press("c")
	l.shows("theme")
	check("contents", slices.Concat([]string{"practice", "bench", "recording", "progress", "help", "teacher"}, numbered("sheet", len(sheets)), []string{"volume", "theme", "language"})...)
}

func TestKeysOnARuler(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	const id = "control 0"
	l.tabTo(id)
	start := l.place(id)
	step := func(key string, modifiers ...input.Modifier) float64 {
		t.Helper()
		before := l.place(id)
		l.Press(key, modifiers...)
		return l.place(id) - before
	}
	arrow, fine, page := step("ArrowRight"), step("ArrowRight", input.ModifierShift), step("PageUp")
	if !(0 < fine && fine < arrow && arrow < page) {
		t.Errorf("steps: fine %.4f, arrow %.4f, page %.4f of the scale; want each greater than the last", fine, arrow, page)
	}
	if a, f, p := step("ArrowLeft"), step("ArrowLeft", input.ModifierShift), step("PageDown"); math.Abs(a+arrow) > 1e-6 || math.Abs(f+fine) > 1e-6 || math.Abs(p+page) > 1e-6 {
		t.Errorf("steps back %.4f, %.4f and %.4f, want those forward: %.4f, %.4f, %.4f", a, f, p, arrow, fine, page)
	}
	if up, down := step("ArrowUp"), step("ArrowDown"); up != arrow || math.Abs(down+arrow) > 1e-6 {
		t.Errorf("up and down step by %.4f and %.4f, want %.4f", up, down, arrow)
	}
	if got := l.place(id); math.Abs(got-start) > 1e-6 {
		t.Errorf("there and back the ruler stands at %.4f, at first %.4f", got, start)
	}
	step("End")
	if got := l.place(id); got != 1 {
		t.Errorf("End brings the ruler to %.4f", got)
	}
	step("Home")
	if got := l.place(id); got != 0 {
		t.Errorf("Home brings the ruler to %.4f", got)
	}
	var said string
	l.Eval(`document.querySelector('`+widget(id)+`').getAttribute('aria-valuetext')`, &said)
	if said != "−50.0 cents" {
		t.Errorf("at the lowest end the ruler says %q", said)
	}
}

func TestFocusIsSeen(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	l.settle()
	for _, id := range []string{"control 0", "target", "hand in"} {
		where := around(l.box(id), 8)
		l.Click(Point{3, 3}) // takes the focus away
		l.settle()
		without := l.Picture(where)
		l.tabTo(id)
		l.settle()
		if d := differing(without, l.Picture(where)); d < 0.01 || d > 0.4 {
			t.Errorf("the focus changes %.2f %% of the pixels round %q, want a ring", 100*d, id)
		}
		l.Press("Tab")
		l.settle()
		if d := differing(without, l.Picture(where)); d > 0.002 {
			t.Errorf("after the focus went on, %.2f %% of the pixels round %q differ", 100*d, id)
		}
	}
	where := around(l.box("uncover"), 8)
	l.Click(l.Middle(widget("uncover")))
	l.settle()
	clicked := l.Picture(where)
	l.Click(Point{3, 3})
	l.settle()
	if d := differing(clicked, l.Picture(where)); d > 0.002 {
		t.Errorf("the mouse left a ring: %.2f %% of the pixels", 100*d)
	}
}

func TestLettersPressButtons(t *testing.T) {
	k := at("shape")
	k.Hinted = false
	l := resume(t, k, Visit{})
	pressed := func(id string) string { return l.attribute(id, "aria-pressed") }
	exists := func(id string) string { return `document.querySelector('` + widget(id) + `')` }

	l.Press("t")
	l.Wait(exists("comfortable"), 5*time.Second)
	if l.tabTo("comfortable"); l.Focused() != "BUTTON" {
		t.Errorf("the focus is on %s", l.Focused())
	}
	l.Press("Escape")
	l.Wait(exists("target"), 5*time.Second)
	if pressed("target") != "true" {
		t.Error("Escape on the hint also stopped the target")
	}
	for _, tt := range []struct{ key, id string }{{"y", "yours"}, {"i", "turn"}, {"T", "target"}} {
		l.Press(tt.key)
		if pressed(tt.id) != "true" {
			t.Errorf("%q does not play %s", tt.key, tt.id)
		}
	}
	l.Press("Escape")
	if pressed("target") == "true" {
		t.Error("Escape does not stop the sound")
	}
	l.Press("t")
	if pressed("target") != "true" {
		t.Error("the hint was shown again, or the target is silent")
	}
	l.Press("t")
	if pressed("target") == "true" {
		t.Error("the same letter does not stop it")
	}
	l.Press("t", input.ModifierCtrl)
	if pressed("target") == "true" {
		t.Error("the browser's own key was taken")
	}
	l.Press("u")
	if !l.disabled("uncover") {
		t.Error("u does not uncover")
	}
	l.Press("h")
	l.Wait(exists("again"), limit)
	l.Press("a")
	l.Wait(exists("hand in"), 5*time.Second)
	l.Press("h")
	l.Wait(exists("next"), limit)
	l.Press("n")
	_, i := whereIs(t, "shape")
	l.WaitText("#mirror h1", fmt.Sprintf("%d. ", i+2), 5*time.Second)
	l.Press("c")
	l.Wait(exists("course"), 5*time.Second)
	l.Press("c")
	l.Wait(exists("theme"), 5*time.Second)
}

func (l *learner) disabled(id string) bool {
	l.t.Helper()
	l.settle()
	var disabled bool
	l.Eval(`document.querySelector('`+widget(id)+`').disabled`, &disabled)
	return disabled
}
