//go:build !js

package main_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// refuseLatency makes an error of the question that Firefox can hang at (web/audio.js): by chance it
// might answer here.
const refuseLatency = `
for (const name of ['outputLatency', 'getOutputTimestamp'])
	Object.defineProperty(AudioContext.prototype, name, { get() { throw new Error('Firefox was asked for its ' + name); } });`

// TestFirefoxPlaysAnExercise works on an exercise in Firefox: it hears the target, which agrees with
// the native rendering in third-octave bands, sets the rulers by touch, hands in by a key, gets the
// marks that the native computation gives, and finds its progress kept.
func TestFirefoxPlaysAnExercise(t *testing.T) {
	s := sheet.Matches()
	e := &s.Exercises[1]
	k := at(e.ID)
	k.Hinted = false
	f := openFox(t, Screen{1180, 820, 1, true}, k.script(), refuseLatency)
	f.started()

	f.Tap("target")
	f.Tap("comfortable")
	f.hears(synth.Program{Items: []synth.Item{{Sound: e.Target, Gain: 1}}, Gap: 0.25})
	f.Tap("target")
	for i := range e.Controls {
		c := &e.Controls[i]
		b := f.box(fmt.Sprintf("control %d", i))
		at := func(v float64) Point { // the scale runs 14 px inside its box
			return Point{b.X + 14 + (v-c.Min)/(c.Max-c.Min)*(b.Width-28), b.Y + b.Height/2}
		}
		from, to := at(c.Start), at(c.Get(&e.Target))
		f.Drag("touch", from, Point{(from.X + to.X) / 2, from.Y}, to)
	}
	f.Press("h")
	f.Wait(`document.querySelector('#mirror [role=status]').textContent.includes("marks of 100")`, limit)
	f.Wait(`JSON.parse(localStorage.getItem("partialcredit.progress")).page === "marked"`, 5*time.Second)

	var status, text string
	f.Eval(`document.querySelector('#mirror [role=status]').textContent`, &status)
	f.Eval(`localStorage.getItem("partialcredit.progress")`, &text)
	var kept struct{ Settings []float64 }
	if err := json.Unmarshal([]byte(text), &kept); err != nil || len(kept.Settings) != len(e.Controls) {
		t.Fatalf("Firefox keeps %s: %v", text, err)
	}
	yours := e.Target
	for i := range e.Controls {
		e.Controls[i].Set(&yours, kept.Settings[i])
	}
	native := mark.Prepare(e.Target).Mark(yours, markedBy(t, e.ID)).Marks
	var shown float64
	if _, err := fmt.Sscanf(status, "%f marks of 100.", &shown); err != nil || math.Abs(shown-native) > 1 {
		t.Errorf("Firefox says %q, the native computation gives %.2f marks", status, native)
	}
	if native < 60 {
		t.Errorf("the ruler did not follow the finger: %v, %.1f marks", kept.Settings, native)
	}
	t.Logf("%v marks", shown)
}

// started waits until the app can draw.
func (f *fox) started() {
	f.t.Helper()
	f.Wait(`performance.getEntriesByName("partialcredit.started").length > 0 || document.querySelector("#loading-problem p")`, limit)
	var problem string
	f.Eval(`(document.querySelector("#loading-problem") || { textContent: "" }).textContent`, &problem)
	if problem != "" {
		f.t.Fatalf("the app does not start in Firefox; the page says: %s", problem)
	}
}

// hears compares a round of the program, which is played again and again, with the native rendering,
// up to four times: on a busy machine there may be gaps in one.
func (f *fox) hears(program synth.Program) {
	f.t.Helper()
	f.Wait("soundTap.counts().sounding > 0", 15*time.Second)
	want := oneRound(program)
	off := math.Inf(1)
	for range 4 {
		f.Eval("soundTap.forget()", nil)
		f.Wait(fmt.Sprintf("soundTap.counts().frames >= %d", len(want)+4800), 30*time.Second)
		var newest recorded
		f.Eval(fmt.Sprintf("soundTap.newest(%d)", len(want)), &newest)
		got, err := newest.sound(48000)
		if err != nil {
			f.t.Fatal(err)
		}
		if off = bandsApart(want, got.Left); off <= 0.1 {
			f.t.Logf("third-octave bands agree to %.3f dB", off)
			return
		}
	}
	var state string
	f.Eval(`partialCredit.audio.state() + ", engine " + partialCredit.engine.state()`, &state)
	f.t.Errorf("a third-octave band of what left Firefox's audio graph is %.1f dB off the target's (%s)", off, strings.TrimSpace(state))
}
