package game

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/google/go-cmp/cmp"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// remembered is what a script puts aside to compare with later.
type remembered struct {
	link, file string
	progress   []byte
	question   string
}

// reload is the page loaded again.
func (p *player) reload() {
	p.game = New(p.course, p.game.Save(), roughly)
	p.game.gauge = gaugeOnce
	p.speaker = synth.NewPlayer(Rate)
	p.heard.Item = -1
	p.now = 0 // the clock of a page begins with it
	p.tick()
}

// study does the lines that belong to the whole course.
func (p *player) study(verb, rest string) {
	p.t.Helper()
	switch verb {
	case "course":
		p.course = sheet.Course()
		p.game = New(p.course, nil, roughly)
		p.game.gauge = gaugeOnce
		p.tick()
	case "open":
		p.open(rest)
	case "listen":
		p.listenToQuestion()
	case "answer":
		p.answer(rest)
	case "hear":
		p.hearDownTo(p.number(strings.TrimPrefix(rest, "down to ")))
	case "pass":
		p.now += time.Duration(p.number(rest) * float64(time.Minute))
		p.tick(ui.Event{Kind: ui.Focus}) // somebody is there
	case "day":
		p.date = p.date.AddDate(0, 0, int(p.number(rest)))
		p.tick()
	case "remember":
		p.kept.progress, p.kept.question = p.progress(), p.question()
	case "take":
		p.take(rest)
	case "follow":
		link := map[string]string{"link": p.kept.link}[rest]
		if link == "" {
			link = rest
		}
		p.game.Follow(link)
		p.tick()
	case "import":
		data := []byte(p.kept.file)
		if rest != "" {
			data = []byte(rest)
		}
		p.game.Import(data)
		p.tick()
	default:
		p.t.Fatalf("%s: what is %q?", p.where, verb)
	}
}

// open goes to an exercise by the contents.
func (p *player) open(id string) {
	p.t.Helper()
	at, ok := p.game.find(id)
	if !ok {
		p.t.Fatalf("%s: no such exercise", p.where)
	}
	for range 3 { // back to the list of sheets
		if p.game.page == contents {
			break
		}
		for _, back := range []string{"end", "contents", "course"} {
			if p.has(back) {
				p.pressID(back)
				break
			}
		}
	}
	p.pressID(numberedID("sheet", at.sheet))
	p.pressID(numberedID("exercise", at.exercise))
}

func (p *player) has(id string) bool {
	return slices.ContainsFunc(p.game.Scene().Widgets, func(w ui.Widget) bool { return w.ID == id && !w.Disabled })
}

// pressID presses a button by its name in the program, turning the parts of a page
// where it lies on another.
func (p *player) pressID(id string) {
	p.t.Helper()
	for !p.has(id) && p.has("later") {
		p.tick(ui.Event{Kind: ui.Press, Widget: "later"})
	}
	if !p.has(id) {
		p.t.Fatalf("%s: %s cannot be pressed on the page %s", p.where, id, pageNames[p.game.page])
	}
	p.tick(ui.Event{Kind: ui.Press, Widget: id})
}

// listenToQuestion listens to a question to its end.
func (p *player) listenToQuestion() {
	p.t.Helper()
	if p.game.playing.what != toQuestion {
		p.pressID("listen")
	}
	if p.game.over == volumeHint {
		p.pressID("comfortable")
	}
	for range 60 * 30 {
		if p.game.playing.what != toQuestion {
			break
		}
		p.listen()
		p.tick()
	}
	if !p.game.asking.heard {
		p.t.Fatalf("%s: the question has no end", p.where)
	}
}

// answer gives the right answer, a wrong one, or the one that is called so.
func (p *player) answer(what string) {
	p.t.Helper()
	q := &p.game.asking.question
	n := slices.Index(q.Answers, what)
	switch what {
	case "right":
		n = q.Right
	case "wrong":
		n = (q.Right + 1) % len(q.Answers)
	}
	p.pressID(numberedID("answer", n))
}

// hearDownTo works through a limit as somebody who hears just what is not less than
// v.
func (p *player) hearDownTo(v float64) {
	p.t.Helper()
	for range 60 {
		if p.game.page == result {
			return
		}
		if p.game.asking.question.Value >= v {
			p.answer("right")
		} else {
			p.answer("wrong")
		}
		p.pressID("proceed")
	}
	p.t.Fatalf("%s: the run has no end", p.where)
}

// take takes what the game wishes the page to do.
func (p *player) take(what string) {
	p.t.Helper()
	w := p.game.Wishes()
	if len(w) != 1 {
		p.t.Fatalf("%s: wishes %v", p.where, w)
	}
	switch what {
	case "link":
		p.kept.link = w[0].Link
		p.game.Copied(w[0], true)
		p.tick()
	case "file":
		p.kept.file = w[0].Text
	}
	want := map[string]WishKind{"link": Copy, "file": Download, "question for a file": OpenFile}
	if kind, ok := want[what]; !ok || kind != w[0].Kind {
		p.t.Fatalf("%s: the wish is %v", p.where, w)
	}
}

// progress is what is kept, without where the learner is.
func (p *player) progress() []byte {
	k, err := read(p.game.Save())
	if err != nil {
		p.t.Fatal(err)
	}
	q := Game{course: p.course, kept: k}
	q.kept.Exercise, q.kept.Page, q.kept.attempt, q.kept.Hinted = "", "", attempt{}, true
	data := q.Save()
	return data
}

func (p *player) question() string {
	q := &p.game.asking.question
	return fmt.Sprint(p.game.exercise().ID, q.Item, q.Sounds, q.Louder, q.Right, q.Value, len(p.game.asking.run.Answers))
}

// drawn is all that is written on the screen, on widgets too.
func (p *player) drawn() string {
	var b strings.Builder
	s := p.game.Scene()
	for _, t := range append(slices.Clone(s.Texts), s.Over...) {
		b.WriteString(t.String + " ")
	}
	for _, w := range s.Widgets {
		b.WriteString(w.Label + " " + w.Face + " " + w.Note + " ")
	}
	for _, c := range s.Charts {
		for _, l := range c.Levels {
			b.WriteString(l.Text + " ")
		}
	}
	return b.String()
}

// expectOfCourse checks what belongs to the whole course.
func (p *player) expectOfCourse(what, value string) bool {
	p.t.Helper()
	g := p.game
	fail := func(got any) { p.t.Helper(); p.t.Fatalf("%s: got %v", p.where, got) }
	words, not := strings.CutPrefix(value, "not ")
	switch what {
	case "says":
		said := g.scene.Title + " " + g.scene.Body + " " + g.scene.Say
		if strings.Contains(said, words) == not {
			fail(said)
		}
	case "drawn":
		if strings.Contains(p.drawn(), words) == not {
			fail(p.drawn())
		}
	case "limit":
		var from, to float64
		fmt.Sscan(value, &from, &to)
		runs := g.kept.Limits[g.exercise().ID]
		if n := len(runs); n == 0 || !runs[n-1].Found || runs[n-1].Value < from || runs[n-1].Value > to {
			fail(runs)
		}
	case "kept":
		if r, ok := g.kept.Marks[g.exercise().ID]; fmt.Sprintf("%.0f", math.Floor(r.Best+0.05)) != value || !ok {
			fail(r)
		}
	case "asked":
		if got := g.session.last; got != value {
			fail(got)
		}
	case "same":
		switch value {
		case "progress":
			if got := p.progress(); !bytes.Equal(got, p.kept.progress) {
				fail(cmp.Diff(string(p.kept.progress), string(got)))
			}
		case "question":
			if got := p.question(); got != p.kept.question || g.page != questionPage {
				fail(got)
			}
		}
	case "start":
		if e := g.exercise(); g.page != working || g.work.yours != e.Start() {
			fail(g.work.yours)
		}
	case "moving":
		if g.sweep.on != (value == "yes") {
			fail(g.sweep.on)
		}
	case "idle":
		if g.Idle() != (value == "yes") {
			fail(g.Idle())
		}
	default:
		return false
	}
	return true
}
