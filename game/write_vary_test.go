package game

import (
	"math"
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

func pulseOf(duty float64) synth.Sound {
	s := synth.Default()
	s.A.Shape, s.A.Duty, s.Seconds = synth.Pulse, duty, 0.5
	return s
}

// offered presses the one of several alike buttons that bears a name.
func (w *writer) offered(kind, label string) {
	w.t.Helper()
	for range 6 {
		for _, x := range w.scene.Widgets {
			if strings.HasPrefix(x.ID, kind+" ") && x.Label == label {
				w.press(x.ID)
				return
			}
		}
		w.press("later")
	}
	w.t.Fatalf("no %s is called %q", kind, label)
}

// A naming with a sound before its questions and an answer that varies, and a limit with a
// published threshold, are written on the page: what is asked of learners is what was set,
// and it outlives a reload.
func TestReferenceVariationAndThresholdAreWritten(t *testing.T) {
	w := newWriter(t)
	w.onto(pulseOf(0.1))
	w.press("bench")
	w.press("make")
	w.press("of 1")
	w.press("into 0")
	w.press("make it")
	w.press("tab 2")
	w.onto(pulseOf(0.4))
	w.press("more answers")

	w.press("tab 5")
	w.press("item 1")
	w.offered("varies", "Duty of A")
	w.pull("lower 0", 0.35)
	w.pull("upper 0", 0.45)
	w.press("tab 3")
	w.onto(pulseOf(0.25))
	w.press("reference")
	w.onto(pulseOf(0.3))
	w.press("from bench")
	w.press("hear")
	if w.work.yours.A.Duty != 0.3 {
		t.Errorf("what is heard under the questions has a duty of %v", w.work.yours.A.Duty)
	}
	w.press("hear")
	w.press("to bench")
	if w.page != benchPage || w.work.yours.A.Duty != 0.3 {
		t.Errorf("on page %s, duty %v", pageNames[w.page], w.work.yours.A.Duty)
	}
	w.press("bring")
	w.press("sheet page")
	w.press("side 1")
	w.typed("sheet title", "Asked")
	w = w.again()
	e := w.written().Sheet().Exercises[0]
	low, high := math.Inf(1), 0.0
	run := ask.Run{Seed: 5}
	for i := range 60 {
		q := run.Question(&e, i)
		if q.Lead == nil || q.Lead.A.Duty != 0.3 {
			t.Fatalf("before question %d: %+v", i, q.Lead)
		}
		if q.Right == 1 {
			low, high = min(low, q.Sounds[0].A.Duty), max(high, q.Sounds[0].A.Duty)
		} else if q.Sounds[0].A.Duty != 0.1 {
			t.Errorf("the answer that does not vary has a duty of %v", q.Sounds[0].A.Duty)
		}
	}
	if low < 0.35 || high > 0.45 || high-low < 0.05 {
		t.Errorf("the duty varied between %v and %v", low, high)
	}

	w.press("teacher")
	w.press("course")
	w.press("bench")
	w.onto(pulseOf(0.2))
	w.press("make")
	w.press("of 3")
	w.press("into 1")
	w.press("make it")
	w.press("tab 2")
	w.press("published")
	w.pull("published value", 0.01)
	if !strings.Contains(drawn(w.Game), "The published threshold has no source") {
		t.Errorf("it is not said what is missing: %s", drawn(w.Game))
	}
	w.typed("source", "Somebody, Sounds of pulses, 1990")
	w.press("sheet page")
	w = w.again()
	q := w.written().Sheet().Exercises[1].Quantity
	if q.Published == nil || *q.Published != (sheet.Published{Value: 0.01, Source: "Somebody, Sounds of pulses, 1990"}) {
		t.Errorf("published: %+v", q.Published)
	}
	w.press("side 0")
	w.press("give")
	if w.page != givePage {
		t.Errorf("it is not handed out: %s", w.say)
	}
}

// Undo takes each of it back, step by step.
func TestVariationIsUndone(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.newSheet(full())
	w.openDraft(1)
	at := func() string { return string(w.written().Sheet().JSON()) }
	states := []string{at()}
	did := func(f func()) {
		t.Helper()
		f()
		if s := at(); s != states[len(states)-1] {
			states = append(states, s)
			return
		}
		t.Errorf("step %d changes nothing", len(states))
	}
	did(func() { w.press("tab 5"); w.pull("upper 0", 0.9) })
	did(func() { w.pull("lower 0", 0.8) })
	did(func() { w.pull("lower 1", 0.2) })
	did(func() { w.offered("varies", "Duty of A") })
	did(func() { w.press("tab 3"); w.press("reference") })
	w.openDraft(3)
	did(func() { w.press("tab 2"); w.pull("published value", 0.02) })
	did(func() { w.typed("source", "X") })
	did(func() { w.press("published") })
	for i := len(states) - 2; i >= 0; i-- {
		w.press("undo")
		if at() != states[i] {
			t.Errorf("undone to %d it is otherwise", i)
		}
	}
}

// The kind of an exercise that has nothing that varies has no page for it.
func TestTheTabOfVariationGoesWithTheKind(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.newSheet(full())
	w.openDraft(1)
	w.press("tab 5")
	w.press("tab 0")
	w.cabinet.Desk.Tab = tabVary
	w.act(ui.Action{Widget: "kind 0"})
	w.pass()
	if w.cabinet.Desk.Tab != tabKind || w.drafted().Kind != sheet.Match {
		t.Errorf("tab %d of a %s", w.cabinet.Desk.Tab, w.drafted().Kind)
	}
}
