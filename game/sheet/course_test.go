package sheet_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// every calls f with each exercise of the course and the sheet it stands on.
func every(f func(s *sheet.Sheet, e *sheet.Exercise)) {
	for _, s := range sheet.Course() {
		for i := range s.Exercises {
			f(s, &s.Exercises[i])
		}
	}
}

// The numbers of issue 4: at least 60 exercises besides the demonstrations, for
// every technique a demonstration first and then all kinds, in their order. The
// first sheet is about comparing and begins with it.
func TestCourseIsWhole(t *testing.T) {
	order := []sheet.Kind{sheet.Show, sheet.Name, sheet.Same, sheet.Match, sheet.Limit}
	kinds := map[sheet.Kind]int{}
	for i, s := range sheet.Course() {
		var asked []sheet.Kind
		for _, e := range s.Exercises {
			kinds[e.Kind]++
			asked = append(asked, e.Kind)
		}
		asked = slices.Compact(asked)
		if i > 0 && !slices.Equal(asked, order) {
			t.Errorf("%s: its kinds are %v, want %v", s.Title, asked, order)
		}
		if asked[0] != sheet.Show {
			t.Errorf("%s begins with no demonstration", s.Title)
		}
		for _, k := range order {
			if !slices.Contains(asked, k) {
				t.Errorf("%s has no exercise of the kind %s", s.Title, k)
			}
		}
	}
	t.Logf("%d sheets, %v", len(sheet.Course()), kinds)
	if n := kinds[sheet.Name] + kinds[sheet.Same] + kinds[sheet.Match] + kinds[sheet.Limit]; n < 60 {
		t.Errorf("%d exercises besides the demonstrations, want 60", n)
	}
}

// Progress is kept by id, and a list shows titles.
func TestNoIDOrTitleIsGivenTwice(t *testing.T) {
	seen := map[string]string{}
	every(func(_ *sheet.Sheet, e *sheet.Exercise) {
		for _, key := range []string{"id " + e.ID, "title " + e.Title, "task " + e.Task} {
			if other, found := seen[key]; found {
				t.Errorf("%s and %s have the same %s", e.ID, other, key)
			}
			seen[key] = e.ID
		}
	})
}

// No two exercises of a kind are alike: none asks for the same target by the
// same controls or quantity, offers the same answers, or has the same pair.
func TestNoTwoExercisesAreAlike(t *testing.T) {
	seen := map[string]string{}
	unique := func(e *sheet.Exercise, content ...any) {
		key := string(e.Kind) + fmt.Sprintf("%+v", content)
		if other, found := seen[key]; found {
			t.Errorf("%s and %s are alike", e.ID, other)
		}
		seen[key] = e.ID
	}
	every(func(_ *sheet.Sheet, e *sheet.Exercise) {
		switch e.Kind {
		case sheet.Match, sheet.Show:
			var fields []string
			for _, c := range e.Controls {
				fields = append(fields, c.Fields...)
			}
			unique(e, e.Target, fields)
		case sheet.Limit:
			unique(e, e.Target, e.Quantity.Set)
		case sheet.Name:
			var sounds []synth.Sound
			for _, a := range e.Answers {
				sounds = append(sounds, a.Sound)
			}
			unique(e, sounds)
		case sheet.Same:
			for _, p := range e.Pairs {
				if reflect.DeepEqual(p.One, p.Other) {
					t.Errorf("%s: %s: the two are one sound", e.ID, p.Name)
				}
				unique(e, p.One, p.Other, e.Notes)
			}
		}
	})
}

// Texts are plain: a title is a question, everything else one sentence, and all
// of it fits on the smallest phone (lengths: design choices, tried at 320 by 568).
func TestTextsOfTheCourseAreShort(t *testing.T) {
	sentence := func(e *sheet.Exercise, text string, most int) {
		if n := len([]rune(text)); n > most {
			t.Errorf("%s: %d characters, at most %d: %s", e.ID, n, most, text)
		}
		if strings.ContainsAny(text[:len(text)-1], "!?") || strings.Contains(text, ". ") || !strings.ContainsAny(text[len(text)-1:], ".?") {
			t.Errorf("%s: not one sentence: %s", e.ID, text)
		}
	}
	name := func(e *sheet.Exercise, text string, most int) {
		if n := len([]rune(text)); n > most || strings.HasSuffix(text, ".") {
			t.Errorf("%s: %d characters, at most %d and no sentence: %s", e.ID, n, most, text)
		}
	}
	every(func(_ *sheet.Sheet, e *sheet.Exercise) {
		if !strings.HasSuffix(e.Title, "?") {
			t.Errorf("%s: the title asks no question: %s", e.ID, e.Title)
		}
		sentence(e, e.Title, 56)
		sentence(e, e.Task, 140)
		sentence(e, e.Teach, 140)
		for _, a := range e.Answers {
			name(e, a.Name, 16)
			sentence(e, a.Cue, 110)
		}
		for _, p := range e.Pairs {
			name(e, p.Name, 60)
			sentence(e, p.Why, 140)
		}
		for _, c := range e.Controls {
			name(e, c.Label, 30)
		}
		if e.Quantity != nil {
			name(e, e.Quantity.Name, 24)
		}
	})
}

// What moves is heard for at least four cycles (Lee and Bacon 1997: hearing.md
// 1.5), and no sound of a question is so long that a run of them tires.
func TestSoundsOfQuestionsAreLongEnough(t *testing.T) {
	const most = 4.0 // seconds
	every(func(_ *sheet.Sheet, e *sheet.Exercise) {
		check := func(s synth.Sound) {
			if moved(s) && s.LFO.Hz*s.Seconds < 4-1e-9 {
				t.Errorf("%s: only %.1f cycles of the LFO are heard", e.ID, s.LFO.Hz*s.Seconds)
			}
			if s.Seconds > most {
				t.Errorf("%s: a sound lasts %v s", e.ID, s.Seconds)
			}
		}
		for _, a := range e.Answers {
			for _, at := range []float64{0, 1} {
				s := a.Sound
				for _, v := range a.Vary {
					v.Apply(&s, at)
				}
				check(s)
			}
		}
		for _, p := range e.Pairs {
			check(p.One)
			check(p.Other)
		}
		if e.Quantity != nil {
			s := e.Target
			e.Quantity.Apply(&s, e.Quantity.Start)
			check(s)
		}
	})
}

// A limit starts where everybody hears it: the judge of pairs tells the start
// from the target. A published threshold lies well between start and least.
func TestLimitsStartHighAndGoLow(t *testing.T) {
	every(func(_ *sheet.Sheet, e *sheet.Exercise) {
		q := e.Quantity
		if q == nil {
			return
		}
		if p := q.Published; p != nil && (q.Start < 5*p.Value || q.Least > p.Value/5) {
			t.Errorf("%s: from %v down to %v, though %v is published", e.ID, q.Start, q.Least, p.Value)
		}
		if q.IsLevel() {
			return
		}
		start := e.Target
		q.Apply(&start, q.Start)
		high := measured(e.Target, start)
		t.Logf("%-20s %5.1f dB at the start", e.ID, high)
		if high < leastApart {
			t.Errorf("%s: only %.1f dB at the start", e.ID, high)
		}
	})
}
