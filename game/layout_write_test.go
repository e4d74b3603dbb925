package game

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"partialcredit/game/advice"
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// full is a sheet of every kind with as much in it as there may be.
var full = sync.OnceValue(func() sheet.Sheet {
	long := func(n int) string { return strings.Repeat("Wie klingt das denn? ", 8)[:n] }
	rich := benchStart()
	rich.A.Shape, rich.B.Shape, rich.LFO.Cents, rich.LFO.Duty, rich.LFO.Level, rich.Envelope.A, rich.Amplitude.Sustain = synth.Pulse, synth.Pulse, 30, 0.1, 0.2, 5, 0.5
	s := sheet.Sheet{Title: long(longTitle), Strictness: sheet.Beginner, Vary: true}
	for range 3 {
		for _, k := range draft.Kinds {
			e := draft.Make(k, rich)
			e.ID = fmt.Sprint(len(s.Exercises))
			e.Title, e.Task, e.Teach = long(longTitle), long(longText), long(longText)
			for _, f := range draft.Heard(rich) {
				if (k == sheet.Match || k == sheet.Show) && len(e.Controls) < sheet.MaxControls && !draft.Sets(&e, f.Name) {
					draft.Toggle(&e, f)
				}
			}
			e.Task = long(longTask(&e))
			for i := range sheet.MostAnswers {
				if k == sheet.Name {
					e.Reference = &rich
					e.Answers = append(e.Answers[:min(i, len(e.Answers))], sheet.Answer{Name: fmt.Sprint(i, long(longAnswer-1)), Cue: long(longCue), Sound: rich})
				}
			}
			for i := range mostPairs {
				if k == sheet.Same {
					e.Pairs = append(e.Pairs, sheet.Pair{Name: fmt.Sprint(i, long(longPair-2)), Why: long(longText), One: rich, Other: rich})
				}
			}
			for _, f := range draft.CanVary(rich) {
				draft.ToggleVary(&e, 0, f) // as many as there may be
			}
			if k == sheet.Limit {
				draft.TogglePublished(&e)
				e.Quantity.Published.Source = long(longSource)
			}
			if k != sheet.Match && k != sheet.Show {
				e.Notes = &sheet.Range{40, 60}
			}
			s.Exercises = append(s.Exercises, e)
		}
	}
	return s
})

// writingPages turns to every page of writing, empty and full.
func writingPages(g *Game, look func(name string)) {
	press := func(id string) { g.act(ui.Action{Widget: id}) }
	press("teacher")
	look("teacher, nothing")
	press("bench")
	press("make")
	look("make, nothing")
	press("teacher")
	press("new sheet")
	for part := range 2 {
		press(fmt.Sprintf("side %d", part))
		look(fmt.Sprintf("a new sheet %d", part))
	}
	for range 24 {
		g.newSheet(sheet.Sheet{Title: full().Title})
	}
	g.newSheet(full())
	press("teacher")
	look("teacher")
	press("copy sheet")
	press("remove sheet")
	look("teacher, removed")
	g.cabinet.Desk.Sheet = 25
	press("bench")
	press("make")
	for i := range draft.Kinds {
		press(fmt.Sprintf("of %d", i))
		look(fmt.Sprintf("make %d", i))
	}
	press("teacher")
	press("write")
	for part := range 2 {
		press(fmt.Sprintf("side %d", part))
		look(fmt.Sprintf("write %d", part))
	}
	for i, e := range g.written().Sheet().Exercises[:len(draft.Kinds)] {
		g.openDraft(i)
		for tab := range draftTabs {
			press(fmt.Sprintf("tab %d", tab))
			look(fmt.Sprintf("draft %s %d", e.Kind, tab))
		}
		text := words.Say("Duty of A cannot be heard in this sound: over all of its range it costs no marks. Take it away, or change the sound so that it counts.")
		g.advised.known = map[string][]advice.Advice{g.key(i): {
			{Rule: advice.Met, Control: -1, Weight: advice.Mistake, Text: text},
			{Rule: advice.Unheard, Control: 0, Weight: advice.Warning, Text: text},
			{Rule: advice.Another, Weight: advice.Warning, Text: text, Settings: []float64{1, 1, 1, 1}},
			{Rule: advice.Loud, Weight: advice.Note, Text: text},
		}}
		for tab := range draftTabs {
			press(fmt.Sprintf("tab %d", tab))
			look(fmt.Sprintf("draft %s %d advised", e.Kind, tab))
		}
	}
	g.cabinet.Desk.Tab = tabKind
	press("to bench")
	look("bench of a draft")
	press("draft")
	g.openDraft(0)
	press("try")
	look("tried")
	press("contents")
	look("tried, contents")
	press("untry")
}

// Every page of writing fits on every screen in every language, in all its parts.
func TestWritingPagesFit(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		g := New(sheet.Course(), nil, roughly)
		g.Speak([]string{language})
		g.gauge, g.kept.Hinted = unheard, true
		writingPages(g, func(name string) {
			t.Helper()
			for _, s := range screens {
				for part := range 12 {
					g.part, g.dirty = part, true
					g.Update(Input{W: s.w, H: s.h, Heard: Heard{Item: -1}, Random: 5})
					name := fmt.Sprintf("%s %vx%v %s %d", language, s.w, s.h, name, part)
					checkScene(t, name, g.Scene())
					checkPressable(t, name, g.Scene())
					checkNamed(t, name, g.Scene())
					if g.part != part || !slices.Contains(ids(g), "later") {
						break
					}
				}
			}
			g.part = 0
		})
	}
}

// checkNamed checks that no two widgets have one name, and each says what it is.
func checkNamed(t *testing.T, name string, s *Scene) {
	t.Helper()
	seen := map[string]bool{}
	for _, w := range s.Widgets {
		if seen[w.ID] || strings.TrimSpace(w.Label) == "" {
			t.Errorf("%s: %q is named twice, or says nothing: %q", name, w.ID, w.Label)
		}
		seen[w.ID] = true
	}
}

// Every widget of the pages of writing is acted upon.
func TestEveryWidgetOfWritingDoesSomething(t *testing.T) {
	g := New(sheet.Course(), nil, roughly)
	g.gauge, g.kept.Hinted = unheard, true
	acted := map[string]bool{}
	writingPages(g, func(string) {
		g.dirty = true
		g.Update(Input{W: 820, H: 1180, Heard: Heard{Item: -1}})
		for _, w := range g.scene.Widgets {
			first, _, _ := strings.Cut(w.ID, " ")
			if g.page.written() && !w.Disabled {
				acted[first+fmt.Sprint(w.Role)] = acted[first+fmt.Sprint(w.Role)] || g.understands(w)
			}
		}
	})
	for id, ok := range acted {
		if !ok {
			t.Errorf("%s does nothing", id)
		}
	}
	if len(acted) < 40 {
		t.Errorf("only %d kinds of widget", len(acted))
	}
}

func (p page) written() bool {
	return p == teacherPage || p == writePage || p == draftPage || p == makePage
}

// understands tries a widget on a copy of the game's state and says whether something
// was done: a layout, a wish, a page.
func (g *Game) understands(w ui.Widget) bool {
	other := *g
	other.cabinet = cabinet{}
	if !other.Unfile(g.File()) {
		return false
	}
	other.dirty, other.wishes = false, nil
	a := ui.Action{Widget: w.ID}
	switch w.Role {
	case ui.Ruled:
		a.Moved, a.Value = true, w.Ruler.At(0.37)
	case ui.Written:
		a.Typed, a.Text = true, "another text"
	}
	other.act(a)
	return other.dirty || len(other.wishes) > 0 || other.page != g.page
}
