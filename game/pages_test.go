package game

import (
	"fmt"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// TestEveryPageFits lays out every page with every exercise of the course on every screen and
// in every language: nothing leaves the screen, is too small, or lies over
// another.
func TestEveryPageFits(t *testing.T) {
	t.Parallel()
	for _, language := range []string{"en", "de"} {
		g := New(sheet.Course(), nil, roughly)
		g.Speak([]string{language})
		g.gauge, g.kept.Hinted = unheard, true
		everyPage(g, func(name string) {
			t.Helper()
			for _, s := range screens {
				g.dirty = true
				g.Update(Input{W: s.w, H: s.h, Heard: Heard{Item: -1}, Random: 5, Update: true})
				checkScene(t, fmt.Sprintf("%s %vx%v %s", language, s.w, s.h, name), g.Scene())
				checkWritten(t, fmt.Sprintf("%s %vx%v %s", language, s.w, s.h, name), g)
				checkPressable(t, fmt.Sprintf("%s %vx%v %s", language, s.w, s.h, name), g.Scene())
			}
		})
	}
}

// everyPage turns to every page of the course, with everything on it that a page can
// have, and looks.
func everyPage(g *Game, look func(name string)) {
	press := func(id string) { g.act(ui.Action{Widget: id}) }
	look("contents")
	for i, s := range g.course {
		press(fmt.Sprintf("sheet %d", i))
		look(s.Title)
		for j, e := range s.Exercises {
			press("contents")
			press(fmt.Sprintf("exercise %d", j))
			look(e.ID)
			switch e.Kind {
			case sheet.Show:
				g.work.heard = true
				look(e.ID + " heard")
			case sheet.Match:
			default:
				press("answer 0")
				look(e.ID + " answered")
				for run := &g.asking.run; !run.Done(&s.Exercises[j]); {
					run.Answer(&s.Exercises[j], len(run.Answers)%2)
				}
				press("proceed")
				look(e.ID + " result")
			}
		}
	}
	press("bench")
	for part := range benchParts {
		press(fmt.Sprintf("part %d", part))
		g.set(g.benchRulers(2)[0], 4) // frequency modulation: most of it matters
		look("bench " + benchParts[part].name)
	}
	press("slow")
	look("bench slow")
	press("practice")
	look("practice")
	press("begin")
	look("practice question")
	press("end")
	look("practice over")
	press("progress")
	for view := range 3 {
		press(fmt.Sprintf("view %d", view))
		look(fmt.Sprintf("progress %d", view))
	}
	press("help")
	for part := range g.helpParts() {
		look(fmt.Sprintf("help %d", part))
		press("later")
	}
	press("course")
	for o := volumeHint; o <= importQuestion; o++ {
		g.over = o
		look(fmt.Sprintf("overlay %d", o))
	}
	g.over = noOverlay
	handPages(g, look)
	takePages(g, look)
}

// checkPressable checks that every page has a way back, or on.
func checkPressable(t *testing.T, name string, s *Scene) {
	t.Helper()
	for _, w := range s.Widgets {
		if !w.Disabled && w.Role == ui.Button {
			return
		}
	}
	t.Errorf("%s: nothing can be pressed", name)
}

// checkWritten checks that what has to be read is drawn, and not only said.
func checkWritten(t *testing.T, name string, g *Game) {
	t.Helper()
	if g.over != noOverlay {
		return
	}
	drawn := ""
	for _, text := range g.scene.Texts {
		drawn += text.String + " "
	}
	var needed []string
	switch g.page {
	case working, questionPage, showing:
		needed = []string{g.t(g.exercise().Task)}
		if g.work.heard && g.page == showing {
			needed = append(needed, g.t(g.exercise().Teach))
		}
	case answered:
		needed = []string{g.told()}
	case result:
		needed = []string{g.outcome(), g.t(g.exercise().Teach)}
	case helpPage:
		needed = []string{g.helpParts()[g.part].text}
	case namePage:
		needed = []string{g.scene.Body}
	case slipPage:
		if needed = strings.Split(g.scene.Body, ". ")[:1]; len(g.slip.Work) > 0 {
			needed = []string{g.t(slipHolds)}
		}
		if g.large {
			needed = nil
		}
	case practicePage:
		needed = strings.Split(g.scene.Body, ". ")[:1]
	}
	for _, n := range needed {
		if !strings.Contains(drawn, strings.Join(strings.Fields(n), " ")) {
			t.Errorf("%s: not drawn: %s", name, n)
		}
	}
}
