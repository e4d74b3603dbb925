package game

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// TestTheWholeCourse works through every exercise once as a learner would, from the
// contents on by the buttons that go on: sets every match to its target, hears what
// sounds, finds each limit.
func TestTheWholeCourse(t *testing.T) {
	t.Parallel()
	p := newPlayerOf(t, sheet.Course())
	p.game.kept.Hinted = true
	p.game.gauge = unheard // TestQuestionsAreEquallyLoud has the true ones
	ears := rand.New(rand.NewPCG(4, 2026))
	seen := map[string]bool{}
	last := p.game.course[len(p.game.course)-1]
	for p.pressID("sheet 0"); len(seen) < 106 || p.game.page != sheetPage; {
		p.where = p.game.exercise().ID
		if p.game.page == sheetPage {
			p.pressID("go on")
			continue
		}
		id := p.game.exercise().ID
		if seen[id] {
			t.Fatalf("%s comes again after %d exercises", id, len(seen))
		}
		seen[id] = true
		p.workOn(ears)
		p.pressID("next")
	}
	if p.game.sheet() != last {
		t.Errorf("the course ends on %s", p.game.sheet().Title)
	}
	p.pressID("course")
	if !strings.Contains(p.game.Scene().Body, "90 of 90 exercises done, 100 marks on average") {
		t.Errorf("the contents say %q", p.game.Scene().Body)
	}
	size := len(p.game.Save())
	t.Logf("%d exercises, %d bytes of progress", len(seen), size)
	if size > 200_000 {
		t.Errorf("the progress takes %d bytes", size)
	}
	before := p.progress()
	p.reload()
	if after := p.progress(); string(before) != string(after) {
		t.Errorf("a reload changes what is kept")
	}
}

// workOn brings the exercise that lies open to its end.
func (p *player) workOn(ears *rand.Rand) {
	p.t.Helper()
	g, e := p.game, p.game.exercise()
	switch e.Kind {
	case sheet.Show:
		p.pressID("yours")
		for range 3 {
			p.listen()
			p.tick()
		}
		p.written(e.Teach)
	case sheet.Match:
		if g.page != working || g.work.yours != e.Start() {
			p.t.Errorf("%s does not begin at its start", e.ID)
		}
		for i, c := range e.Controls {
			p.tick(ui.Event{Kind: ui.SetValue, Widget: numberedID("control", i), Value: c.Get(&e.Target)})
		}
		p.pressID("hand in")
		if g.page != marked || g.shownMarks() != 100 {
			p.t.Errorf("%s: set like the target, %v marks", e.ID, g.work.marks)
		}
		p.written(e.Teach)
	case sheet.Limit:
		p.findLimit(ears)
		p.written(e.Teach)
	default:
		for n := 0; g.page != result; n++ {
			if n == 41 {
				p.t.Fatalf("%s has no end", e.ID)
			}
			if n == 0 {
				p.pressID("listen")
			}
			p.listen()
			p.tick()
			p.answer("right")
			p.written(g.asking.question.Cue(e))
			p.pressID("proceed")
		}
		if m := g.kept.Marks[e.ID]; m.Last != 100 {
			p.t.Errorf("%s: all right, %v marks", e.ID, m)
		}
		p.written(e.Teach)
	}
}

// findLimit works through a limit as somebody who hears just what is not below a
// threshold, and guesses one of three below it. (How well runs find the threshold of
// a less steady listener is tested in game/practice and game/ask.)
func (p *player) findLimit(ears *rand.Rand) {
	p.t.Helper()
	g, e := p.game, p.game.exercise()
	q := e.Quantity
	threshold := math.Sqrt(q.Start * max(q.Least, q.Start/64)) // well inside
	for n := 0; g.page != result; n++ {
		if n == 51 {
			p.t.Fatalf("%s has no end", e.ID)
		}
		if g.asking.question.Value >= threshold || ears.IntN(3) == 0 {
			p.answer("right")
		} else {
			p.answer("wrong")
		}
		if drawn := p.drawn(); !g.asking.run.Done(e) && strings.Contains(drawn, "ublished") {
			p.t.Errorf("%s: the published threshold is drawn in trial %d", e.ID, n)
		}
		p.pressID("proceed")
	}
	runs := g.kept.Limits[e.ID]
	if len(runs) != 1 || !runs[0].Found || math.Abs(math.Log2(runs[0].Value/threshold)) > 1 {
		p.t.Errorf("%s: found %+v, the listener's threshold is %v", e.ID, runs, threshold)
	}
	if m := g.kept.Marks[e.ID]; m.Best != 0 || m.Last != 0 || m.Tries != 1 {
		p.t.Errorf("%s: a limit has marks: %+v", e.ID, m)
	}
}

// written checks that a text stands on the screen.
func (p *player) written(text string) {
	p.t.Helper()
	if !strings.Contains(p.drawn(), text) {
		p.t.Errorf("%s, %s: not drawn: %s", p.where, pageNames[p.game.page], text)
	}
}
