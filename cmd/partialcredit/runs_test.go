//go:build !js

package main_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
)

// A hearer says whether a simulated learner answers the i-th question rightly.
type hearer func(i int, q ask.Question) bool

// missing answers rightly but for one question.
func missing(one int) hearer { return func(i int, _ ask.Question) bool { return i != one } }

// above answers rightly what differs by so much or more.
func above(threshold float64) hearer {
	return func(_ int, q ask.Question) bool { return q.Value >= threshold }
}

func (h hearer) answer(i int, q ask.Question) int {
	if h(i, q) {
		return q.Right
	}
	return (q.Right + 1) % len(q.Answers)
}

// simulated is a whole run of an exercise, computed without the page.
func simulated(e *sheet.Exercise, seed uint64, h hearer) ask.Run {
	r := ask.Run{Seed: seed}
	for !r.Done(e) {
		i := len(r.Answers)
		r.Answer(e, h.answer(i, r.Question(e, i)))
	}
	return r
}

// but is a run without its last answers.
func but(r ask.Run, last int) ask.Run {
	return ask.Run{Seed: r.Seed, Answers: r.Answers[:len(r.Answers)-last]}
}

// verdict is how the page begins what it says of an answer, as game/asking.go words it.
func verdict(e *sheet.Exercise, q ask.Question, answer int) string {
	switch right := answer == q.Right; {
	case e.Kind == sheet.Limit && right:
		return "Right."
	case e.Kind == sheet.Limit:
		return "It was another one: " + q.Answers[q.Right] + "."
	case e.Kind == sheet.Same && right:
		return [2]string{"Right: the same to the ear. ", "Right: they differ. "}[q.Right]
	case e.Kind == sheet.Same:
		return [2]string{"They are the same to the ear. ", "They differ. "}[q.Right]
	case right:
		return "Right: " + q.Answers[q.Right] + ". "
	default:
		return "It was " + q.Answers[q.Right] + "; you said " + q.Answers[answer] + ". "
	}
}

// keepsRun compares what the page says and keeps of a run that has ended with the native computation.
func keepsRun(p *Page, e *sheet.Exercise, run ask.Run, said string) {
	p.t.Helper()
	var text string
	p.Eval(`localStorage.getItem("partialcredit.progress")`, &text)
	var kept struct {
		Runs   map[string]ask.Run
		Marks  map[string]struct{ Last float64 }
		Limits map[string][]struct {
			Value, Factor float64
			Found         bool
		}
	}
	if err := json.Unmarshal([]byte(text), &kept); err != nil {
		p.t.Fatalf("the page keeps %s: %v", text, err)
	}
	if r, ok := kept.Runs[e.ID]; ok {
		p.t.Errorf("%s: the run has ended and is still kept: %v", e.ID, r)
	}
	if e.Kind != sheet.Limit {
		want := run.Marks(e)
		if got := kept.Marks[e.ID].Last; math.Abs(got-want) > 1e-9 {
			p.t.Errorf("%s: %v marks are kept, want %v", e.ID, got, want)
		}
		if want := fmt.Sprintf("%d of %d right: %.0f marks of 100", run.Right(e), len(run.Answers), math.Floor(want+0.05)); !strings.HasPrefix(said, want) {
			p.t.Errorf("%s: the page says %q, want %q", e.ID, said, want)
		}
		return
	}
	stairs := run.Staircase(e)
	value, factor, found := stairs.Threshold()
	if !found {
		p.t.Fatalf("%s: the simulated listener has no limit: %v", e.ID, run)
	}
	runs := kept.Limits[e.ID]
	if len(runs) != 1 || !runs[0].Found || math.Abs(runs[0].Value/value-1) > 1e-9 || math.Abs(runs[0].Factor/factor-1) > 1e-9 {
		p.t.Errorf("%s: the limits kept are %+v, want %v within %v", e.ID, runs, value, factor)
	}
	if want := fmt.Sprintf("Your limit here: about %s, within a factor of %.1f.", e.Quantity.Format(value), factor); !strings.HasPrefix(said, want) {
		p.t.Errorf("%s: the page says %q, want %q", e.ID, said, want)
	}
}
