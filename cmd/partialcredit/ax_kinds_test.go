//go:build !js

package main_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/sheet"
)

// TestTreePlaysEveryKind plays a demonstration, a naming, a comparison and a limit to their ends with the
// accessibility tree and the keyboard alone; a match has a test of its own.
func TestTreePlaysEveryKind(t *testing.T) {
	s := play(2, 0.1)
	screen := Tablet
	screen.Ratio = 1 // the tree has no pixels, and fewer are drawn sooner
	l := resume(t, s.kept(), Visit{Screen: screen})
	a := ax{l.Page}
	a.Press(fmt.Sprintf("%d. %s", s.sheet+1, sheet.Course()[s.sheet].Title))
	open := func(kind sheet.Kind) *sheet.Exercise {
		e := s.exercise(kind)
		title := fmt.Sprintf("%d. %s", s.first[kind]+1, e.Title)
		a.Press(title)
		a.Until("the exercise is open", func() bool { return a.Heading() == title })
		if text := a.Reads(); !strings.Contains(text, e.Task) {
			a.t.Errorf("%s: the page reads %q, without the task", e.ID, text)
		}
		return e
	}

	step := func(name string, f func()) {
		l.step(t, name, func() { a.t = l.t; f() })
	}
	step("show", func() {
		e := open(sheet.Show)
		c := e.Controls[0]
		a.Press("Play")
		a.Until("it plays", func() bool { return a.Pressed("Play") })
		if text := a.Reads(); !strings.Contains(text, e.Teach) {
			a.t.Errorf("%s: heard once, the page reads %q, without the lesson", e.ID, text)
		}
		start := a.Value(c.Label)
		a.Press("Sweep: " + c.Label)
		a.Until("it is swept", func() bool { return a.Pressed("Sweep: "+c.Label) && a.Value(c.Label) != start })
		l.Press("Escape") // what moves and sounds slows the test
		a.Press("Next")
		a.Until("the next exercise is open", func() bool {
			return strings.HasPrefix(a.Heading(), fmt.Sprintf("%d. ", s.first[sheet.Show]+2))
		})
		a.Press("Contents")
	})
	run := func(kind sheet.Kind) {
		e := open(kind)
		run := s.runs[e.ID]
		n := len(run.Answers)
		a.Press("Listen")
		a.Until("the question has been heard", func() bool { _, ok := a.Find("button", "Listen again"); return ok })
		for i := n - lastAnswers; i < n; i++ {
			q := run.Question(e, i)
			a.Choose(q.Answers[run.Answers[i]])
			want := verdict(e, q, run.Answers[i])
			a.Until("the page announces "+want, func() bool { return strings.HasPrefix(a.Status(), strings.TrimSpace(want)) })
			a.Press("Next")
			a.Until("what comes after the answer", func() bool {
				nodes := a.nodes()
				return slices.ContainsFunc(nodes, func(n axNode) bool {
					name := n.Name.String()
					return n.Role.String() == "button" && (name == "Again" || name == "Listen" || name == "Listen again")
				})
			})
		}
		keepsRun(a.Page, e, run, a.Status())
		a.Press("Contents")
		a.Until("the sheet is open", func() bool { _, ok := a.Find("button", "All sheets"); return ok })
	}
	step("name", func() { run(sheet.Name) })
	step("same", func() { run(sheet.Same) })
	step("limit", func() { run(sheet.Limit) })
}
