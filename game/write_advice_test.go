package game

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"partialcredit/game/advice"
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// rest lets time pass until nothing goes on any more.
func (w *writer) rests() (ticks int) {
	w.t.Helper()
	for !w.Idle() {
		if ticks++; ticks > 3000 {
			w.t.Fatal("it does not come to rest")
		}
		before := w.marked()
		w.pass()
		if n := w.marked() - before; n > 1 {
			w.t.Fatalf("%d sounds in one tick", n)
		}
	}
	return ticks
}

// marked is how many sounds were marked by the adviser at work.
func (w *writer) marked() int {
	if w.advised.adviser == nil {
		return 0
	}
	return w.advised.adviser.Marks()
}

// met is a writer before an exercise whose start is its target.
func met(t *testing.T) *writer {
	w := newWriter(t)
	s := synth.Default()
	s.A.Shape, s.A.Duty, s.Seconds = synth.Pulse, 0.2, 0.5
	w.onto(s)
	w.press("teacher")
	w.press("new sheet")
	w.typed("sheet title", "Advice")
	w.press("side 0")
	w.press("add")
	w.press("tab 3")
	w.pull("start", 0.2)
	return w
}

// Advice comes by itself while the page rests, is what package advice says, can be
// followed, and then is gone; the page comes to rest.
func TestAdviceComesAndIsFollowed(t *testing.T) {
	w := met(t)
	for range 25 {
		w.pass() // less than half a second after the last touch
	}
	if w.advised.adviser != nil {
		t.Error("advice is sought while someone writes")
	}
	if w.Idle() {
		t.Error("it rests before there is advice")
	}
	w.rests()
	w.press("tab 4")
	w.rests()
	found, all := w.adviceOn(0)
	if !all || len(found) == 0 || found[0].Rule != advice.Met || found[0].Weight != advice.Mistake {
		t.Fatalf("advice: %v", found)
	}
	want := advice.Advise(w.written().Sheet(), 0)
	if len(want) != len(found) {
		t.Errorf("%d pieces of advice, the whole has %d", len(found), len(want))
	}
	for i := range want {
		if got, want := fmt.Sprint(found[i]), fmt.Sprint(want[i]); got != want {
			t.Errorf("advice %d is %s, want %s", i, got, want)
		}
	}
	if !strings.Contains(drawn(w.Game), "Mistake:") {
		t.Errorf("not drawn: %s", drawn(w.Game))
	}
	w.press("follow 0")
	w.rests()
	if found, _ := w.adviceOn(0); slices.ContainsFunc(found, func(a advice.Advice) bool { return a.Rule == advice.Met }) {
		t.Errorf("followed, and still: %v", found)
	}
	w.press("undo")
	w.rests()
	if found, _ := w.adviceOn(0); len(found) == 0 || found[0].Rule != advice.Met {
		t.Errorf("undone: %v", found)
	}
	w.press("sheet page")
	w.rests()
	if note := w.find("line 0").Note; !strings.HasSuffix(note, "!!") {
		t.Errorf("the sheet says %q of it", note)
	}
}

// Nothing is worked out while something sounds or lies over the page, nor on what
// cannot be worked.
func TestAdviceWaits(t *testing.T) {
	w := met(t)
	w.press("hear")
	for range 60 {
		w.pass()
	}
	if w.advised.adviser != nil {
		t.Error("while something sounds")
	}
	w.press("hear")
	w.over = note
	for range 60 {
		w.pass()
	}
	if w.advised.adviser != nil {
		t.Error("while something lies over the page")
	}
	w.over = noOverlay
	w.press("tab 1")
	w.typed("title", "")
	w.now += time.Second
	if w.rests() > 60 || len(w.advised.known) > 0 {
		t.Error("on what is unfinished")
	}
	if text, _ := draft.Missing(w.drafted()); !strings.Contains(drawn(w.Game), text.String()[:20]) {
		t.Errorf("it is not said what is missing: %s", drawn(w.Game))
	}
}

// A change in the middle of the advice begins anew, on what there is now.
func TestAdviceBeginsAnew(t *testing.T) {
	w := met(t)
	for w.marked() < 3 {
		w.pass()
	}
	w.pull("start", 0.5)
	w.rests()
	found, all := w.adviceOn(0)
	if !all || slices.ContainsFunc(found, func(a advice.Advice) bool { return a.Rule == advice.Met }) {
		t.Errorf("advice: %v", found)
	}
	if s := w.written().Sheet(); s.Exercises[0].Controls[0].Start != 0.5 {
		t.Error("the change is lost")
	}
}

func drawn(g *Game) (all string) {
	for _, text := range g.scene.Texts {
		all += text.String + " "
	}
	return all
}

// The advice in the app is what desk check says of the same sheet, which asks [advice.Advise]:
// also of targets that are drawn for learners, and of one exercise of several.
func TestAdviceIsThatOfTheDesk(t *testing.T) {
	const sheetText = `{"version": 1, "title": "Widths", "strictness": "beginner", "vary": true, "exercises": [
 {"id": "one", "title": "How wide is it?", "task": "Set the duty.", "teach": "Wider is fuller.", "target": {"version": 1, "seconds": 0.5, "a": {"shape": "pulse", "duty": 0.2}}, "controls": [{"set": ["a.duty"], "min": 0.1, "max": 0.5, "start": 0.2}]},
 {"id": "two", "title": "Wie breit?", "task": "Set the duty.", "teach": "Wider is fuller.", "target": {"version": 1, "seconds": 0.5, "a": {"shape": "pulse", "duty": 0.2}}, "controls": [{"set": ["a.duty"], "min": 0.1, "max": 0.5, "start": 0.35, "draw": [0.2, 0.5]}]}]}`
	s, err := sheet.Parse([]byte(sheetText))
	if err != nil {
		t.Fatal(err)
	}
	w := newWriter(t)
	w.press("teacher")
	w.openSheet(File{Name: "widths.json", Data: []byte(sheetText)})
	w.rests()
	drawn := 0
	for i := range s.Exercises {
		all := advice.Advise(s, i)
		for j := range all {
			all[j].Exercise = 0 // the app advises on a sheet of this exercise alone
		}
		want := fmt.Sprint(all)
		found, done := w.adviceOn(i)
		if got := fmt.Sprint(found); !done || got != want {
			t.Errorf("exercise %d: %s\nthe desk says %s", i+1, got, want)
		}
		drawn += strings.Count(want, "drawn for learners")
	}
	if drawn == 0 {
		t.Error("nothing is said of drawn targets")
	}
}
