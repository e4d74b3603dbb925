package game

import (
	"strings"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// session is one set of practice.
type session struct {
	on           bool
	began        time.Duration
	last         string // what was asked, by its key in the boxes
	asked, right int
	rested       bool // the set is over, or was
}

func (s *session) count(right bool) {
	s.asked++
	if right {
		s.right++
	}
}

// A key of the boxes is the id of an exercise and, where its questions ask after
// several things, which of them.
func key(e *sheet.Exercise, item string) string {
	if item == "" {
		return e.ID
	}
	return e.ID + "/" + item
}

// beginPractice begins a set, or goes on with the one that the page was loaded anew in.
func (g *Game) beginPractice() {
	g.session = session{on: true, began: g.in.Now}
	if k := g.keptSet(); k != nil {
		g.session = session{on: true, began: g.in.Now - time.Duration(k.Seconds*float64(time.Second)), last: k.Last, asked: k.Asked, right: k.Right}
	}
	g.kept.Set = nil
	g.practise()
}

// practise asks what is to be asked next, or ends the set.
func (g *Game) practise() {
	if g.page == marked {
		g.session.count(g.work.marks >= matched)
	}
	g.kept.forget(func(key string) bool { _, _, ok := g.item(key); return !ok })
	next, rest := g.kept.Boxes.Next(&g.kept.Confused, practice.Moment{
		Day: g.today(), Spent: g.in.Now - g.session.began, Last: g.session.last,
	}, part(g.in.Random))
	if next == "" || rest && g.session.asked > 0 {
		g.endPractice()
		return
	}
	g.session.last = next
	at, item, _ := g.item(next)
	e := &g.course[at.sheet].Exercises[at.exercise]
	if e.Kind == sheet.Match {
		g.leave()
		g.show(practicePage)      // so that nothing is left twice
		delete(g.kept.Left, e.ID) // from the start, not from where it was solved
		g.open(at)
		return
	}
	g.leave()
	g.at = at
	q, _ := ask.About(e, item, g.in.Random)
	g.asking = asking{}
	g.ask(q)
	if g.session.asked > 0 {
		g.listen()
	}
}

func (g *Game) endPractice() {
	s := g.session
	g.show(practicePage)
	g.session = session{asked: s.asked, right: s.right, rested: s.asked > 0}
	if s.asked > 0 {
		g.say = g.practised()
	}
}

// item finds what a key of the boxes asks after.
func (g *Game) item(key string) (at place, item string, ok bool) {
	id, item, questions := strings.Cut(key, "/")
	if at, ok = g.find(id); !ok || at.sheet >= g.built {
		ok = false
		return
	}
	e := &g.course[at.sheet].Exercises[at.exercise]
	if !questions {
		return at, "", e.Kind == sheet.Match
	}
	_, ok = ask.About(e, item, 0)
	return at, item, ok
}

func (g *Game) practised() string {
	return g.t("%d of %d right. Ears learn between sets as well as in them: rest now, and come back tomorrow.", g.session.right, g.session.asked)
}

// part is a random number in [0, 1).
func part(random uint64) float64 { return float64(random>>11) / (1 << 53) }
