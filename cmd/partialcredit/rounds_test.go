//go:build !js

package main_test

import (
	"fmt"
	"time"
)

// A round goes once through every kind of page, and ends where it began. It is made for many rounds
// on a machine that may be busy: it waits long, and walks by the page's accessible elements.

// chooses presses a control as an assistive device does, and waits for one of the page it leads to.
func (l *learner) chooses(id, until string) {
	l.t.Helper()
	l.awaits(id)
	l.Eval(`document.querySelector('`+widget(id)+`').click()`, nil)
	l.awaits(until)
}

// awaits waits until a widget is on the page and can be used.
func (l *learner) awaits(id string) {
	l.t.Helper()
	l.Wait(`(e => e && !e.disabled)(document.querySelector('`+widget(id)+`'))`, limit)
}

// sounds does what should be heard, and waits until it has sounded for a moment.
func (l *learner) sounds(do func()) {
	l.t.Helper()
	l.Eval("soundTap.forget()", nil)
	do()
	l.Wait(`(c => c.quanta - c.silent > 20)(soundTap.counts())`, limit)
}

// plays listens to what a control plays for a moment, and stops it.
func (l *learner) plays(id string) {
	l.t.Helper()
	pressed := `document.querySelector('` + widget(id) + `').getAttribute("aria-pressed") === `
	l.sounds(func() {
		l.chooses(id, id)
		l.Wait(pressed+`"true"`, limit)
	})
	l.chooses(id, id)
	l.Wait(pressed+`"false"`, limit)
}

// either holds when one of two widgets is on the page.
func either(id, other string) string {
	return `document.querySelector('` + widget(id) + "," + widget(other) + `')`
}

// demonstrates sweeps a demonstration.
func (l *learner) demonstrates() {
	l.t.Helper()
	l.sounds(func() { l.chooses("sweep 0", "yours") })
	time.Sleep(500 * time.Millisecond)
	l.Press("Escape")
}

// matches listens to both sounds, sets a ruler and hands in.
func (l *learner) matches() {
	l.t.Helper()
	l.Wait(either("again", "hand in"), limit)
	var marked bool
	l.Eval(`document.querySelector('`+widget("again")+`') !== null`, &marked)
	if marked {
		l.chooses("again", "hand in")
	}
	for _, id := range []string{"target", "yours", "turn"} {
		l.plays(id)
	}
	l.tabTo("control 0")
	l.Press("PageUp")
	l.chooses("hand in", "again")
	l.plays("turn")
}

// answers listens to a question and answers it, always alike, and goes on: to the next question, or to
// the result.
func (l *learner) answers() {
	l.t.Helper()
	l.Wait(either("listen", "again"), limit)
	l.sounds(func() { l.chooses("listen", "answer 0") })
	l.choosesAnswer()
	l.plays("turn")
	l.chooses("proceed", "contents")
	l.Wait(either("listen", "again"), limit)
}

// choosesAnswer gives the first answer. What is missed is heard again at once: that is stopped.
func (l *learner) choosesAnswer() {
	l.t.Helper()
	l.chooses("answer 0", "proceed")
	l.settle()
	l.Press("Escape")
	l.Wait(`document.querySelector('`+widget("turn")+`').getAttribute("aria-pressed") !== "true"`, limit)
}

// tinkers plays on the bench: slow motion, a part of the voice, a sweep.
func (l *learner) tinkers(round int) {
	l.t.Helper()
	l.chooses("slow", "moment")
	time.Sleep(500 * time.Millisecond)
	l.chooses("slow", "yours")
	l.chooses(fmt.Sprintf("part %d", round%7), "fresh")
	l.plays("yours")
	l.sounds(func() { l.Press("s") })
	time.Sleep(500 * time.Millisecond)
	l.Press("Escape")
	l.chooses("fresh", "slow")
}

// round begins and ends on a sheet that has an exercise of each kind: a demonstration, two
// namings, a comparison, a match and a limit, in this order.
func (l *learner) round(sheet, round int) {
	l.t.Helper()
	l.chooses("exercise 0", "sweep 0")
	l.demonstrates()
	for i, does := range []func(){l.answers, l.answers, l.answers, l.matches, l.answers} {
		l.chooses("contents", "go on")
		l.chooses(fmt.Sprintf("exercise %d", i+1), "contents")
		does()
	}
	l.chooses("contents", "go on")
	l.chooses("course", "bench")
	l.chooses("bench", "slow")
	l.tinkers(round)
	l.chooses("course", "progress")
	l.chooses("progress", "view 0")
	for _, view := range []string{"view 1", "view 2", "view 0"} {
		l.chooses(view, "erase")
		l.settle()
	}
	l.chooses("course", "help")
	l.chooses("help", "later")
	l.chooses("later", "earlier")
	l.chooses("course", "practice")
	l.chooses("practice", "begin")
	l.chooses("begin", "end")
	l.chooses("end", "begin")
	l.chooses("course", "practice")
	l.chooses(fmt.Sprintf("sheet %d", sheet), "go on")
}
