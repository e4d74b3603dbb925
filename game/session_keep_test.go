package game

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// reloaded is the practiser after the page was loaded anew, with a clock that begins again.
func (p *practiser) reloaded(later time.Duration) *practiser {
	again := &practiser{Game: New(sheet.Course(), p.Save(), roughly), random: p.random}
	again.gauge, again.day = unheard, p.day.Add(later)
	again.pass(0)
	return again
}

// A set goes on where it was when the page is loaded anew: its length, what was asked and
// how much of it was right.
func TestASetOutlivesAReload(t *testing.T) {
	p := newPractiser()
	p.meet(nil, append(shapes, feet...))
	p.beginPractice()
	for range 25 {
		p.pass(12 * time.Second)
		p.answer(true)
	}
	p.answer(false)
	p.pass(0)
	p = p.reloaded(time.Minute)
	if body := p.Scene().Body; p.page != practicePage || !strings.Contains(body, "25 of 26 right so far") {
		t.Fatalf("page %s says %q", pageNames[p.page], body)
	}
	for _, language := range []string{"de", "en"} {
		p.Speak([]string{language})
		for _, s := range screens {
			p.dirty = true
			p.Update(Input{W: s.w, H: s.h, Heard: Heard{Item: -1}, Date: p.day})
			checkScene(t, fmt.Sprintf("%s %vx%v", language, s.w, s.h), p.Scene())
		}
	}
	p = p.reloaded(time.Minute) // nor does another one lose it
	p.beginPractice()
	if s := p.session; s.asked != 26 || s.right != 25 || p.in.Now-s.began != 300*time.Second || s.last == "" {
		t.Errorf("%+v", s)
	}
	for p.session.on {
		p.pass(12 * time.Second)
		p.answer(true)
	}
	if spent := 300*time.Second + p.now; spent < practice.Shortest || spent > practice.Longest+20*time.Second {
		t.Errorf("it lasted %v in all", spent)
	}
	p.pass(0)
	if want := fmt.Sprintf("%d of %d right. Ears", p.session.right, p.session.asked); !strings.Contains(p.Scene().Body, want) || p.session.asked < 27 {
		t.Errorf("%q, want %q", p.Scene().Body, want)
	}
	if p.kept.Set != nil {
		t.Error("an ended set is kept")
	}
	p = p.reloaded(time.Minute)
	if body := p.Scene().Body; strings.Contains(body, "so far") {
		t.Errorf("after the end: %q", body)
	}
}

// A set of yesterday is over, and so is one that was left.
func TestASetEndsWithTheDay(t *testing.T) {
	p := newPractiser()
	p.meet(shapes, nil)
	p.beginPractice()
	p.pass(12 * time.Second)
	p.answer(true)
	p.pass(0)
	next := p.reloaded(24 * time.Hour)
	if body := next.Scene().Body; strings.Contains(body, "so far") {
		t.Errorf("the day after: %q", body)
	}
	next.beginPractice()
	if next.session.asked != 0 || next.session.began != next.in.Now {
		t.Errorf("%+v", next.session)
	}
}

// What a person has written into the progress breaks nothing.
func TestABadSetIsMended(t *testing.T) {
	for _, bad := range []string{`{"seconds": -5, "asked": 3, "right": 9}`, `{"seconds": 1e15, "asked": -3}`, `{"asked": 99999999999, "right": 4}`} {
		g := New(sheet.Course(), []byte(`{"version": 2, "page": "practice", "set": `+bad+`}`), roughly)
		if s := g.kept.Set; s != nil && (s.Asked < 1 || s.Right < 0 || s.Right > s.Asked || s.Seconds < 0 || s.Seconds > practice.Longest.Seconds()) {
			t.Errorf("%s: %+v", bad, *s)
		}
	}
}
