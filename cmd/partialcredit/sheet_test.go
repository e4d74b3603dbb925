//go:build !js

package main_test

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// A learner works on the page as a person would: by touch or by keyboard, with
// what the page says and the sound that leaves it.
type learner struct {
	*Page
	keyboard bool
}

// TestExerciseIsPlayed works through one exercise at each size: it hears the
// target, sets the controls, hands in, compares the marks with the native
// computation, goes on, and finds its progress after a reload. Every exercise is
// played without a browser by game's own tests.
func TestExerciseIsPlayed(t *testing.T) {
	for _, c := range []struct {
		name, id string
		screen   Screen
	}{
		{"phone, touch", "octaves", Phone}, // two controls
		{"tablet, touch", "bell", Tablet},
		{"desktop, keyboard", "beats", Desktop},
	} {
		t.Run(c.name, func(t *testing.T) {
			k := at(c.id)
			k.Hinted = false
			l := resume(t, k, Visit{Screen: c.screen})
			l.exercise(exercise(t, c.id), c.name)
			l.press("contents")
			l.Wait(`document.querySelector('`+widget("course")+`') !== null`, 5*time.Second)
			l.Screenshot("sheet, " + c.name + ".png")
			l.progressIsKept()
		})
	}
}

func (l *learner) exercise(e *sheet.Exercise, run string) {
	l.t.Helper()
	const heading = `document.querySelector('#mirror h1').textContent`
	l.Wait(heading+`.endsWith(`+strconv.Quote(e.Title)+`)`, 5*time.Second)
	l.press("target")
	l.Screenshot("hint, " + run + ".png")
	l.press("comfortable")
	l.hears(e.Target, e.ID)
	l.press("target")
	for j := range e.Controls {
		l.set(e, j)
	}
	l.Screenshot(fmt.Sprintf("%s at work, %s.png", e.ID, run))
	l.press("hand in")
	l.WaitText(`#mirror [role=status]`, "marks of 100", 5*time.Second)
	l.Wait(`document.querySelector('[data-widget="next"]') !== null`, 5*time.Second)
	l.Screenshot(fmt.Sprintf("%s marked, %s.png", e.ID, run))

	yours := l.settings(e)
	native := mark.Prepare(e.Target).Mark(yours, markedBy(l.t, e.ID)).Marks
	shown := l.marks()
	l.t.Logf("%s: %v marks shown, %.2f computed natively", e.ID, shown, native)
	if math.Abs(shown-native) > 1 {
		l.t.Errorf("%s: the page shows %v marks, the native computation gives %.2f", e.ID, shown, native)
	}
	if native < 90 {
		l.t.Errorf("%s: the controls could not be set near enough to the target: %.1f marks", e.ID, native)
	}
	l.press("next")
	l.Wait(`!`+heading+`.endsWith(`+strconv.Quote(e.Title)+`)`, 5*time.Second)
}

// settings are the learner's sound, from what the page keeps.
func (l *learner) settings(e *sheet.Exercise) synth.Sound {
	l.t.Helper()
	var text string
	l.Wait(fmt.Sprintf(`(() => { const k = JSON.parse(localStorage.getItem("partialcredit.progress")); return k.exercise === %q && k.page === "marked" })()`, e.ID), 5*time.Second)
	l.Eval(`localStorage.getItem("partialcredit.progress")`, &text)
	var kept struct{ Settings []float64 }
	if err := json.Unmarshal([]byte(text), &kept); err != nil || len(kept.Settings) != len(e.Controls) {
		l.t.Fatalf("%s: the page keeps %s: %v", e.ID, text, err)
	}
	s := e.Target
	for i := range e.Controls {
		e.Controls[i].Set(&s, kept.Settings[i])
	}
	return s
}

var marksShown = regexp.MustCompile(`^(\d+) marks of 100\.`)

func (l *learner) marks() float64 {
	l.t.Helper()
	var text string
	l.Eval(`document.querySelector('#mirror [role=status]').textContent`, &text)
	m := marksShown.FindStringSubmatch(text)
	if m == nil {
		l.t.Fatalf("the page says %q and no marks", text)
	}
	v, _ := strconv.ParseFloat(m[1], 64)
	return v
}

func widget(id string) string { return fmt.Sprintf(`[data-widget=%q]`, id) }

// letters are the keys that press a button wherever the focus is.
var letters = map[string]string{
	"target": "t", "yours": "y", "turn": "i", "hand in": "h", "next": "n", "again": "a", "contents": "c", "course": "c",
	"listen": "l", "proceed": "n", "go on": "n", "begin": "n", "sweep 0": "s", "slow": "m",
	"answer 0": "1", "answer 1": "2", "answer 2": "3", "answer 3": "4",
}

// press presses a button: by touch or, with the keyboard, by its letter or by walking to it.
func (l *learner) press(id string) {
	l.t.Helper()
	l.Wait(`document.querySelector('`+widget(id)+`') !== null`, 5*time.Second)
	key, hasKey := letters[id]
	switch {
	case !l.keyboard:
		l.Tap(l.Middle(widget(id)))
	case hasKey:
		l.Press(key)
	default:
		l.tabTo(id)
		l.Press("Enter")
	}
}

// tabTo walks to a control with the Tab key.
func (l *learner) tabTo(id string) {
	l.t.Helper()
	for range 60 {
		var at string
		l.Eval(`document.activeElement.dataset.widget || ""`, &at)
		if at == id {
			return
		}
		l.Press("Tab")
	}
	l.t.Fatalf("the Tab key does not reach %q", id)
}

// set brings a control to the target's value as near as the hand can.
func (l *learner) set(e *sheet.Exercise, control int) {
	l.t.Helper()
	c := &e.Controls[control]
	f := c.Field()
	id, want := fmt.Sprintf("control %d", control), c.Get(&e.Target)
	place := func(v float64) float64 {
		if f.Log && c.Min > 0 {
			return math.Log(v/c.Min) / math.Log(c.Max/c.Min)
		}
		return (v - c.Min) / (c.Max - c.Min)
	}
	if !l.keyboard {
		// The scale runs 14 px inside the ruler's box.
		var box struct{ X, Y, Width, Height float64 }
		l.Eval(`document.querySelector('`+widget(id)+`').getBoundingClientRect().toJSON()`, &box)
		at := func(v float64) Point {
			return Point{X: box.X + 14 + place(v)*(box.Width-28), Y: box.Y + box.Height/2}
		}
		from, to := at(c.Start), at(want)
		l.Drag(from, Point{X: (from.X + to.X) / 2, Y: from.Y}, to)
		for range 40 {
			off := l.offBy(id, place(want))
			if math.Abs(off) <= 0.5 {
				return
			}
			name := map[bool]string{true: "less", false: "more"}[off > 0]
			l.moves(id, func() { l.Tap(l.Middle(widget(fmt.Sprintf("%s %d", name, control)))) })
		}
		return
	}
	l.tabTo(id)
	l.Press("Home")
	l.Wait(`document.querySelector('`+widget(id)+`').value === "0"`, 5*time.Second)
	for range 200 {
		off := l.offBy(id, place(want))
		switch {
		case off < -25:
			l.moves(id, func() { l.Press("PageUp") })
		case off < -5:
			l.moves(id, func() { l.Press("ArrowRight") })
		case off < -0.5:
			l.moves(id, func() { l.Press("ArrowRight", input.ModifierShift) })
		default:
			return
		}
	}
}

// moves does what must move a ruler, and waits until it has.
func (l *learner) moves(id string, do func()) {
	l.t.Helper()
	var before string
	l.Eval(`document.querySelector('`+widget(id)+`').value`, &before)
	do()
	l.Wait(`document.querySelector('`+widget(id)+`').value !== `+strconv.Quote(before), 5*time.Second)
}

// offBy is how many fine steps a ruler stands above a place on its scale.
func (l *learner) offBy(id string, place float64) float64 {
	l.t.Helper()
	var r struct{ Value, Max float64 }
	l.Eval(`(() => { const e = document.querySelector('`+widget(id)+`'); return {value: +e.value, max: +e.max} })()`, &r)
	if r.Max == 0 {
		l.t.Fatalf("%s has no range", id)
	}
	return r.Value - place*r.Max
}

// hears compares a round of the sound that is played again and again with the native rendering, by its
// levels in third-octave bands: a round is periodic, so it does not matter where the recording begins. A
// machine that is busy with other tests may leave gaps in one round, so it listens up to four times; gaps
// have a test of their own.
func (l *learner) hears(s synth.Sound, what string) {
	l.t.Helper()
	var off float64
	for range 4 {
		if off = l.offFrom(s); off <= 0.1 {
			l.t.Logf("%s: heard; third-octave bands agree to %.3f dB", what, off)
			return
		}
	}
	l.t.Errorf("%s: a third-octave band of what left the audio graph is %.1f dB off the sound's", what, off)
}

// offFrom is the greatest difference of a third-octave band, in decibels, between one round at the audio
// graph's end and the native rendering.
func (l *learner) offFrom(s synth.Sound) (worst float64) {
	l.t.Helper()
	want := oneRound(synth.Program{Items: []synth.Item{{Sound: s, Gain: 1}}, Gap: 0.25})
	round := len(want)
	l.Wait(`soundTap.counts().quanta > soundTap.counts().silent`, 10*time.Second)
	got := l.Hear(time.Duration(float64(round)/48000*float64(time.Second)) + 100*time.Millisecond)
	if got.Rate != 48000 {
		l.t.Fatalf("the audio graph runs at %v Hz", got.Rate)
	}
	for i := range got.Left {
		if got.Left[i] != got.Right[i] {
			l.t.Fatal("the channels differ")
		}
		if math.Abs(float64(got.Left[i])) > 0.5 {
			l.t.Fatalf("a sample of %v is above -6 dBFS", got.Left[i])
		}
	}
	return bandsApart(want, got.Left[:round])
}

// bandsApart is the greatest difference in decibels between the third-octave bands of two sounds, of
// those that are not 40 dB below all.
func bandsApart(want, got []float32) (worst float64) {
	a, b := thirdOctaves(want), thirdOctaves(got)
	for i := range a {
		if a[i] > -40 {
			worst = math.Max(worst, math.Abs(a[i]-b[i]))
		}
	}
	return worst
}

// oneRound is the sound from one start of the first note to the next.
func oneRound(program synth.Program) []float32 {
	p := synth.NewPlayer(48000)
	p.Play(program)
	var sound []float32
	block := make([]float32, 16)
	starts, before := 0, -1
	for starts < 3 {
		p.Render(block, nil)
		item, _ := p.Sounding()
		if item == 0 && before != 0 {
			starts++
		}
		if before = item; starts == 2 {
			sound = append(sound, block...)
		}
	}
	return sound
}

// thirdOctaves are the levels in the third-octave bands from 25 Hz to 16 kHz
// (IEC 61260-1, base ten), in decibels re the sum of all.
func thirdOctaves(x []float32) []float64 {
	bins := spectrumOf(x)
	var out []float64
	sum := 0.0
	for n := -16; n <= 12; n++ {
		centre := 1000 * math.Pow(10, float64(n)/10)
		lo, hi := centre*math.Pow(10, -0.05), centre*math.Pow(10, 0.05)
		power := 0.0
		for k := int(lo * float64(len(x)) / 48000); float64(k)*48000/float64(len(x)) < hi; k++ {
			power += real(bins[k])*real(bins[k]) + imag(bins[k])*imag(bins[k])
		}
		sum += power
		out = append(out, power)
	}
	for i := range out {
		out[i] = 10 * math.Log10(out[i]/sum+1e-12)
	}
	return out
}

// progressIsKept reloads the page and finds the sheet as it was.
func (l *learner) progressIsKept() {
	l.t.Helper()
	var before, after string
	const body = `document.querySelector('#mirror p').textContent`
	l.Eval(body, &before)
	if !strings.HasPrefix(before, "1 of ") {
		l.t.Errorf("the sheet says %q, want one handed in", before)
	}
	l.Wait(`JSON.parse(localStorage.getItem("partialcredit.progress")).page === "sheet"`, 5*time.Second)
	l.Reload()
	l.Started()
	l.Eval(body, &after)
	if before != after {
		l.t.Errorf("after a reload the sheet says %q, before %q", after, before)
	}
}
