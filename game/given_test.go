package game

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
)

// assignment is a sheet of every kind, as a teacher hands it out: some exercises of the
// course and two matches.
func assignment(vary bool) *sheet.Sheet {
	s := &sheet.Sheet{Version: sheet.Version, Title: "Beats 100 % & more/less", Strictness: sheet.Beginner, Vary: vary}
	for _, c := range sheet.Course() {
		for _, e := range c.Exercises {
			if slices.Contains([]string{"show-duty", "duty", "beats", "four-shapes", "same-looks", "limit-detune"}, e.ID) {
				e.Title = fmt.Sprintf("Wie hört sich das an, wenn man recht genau hinhört und sich Zeit lässt: %d?", len(s.Exercises)+1)
				s.Exercises = append(s.Exercises, e)
			}
		}
	}
	if len(s.Exercises) != 6 {
		panic("an exercise of the course has gone")
	}
	s, err := sheet.Parse(s.JSON()) // as a link brings it
	if err != nil {
		panic(err)
	}
	return s
}

// given gives a player a sheet by its link.
func (p *player) given(s *sheet.Sheet) {
	p.game.kept.Hinted = true
	p.game.Follow("#" + s.Fragment())
	p.tick()
}

// call writes a name where it is asked for, and uses it.
func (p *player) call(name string) {
	p.t.Helper()
	if p.game.page != namePage {
		p.pressID("name it")
	}
	p.tick(ui.Event{Kind: ui.Typed, Widget: "name", Text: name})
	p.pressID("use name")
}

// work does every exercise of the open sheet once, rather badly or rather well.
func (p *player) work(well bool) {
	p.t.Helper()
	g := p.game
	for i := range g.sheet().Exercises {
		e := &g.sheet().Exercises[i]
		p.pressID(numberedID("exercise", i))
		switch e.Kind {
		case sheet.Show:
		case sheet.Match:
			for j := range e.Controls {
				c := &e.Controls[j]
				v := c.Get(&e.Target)
				if !well {
					v = (v + 2*c.Start) / 3
				}
				p.game.touch(j, v+0.000001234567)
			}
			p.pressID("turn")
			p.now += 20 * time.Second
			if !well && i%2 == 0 {
				p.pressID("uncover")
			}
			p.pressID("hand in")
		default:
			for n := 0; g.page != result && n < 200; n++ {
				q := &g.asking.question
				answer := q.Right
				if !well && n%2 == 0 {
					answer = (answer + 1) % len(q.Answers)
				}
				p.now += 3 * time.Second
				p.pressID(numberedID("answer", answer))
				p.pressID("proceed")
			}
			p.tick()
		}
		p.pressID("contents")
	}
}

// slip hands the slip in and reads it as a teacher does.
func (p *player) slip() *slip.Slip {
	p.t.Helper()
	p.game.Wishes()
	if p.game.page != slipPage {
		p.pressID("slip")
	}
	p.pressID("copy")
	w := p.game.Wishes()
	if len(w) != 1 || w[0].Kind != Copy {
		p.t.Fatalf("wishes %v", w)
	}
	s, err := slip.Read("https://example.org/" + w[0].Link)
	if err != nil {
		p.t.Fatal(err)
	}
	return s
}

// checkSlip marks a slip anew, and compares with what the learner was shown.
func checkSlip(t *testing.T, g *Game, s *slip.Slip, sh *sheet.Sheet, tries int) {
	t.Helper()
	if err := s.Fits(sh); err != nil {
		t.Fatalf("%s: %v", s.Name, err)
	}
	drawn := sh.For(s.Name)
	var m slip.Marker
	done := 0
	for i := range drawn.Exercises {
		e := &drawn.Exercises[i]
		if e.Kind == sheet.Show {
			continue
		}
		at := slices.IndexFunc(s.Work, func(w slip.Work) bool { return w.ID == e.ID })
		if at < 0 {
			t.Errorf("%s: %s is not on the slip", s.Name, e.ID)
			continue
		}
		done++
		w := &s.Work[at]
		o := w.Outcome(e, drawn.Strictness.Times(), &m)
		shown := &g.sheet().Exercises[i]
		k := g.kept.Marks[shown.ID]
		if w.Tries != tries || k.Tries != tries {
			t.Errorf("%s: %s: %d tries, shown %d, want %d", s.Name, e.ID, w.Tries, k.Tries, tries)
		}
		if e.Kind == sheet.Limit {
			runs := g.kept.Limits[shown.ID]
			if last := runs[len(runs)-1]; last.Value != o.Limit || last.Found != o.Found {
				t.Errorf("%s: %s: a limit of %v, shown %v", s.Name, e.ID, o.Limit, last)
			}
			continue
		}
		if o.Best != k.Best {
			t.Errorf("%s: %s: %v marks on the slip, shown %v", s.Name, e.ID, o.Best, k.Best)
		}
		if math.IsNaN(o.First) || (e.Kind != sheet.Match) != (o.Table != nil) {
			t.Errorf("%s: %s: %+v", s.Name, e.ID, o)
		}
		if w.Seconds < 15 {
			t.Errorf("%s: %s: %d s", s.Name, e.ID, w.Seconds)
		}
	}
	if done != len(s.Work) {
		t.Errorf("%s: %d exercises on the slip, want %d", s.Name, len(s.Work), done)
	}
}

// A sheet comes by its link, is worked under two names and loaded anew in between; the
// slips give the marks that were shown.
func TestASlipHasTheMarksThatWereShown(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		sheet *sheet.Sheet
	}{{"the same for all", assignment(false)}, {"varying", assignment(true)}, {"sixteen", sixteen(t)[0]}, {"sixteen, varying", func() *sheet.Sheet { s := *sixteen(t)[0]; s.Vary = true; return &s }()}} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := newPlayerOf(t, sheet.Course())
			p.given(c.sheet)
			p.call("Wren  One")
			p.work(false)
			first := p.slip()
			checkSlip(t, p.game, first, c.sheet, 1)
			p.reload()
			if p.game.page != slipPage {
				t.Fatalf("page %s", pageNames[p.game.page])
			}
			p.pressID("contents")
			p.call("robin")
			if done, _, _, _ := p.game.tally(p.game.sheet()); done != 0 {
				t.Error("robin begins with the work of wren")
			}
			p.work(true)
			checkSlip(t, p.game, p.slip(), c.sheet, 1)
			p.pressID("contents")
			p.reload()
			p.call("wren ONE") // the same learner
			p.work(true)
			p.reload()
			s := p.slip()
			checkSlip(t, p.game, s, c.sheet, 2)
			for i, w := range s.Work {
				if fmt.Sprint(w.First.Settings) != fmt.Sprint(first.Work[i].First.Settings) {
					t.Errorf("%s: the first attempt was %v and is %v", w.ID, first.Work[i].First, w.First)
				}
			}
			t.Logf("%d exercises: %d characters", len(s.Work), len(s.Fragment()))
			for key := range p.game.kept.Boxes {
				t.Errorf("%q is in the boxes", key)
			}
		})
	}
}

// What is written into the field for the name is there again after a reload.
func TestANameHalfWrittenIsKept(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	p.given(assignment(false))
	p.pressID("name it")
	p.tick(ui.Event{Kind: ui.Typed, Widget: "name", Text: "Wr"})
	p.reload()
	for _, w := range p.game.Scene().Widgets {
		if w.ID == "name" && w.Text.Value == "Wr" {
			return
		}
	}
	t.Errorf("on the page %s the name is %q", pageNames[p.game.page], p.game.kept.Name)
}
