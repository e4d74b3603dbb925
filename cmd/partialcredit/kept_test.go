//go:build !js

package main_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"testing"

	"partialcredit/game"
	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/view"
)

// Kept is the progress that the app keeps on the device; see game/progress.go.
type Kept struct {
	Version   int       `json:"version"`
	Exercise  string    `json:"exercise"`
	Page      string    `json:"page"`
	Settings  []float64 `json:"settings"`
	Uncovered bool      `json:"uncovered"`
	Volume    float64   `json:"volume"`
	Theme     string    `json:"theme"`
	Hinted    bool      `json:"hinted"`
	Name      string    `json:"name,omitempty"`

	Runs    map[string]ask.Run     `json:"runs,omitempty"`
	More    map[string]any         `json:"-"` // whatever else is to be kept
	History []KeptMarks            `json:"history,omitempty"`
	Limits  map[string][]KeptLimit `json:"limits,omitempty"`
}

// KeptMarks are those of one day's work, the day counted from 1970-01-01.
type KeptMarks struct {
	Day      int     `json:"day"`
	Exercise string  `json:"exercise"`
	Marks    float64 `json:"marks"`
}

// KeptLimit is what one run of a limit found.
type KeptLimit struct {
	Day    int     `json:"day"`
	Value  float64 `json:"value"`
	Factor float64 `json:"factor"`
	Found  bool    `json:"found"`
}

// at is the progress of a learner who is in an exercise and has seen the hint.
func at(exercise string) Kept {
	return Kept{Version: 1, Exercise: exercise, Page: "work", Volume: 0.3, Hinted: true}
}

func (k Kept) json() string {
	data, err := json.Marshal(k)
	if err != nil {
		panic(err)
	}
	if k.More == nil {
		return string(data)
	}
	all := map[string]any{}
	if err := json.Unmarshal(data, &all); err != nil {
		panic(err)
	}
	maps.Copy(all, k.More)
	if data, err = json.Marshal(all); err != nil {
		panic(err)
	}
	return string(data)
}

// script leaves the progress on the device before the page first loads.
func (k Kept) script() string {
	return fmt.Sprintf(`if (origin !== "null" && !localStorage.getItem("partialcredit.progress")) localStorage.setItem("partialcredit.progress", %q);`, k.json())
}

// scene lays out natively what a screen shows: where things stand that the page's DOM does not name.
func (k Kept) scene(s Screen) *game.Scene {
	g := game.New(sheet.Course(), []byte(k.json()), view.Measure())
	g.Update(game.Input{W: float64(s.Width), H: float64(s.Height), Heard: game.Heard{Item: -1}})
	return g.Scene()
}

// resume opens the app where a learner left it and waits until it has started.
func resume(t *testing.T, k Kept, v Visit) *learner {
	t.Helper()
	v.Before = append([]string{k.script()}, v.Before...)
	l := &learner{Page: Open(t, v), keyboard: !v.Screen.Touch}
	l.Started()
	return l
}

// whereIs says where in the course an exercise stands: its sheet, and its number there, both from 0.
func whereIs(t testing.TB, id string) (in, number int) {
	t.Helper()
	for i, s := range sheet.Course() {
		for j := range s.Exercises {
			if s.Exercises[j].ID == id {
				return i, j
			}
		}
	}
	t.Fatalf("the course has no exercise %q", id)
	return 0, 0
}

// markedBy is how many just-noticeable steps the sheet of an exercise takes for one.
func markedBy(t testing.TB, id string) float64 {
	t.Helper()
	in, _ := whereIs(t, id)
	return sheet.Course()[in].Strictness.Times()
}

// step runs one part of a test on the same page.
func (l *learner) step(t *testing.T, name string, f func()) {
	t.Run(name, func(t *testing.T) {
		outer := l.t
		l.t = t
		defer func() { l.t = outer }()
		f()
	})
}

// settle lets the app take what was done and draw it: a tick may come two frames later.
func (l *learner) settle() {
	l.t.Helper()
	l.Eval(`new Promise(done => { let n = 6; const next = () => n-- ? requestAnimationFrame(next) : done(); next(); })`, nil)
}

// place is where a ruler stands, 0 to 1, once the app has taken everything.
func (l *learner) place(id string) float64 {
	l.t.Helper()
	l.settle()
	var place float64
	l.Eval(`(e => e.value / e.max)(document.querySelector('`+widget(id)+`'))`, &place)
	return place
}

// attribute is an attribute of a widget's element; empty where it has none.
func (l *learner) attribute(id, name string) string {
	l.t.Helper()
	l.settle()
	var value string
	l.Eval(fmt.Sprintf(`document.querySelector('%s').getAttribute(%q) || ""`, widget(id), name), &value)
	return value
}

func (l *learner) box(id string) ui.Rect {
	l.t.Helper()
	var box struct{ X, Y, Width, Height float64 }
	l.Eval(`document.querySelector('`+widget(id)+`').getBoundingClientRect().toJSON()`, &box)
	return ui.Rect{X: box.X, Y: box.Y, W: box.Width, H: box.Height}
}

// onScale is a point of a ruler: the scale runs 14 px inside its box.
func (l *learner) onScale(id string, place float64) Point {
	l.t.Helper()
	box := l.box(id)
	return Point{X: box.X + 14 + place*(box.W-28), Y: box.Y + box.H/2}
}

func num(v float64) string { return fmt.Sprintf("%g", v) }

// open goes the way from the contents, or from wherever the first of the widgets is, with the Tab key or
// a finger.
func (l *learner) open(ids ...string) {
	l.t.Helper()
	for _, id := range ids {
		l.press(id)
	}
}
