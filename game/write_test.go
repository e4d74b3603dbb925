package game

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// writer is a teacher at a screen.
type writer struct {
	*Game
	t    testing.TB
	now  time.Duration
	w, h float64
}

func newWriter(t testing.TB) *writer {
	w := &writer{Game: New(sheet.Course(), nil, roughly), t: t, w: 390, h: 844}
	w.gauge, w.kept.Hinted = unheard, true
	w.pass()
	return w
}

func (w *writer) pass(events ...ui.Event) {
	w.now += time.Second / 60
	w.Update(Input{Now: w.now, W: w.w, H: w.h, Heard: Heard{Item: -1}, Random: 7, Events: events, Date: time.Date(2026, 3, 2, 17, 0, 0, 0, time.UTC)})
}

// press presses a widget that must be on the screen, in whatever part of the page.
func (w *writer) press(id string) {
	w.t.Helper()
	w.find(id)
	w.pass(ui.Event{Kind: ui.Press, Widget: id})
}

func (w *writer) find(id string) *ui.Widget {
	w.t.Helper()
	for range 20 {
		for i := range w.scene.Widgets {
			if x := &w.scene.Widgets[i]; x.ID == id {
				if x.Disabled {
					w.t.Fatalf("%s is disabled", id)
				}
				return x
			}
		}
		before := w.part
		w.act(ui.Action{Widget: "later"})
		w.pass()
		if w.part == before {
			w.act(ui.Action{Widget: "earlier"})
			w.part = 0
			w.dirty = true
			w.pass()
		}
	}
	w.t.Fatalf("there is no %q on page %s: %v", id, pageNames[w.page], ids(w.Game))
	return nil
}

func ids(g *Game) (all []string) {
	for _, w := range g.scene.Widgets {
		all = append(all, w.ID)
	}
	return all
}

func (w *writer) typed(id, text string) {
	w.t.Helper()
	w.find(id)
	w.pass(ui.Event{Kind: ui.Typed, Widget: id, Text: text})
}

func (w *writer) pull(id string, v float64) {
	w.t.Helper()
	w.find(id)
	w.pass(ui.Event{Kind: ui.SetValue, Widget: id, Value: v})
}

// onto puts a sound on the bench.
func (w *writer) onto(s synth.Sound) { w.kept.Bench = &s }

// again is the program started anew with what was kept.
func (w *writer) again() *writer {
	other := &writer{Game: New(sheet.Course(), w.Save(), roughly), t: w.t, w: w.w, h: w.h}
	other.gauge = unheard
	if !other.Unfile(w.File()) {
		w.t.Fatal("what was kept could not be read")
	}
	other.pass()
	return other
}

// A sheet is written by pressing and typing, from a sound on the bench to what is
// handed out; what was written is what was meant.
func TestASheetIsWritten(t *testing.T) {
	w := newWriter(t)
	pulse := synth.Default()
	pulse.A.Shape, pulse.A.Duty = synth.Pulse, 0.2
	w.onto(pulse)
	w.press("bench")
	w.press("make")
	w.press("of 0")
	w.press("into 0")
	w.press("make it")
	if w.page != draftPage {
		t.Fatalf("on page %s", pageNames[w.page])
	}
	e := w.drafted()
	if e.Title != "Which duty is it?" || e.Task == "" || e.Teach == "" {
		t.Errorf("suggested: %q, %q, %q", e.Title, e.Task, e.Teach)
	}
	if _, ok := draft.Missing(e); !ok {
		t.Error("what was made of a sound is not finished")
	}
	w.press("tab 1")
	w.typed("title", "How narrow is it?")
	w.press("tab 3")
	w.pull("lowest", 0.1)
	w.pull("highest", 0.5)
	w.pull("start", 0.45)
	w.press("sheet page")
	w.press("side 1")
	w.typed("sheet title", "Pulses")
	w.press("for 1")
	w.press("vary")
	w.press("side 0")
	w.press("give")
	if w.page != givePage || w.giving == nil {
		t.Fatalf("not handed out: page %s, %s", pageNames[w.page], w.say)
	}
	s, err := sheet.Parse(w.giving.JSON())
	if err != nil {
		t.Fatal(err)
	}
	c := s.Exercises[0].Controls[0]
	if s.Title != "Pulses" || s.Strictness != sheet.Practised || !s.Vary || s.Exercises[0].Title != "How narrow is it?" ||
		s.Exercises[0].Target != pulse || c.Fields[0] != "a.duty" || c.Min != 0.1 || c.Max != 0.5 || c.Start != 0.45 {
		t.Errorf("written: %s", s.Readable())
	}
}

// All kinds, from the bench, in few touches.
func TestEveryKindIsWritten(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.press("new sheet")
	w.typed("sheet title", "All kinds")
	w.press("side 0")
	for i, k := range draft.Kinds {
		s := benchStart()
		w.onto(s)
		w.press("add")
		w.press(fmt.Sprintf("kind %d", i))
		switch k {
		case sheet.Name:
			s.A.Shape = synth.Sine
			w.onto(s)
			w.press("tab 2")
			w.press("more answers")
		case sheet.Same:
			s.B.Cents = 30
			w.onto(s)
			w.press("tab 2")
			w.press("more pairs")
			if e := w.drafted(); e.Pairs[0].Same {
				t.Error("7 and 30 cents of detune are said to be the same")
			}
			s = e0(w).Pairs[0].One
			s.A.Phase = 0.5
			w.onto(s)
			w.press("from bench 2")
			if !e0(w).Pairs[0].Same {
				t.Error("phases are said to be heard")
			}
		}
		if text, ok := draft.Missing(w.drafted()); !ok {
			t.Errorf("%s: %s", k, text)
		}
		w.press("sheet page")
	}
	w.press("give")
	if w.giving == nil || len(w.giving.Exercises) != len(draft.Kinds) {
		t.Fatalf("not handed out: %s", w.say)
	}
	for i, k := range draft.Kinds {
		if w.giving.Exercises[i].Kind != k {
			t.Errorf("exercise %d is a %s, want %s", i+1, w.giving.Exercises[i].Kind, k)
		}
	}
}

func e0(w *writer) *sheet.Exercise { return w.drafted() }

// What is written survives a reload with the page one was on; undo goes back letter by
// letter of what was done, and redo forward again.
func TestWritingSurvivesAReload(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.press("new sheet")
	w.press("side 0")
	w.press("add")
	w.press("tab 1")
	w.typed("title", "")
	if text, ok := draft.Missing(w.drafted()); ok || !strings.Contains(text.String(), "title") {
		t.Errorf("an empty title: %v", text)
	}
	before := string(w.written().Sheet().JSON())
	r := w.again()
	if r.page != draftPage || r.cabinet.Desk.Tab != tabTexts || string(r.written().Sheet().JSON()) != before {
		t.Errorf("on page %s with %s", pageNames[r.page], r.written().Sheet().JSON())
	}
	r.typed("title", "A")
	r.typed("title", "Ab")
	r.typed("task text", "B")
	r.press("undo")
	r.press("undo")
	if got := r.drafted(); got.Title != "" {
		t.Errorf("after two undos the title is %q", got.Title)
	}
	r.press("redo")
	if got := r.drafted(); got.Title != "Ab" {
		t.Errorf("after redo the title is %q", got.Title)
	}
	r.press("sheet page")
	r.press("remove")
	if len(r.written().Sheet().Exercises) != 0 {
		t.Error("not removed")
	}
	r.press("undo")
	if len(r.written().Sheet().Exercises) != 1 {
		t.Error("the removal is not undone")
	}
	r.press("teacher")
	r.press("remove sheet")
	r = r.again()
	r.press("restore sheet")
	if len(r.cabinet.Written) != 1 || len(r.written().Sheet().Exercises) != 1 {
		t.Error("the sheet has not come back")
	}
}

// Trying leaves nothing in the learner's progress, and a reload comes back to writing.
func TestTryingLeavesNothing(t *testing.T) {
	w := newWriter(t)
	w.press("sheet 0")
	w.press("course")
	w.press("teacher")
	w.press("new sheet")
	w.press("side 0")
	w.press("add")
	before := string(w.Save())
	w.press("try")
	if w.page != working || len(w.course) != 1 {
		t.Fatalf("on page %s", pageNames[w.page])
	}
	w.press("hand in")
	if w.page != marked || len(w.kept.Marks) != 1 {
		t.Errorf("on page %s with %v", pageNames[w.page], w.kept.Marks)
	}
	if got := string(w.Save()); got != before {
		t.Errorf("kept while trying: %s\nbefore: %s", got, before)
	}
	if r := w.again(); r.page != draftPage {
		t.Errorf("a reload while trying leads to %s", pageNames[r.page])
	}
	w.press("untry")
	if w.page != draftPage || string(w.Save()) != before || len(w.course) != len(sheet.Course()) {
		t.Errorf("back on %s: %s", pageNames[w.page], w.Save())
	}
}

// A sound goes to the bench and comes back.
func TestASoundGoesToTheBenchAndBack(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.press("new sheet")
	w.press("side 0")
	w.press("add")
	w.press("to bench")
	if w.page != benchPage {
		t.Fatal("not on the bench")
	}
	w = w.again()
	w.work.yours.B.Cents = 33
	w.press("bring")
	if w.page != draftPage || w.drafted().Target.B.Cents != 33 {
		t.Errorf("on %s with %v cents", pageNames[w.page], w.drafted().Target.B.Cents)
	}
}

// Files that are no sheets are refused with a sentence; a sheet is taken.
func TestSheetsAreOpened(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	w.press("open sheet")
	if wishes := w.Wishes(); len(wishes) != 1 || wishes[0].Purpose != "sheet" {
		t.Fatalf("wished %v", wishes)
	}
	for _, f := range []File{{"a.json", nil}, {"b.json", []byte("{")}, {"c.json", []byte(`{"version": 1, "title": "T", "exercises": []}`)}} {
		w.over, w.say = noOverlay, ""
		w.Opened("sheet", []File{f})
		if w.over != note || !strings.HasSuffix(w.say, ".") || len(w.cabinet.Written) != 0 {
			t.Errorf("%s: %q", f.Name, w.say)
		}
	}
	w.over = noOverlay
	for i, s := range sheet.Course() {
		w.Opened("sheet", []File{{"d.json", s.Readable()}})
		if w.page != writePage || len(w.cabinet.Written) != i+1 || string(w.written().Sheet().JSON()) != string(s.JSON()) {
			t.Errorf("%s was not taken as it is", s.Title)
		}
	}
	r := w.again()
	for i, s := range sheet.Course() {
		if string(r.cabinet.Written[i].Sheet().JSON()) != string(s.JSON()) {
			t.Errorf("%s is not kept as it is", s.Title)
		}
	}
}

// Whatever is pressed, pulled and typed, nothing breaks, and a draft either parses or
// says what is missing; kept and read it is the same.
func TestWritingAtRandom(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(1, 2))
	w := newWriter(t)
	w.press("teacher")
	steps := 2000
	seen := map[page]int{}
	for i := range steps {
		seen[w.page]++
		if w.page != teacherPage && w.page != writePage && w.page != draftPage && w.page != makePage && w.page != benchPage && (!w.trial.on || random.IntN(3) == 0) {
			w.endTrial()
			w.over = noOverlay
			w.show([]page{teacherPage, writePage, draftPage, benchPage}[random.IntN(4)])
			if w.page == benchPage {
				w.openBench()
			}
			w.pass()
		}
		all := w.scene.Widgets
		x := all[random.IntN(len(all))]
		e := ui.Event{Kind: ui.Press, Widget: x.ID}
		switch x.Role {
		case ui.Ruled:
			e.Kind, e.Value = ui.SetValue, x.Ruler.At(random.Float64()*1.2-0.1)
		case ui.Written:
			e.Kind, e.Text = ui.Typed, []string{"", "x", "Grün? ", strings.Repeat("long ", 60), "a\nb\"\\"}[random.IntN(5)]
		}
		w.pass(e)
		w.Wishes()
		if d := w.written(); d != nil {
			text, _, ok := draft.MissingOfSheet(d.Sheet())
			_, err := sheet.Parse(d.Sheet().JSON())
			if ok != (err == nil) {
				t.Fatalf("step %d, %s: complete %v (%s), but %v: %s", i, x.ID, ok, text, err, d.Sheet().Readable())
			}
			if !ok && strings.HasPrefix(text.Format, "%s") {
				t.Fatalf("step %d, %s: no sentence for %v", i, x.ID, err)
			}
		}
		if i%50 == 0 {
			r := w.again()
			if string(r.File()) != string(w.File()) {
				t.Fatalf("step %d: kept\n%s\nread\n%s", i, w.File(), r.File())
			}
		}
	}
	t.Log(seen)
	for _, p := range []page{teacherPage, writePage, draftPage, makePage, benchPage} {
		if seen[p] == 0 {
			t.Errorf("never on page %s", pageNames[p])
		}
	}
}
