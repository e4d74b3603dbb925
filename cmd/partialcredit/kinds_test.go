//go:build !js

package main_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
)

// lastAnswers is how many answers of each run a test gives itself; the rest were given before.
const lastAnswers = 2

// A played sheet is one whose exercises of all kinds are played, with the runs as they will have been.
type played struct {
	sheet int
	first map[sheet.Kind]int // the first exercise of each kind
	runs  map[string]ask.Run
}

func (s *played) exercise(k sheet.Kind) *sheet.Exercise {
	return &sheet.Course()[s.sheet].Exercises[s.first[k]]
}

// play prepares a sheet: a learner who misses the last question but one of a naming and a comparison, and
// in the limit hears what is above a threshold.
func play(number int, threshold float64) *played {
	s := &played{sheet: number, first: map[sheet.Kind]int{}, runs: map[string]ask.Run{}}
	exercises := sheet.Course()[number].Exercises
	for i := range exercises {
		e := &exercises[i]
		if _, ok := s.first[e.Kind]; ok {
			continue
		}
		s.first[e.Kind] = i
		switch e.Kind {
		case sheet.Name, sheet.Same:
			s.runs[e.ID] = simulated(e, 7, missing(e.Questions-2))
		case sheet.Limit:
			s.runs[e.ID] = simulated(e, 7, above(threshold))
		}
	}
	return s
}

// kept is the progress of somebody who has all but the last answers behind them, on the contents.
func (s *played) kept() Kept {
	k := Kept{Version: 2, Exercise: s.exercise(sheet.Show).ID, Page: "contents", Volume: 0.3, Hinted: true, Runs: map[string]ask.Run{}}
	for id, r := range s.runs {
		k.Runs[id] = but(r, lastAnswers)
	}
	return k
}

// TestKindsArePlayed plays a demonstration, a naming, a comparison and a limit to their ends, by touch and by
// keyboard. Matches are played by TestExerciseIsPlayed, all by TestTreePlaysEveryKind.
func TestKindsArePlayed(t *testing.T) {
	for _, c := range []struct {
		name   string
		screen Screen
		played *played
	}{
		{"phone, touch", Screen{390, 844, 1, true}, play(0, 0.9)}, // decibels
		{"desktop, keyboard", Desktop, play(4, 12)},               // cents
	} {
		t.Run(c.name, func(t *testing.T) {
			k := c.played.kept()
			k.Hinted = c.screen.Touch // the other sees the hint
			l := resume(t, k, Visit{Screen: c.screen})
			l.press(fmt.Sprintf("sheet %d", c.played.sheet))
			l.step(t, "show", func() { l.playsShow(c.played) })
			l.step(t, "same", func() { l.playsRun(c.played, sheet.Same) })
			l.step(t, "name", func() { l.playsRun(c.played, sheet.Name) })
			l.step(t, "limit", func() { l.playsRun(c.played, sheet.Limit) })
		})
	}
}

// playsShow hears a demonstration, has it swept and goes on.
func (l *learner) playsShow(s *played) {
	l.t.Helper()
	e := s.exercise(sheet.Show)
	l.press(fmt.Sprintf("exercise %d", s.first[sheet.Show]))
	l.press("yours")
	if !l.keyboard {
		l.hears(e.Start(), e.ID)
	} else { // who has not seen the hint sees it now
		l.press("comfortable")
	}
	l.WaitText("#mirror p", e.Teach, 5*time.Second)
	l.sweeps("sweep 0", "control 0")
	l.press("next")
	l.Wait(fmt.Sprintf(`JSON.parse(localStorage.getItem("partialcredit.progress")).marks[%q].tries === 1`, e.ID), 5*time.Second)
	l.press("contents")
	l.WaitText(widget(fmt.Sprintf("exercise %d", s.first[sheet.Show])), "seen", 5*time.Second)
}

// sweeps has a ruler move by itself until it has been seen in three places, and stops it.
func (l *learner) sweeps(button, ruler string) {
	l.t.Helper()
	l.press(button)
	l.Wait(fmt.Sprintf(`(window.places = window.places || new Set()).add(document.querySelector('%s').value).size >= 3`, widget(ruler)), 15*time.Second)
	if l.attribute(button, "aria-pressed") != "true" {
		l.t.Error("the button of the sweep does not say that it is on")
	}
	l.press(button)
	stands := l.place(ruler)
	l.Eval("delete window.places", nil)
	if l.settle(); l.place(ruler) != stands || l.attribute(button, "aria-pressed") == "true" {
		l.t.Error("the sweep does not stop")
	}
}

// playsRun gives the last answers of a run, hears its first question, and compares the end.
func (l *learner) playsRun(s *played, kind sheet.Kind) {
	l.t.Helper()
	e := s.exercise(kind)
	run := s.runs[e.ID]
	number := s.first[kind]
	l.press(fmt.Sprintf("exercise %d", number))
	n := len(run.Answers)
	for i := n - lastAnswers; i < n; i++ {
		q := run.Question(e, i)
		l.awaits("answer 0")
		if i == n-lastAnswers {
			l.hearsQuestion(q)
		}
		answer := fmt.Sprintf("answer %d", run.Answers[i])
		if l.keyboard && i == n-1 {
			l.tabTo(answer)
			l.Press("Enter")
		} else {
			l.press(answer)
		}
		l.awaits("proceed")
		if said, want := l.says(), verdict(e, q, run.Answers[i]); !strings.HasPrefix(said, want) {
			l.t.Errorf("%s, question %d: the page says %q, want %q", e.ID, i+1, said, want)
		}
		if i == n-1 {
			l.press("turn")
			l.soundsAnew()
		}
		l.press("proceed")
	}
	l.awaits("again")
	l.Screenshot(fmt.Sprintf("%s, %v.png", e.ID, l.keyboard))
	l.Wait(fmt.Sprintf(`(k => k.page === "result" && k.marks[%q])(JSON.parse(localStorage.getItem("partialcredit.progress")))`, e.ID), 5*time.Second)
	keepsRun(l.Page, e, run, l.says())
	l.press("contents")
}

// says is what the page announces.
func (l *learner) says() (text string) {
	l.t.Helper()
	l.Eval(`document.querySelector('#mirror [role=status]').textContent`, &text)
	return text
}
