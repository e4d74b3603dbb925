//go:build !js

package main_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// TestTreeAndKeyboardPlayAnExercise matches a sound from the hint to the marks with the accessibility
// tree and the keyboard alone.
func TestTreeAndKeyboardPlayAnExercise(t *testing.T) {
	e := exercise(t, "tune")
	_, i := whereIs(t, e.ID)
	k := at(e.ID)
	k.Hinted = false
	a := ax{resume(t, k, Visit{Screen: Tablet}).Page}
	if h := a.Heading(); h != fmt.Sprintf("%d. %s", i+1, e.Title) {
		t.Errorf("the heading is %q", h)
	}
	if text := a.Reads(); !strings.Contains(text, e.Task) {
		t.Errorf("the page reads %q, without the task", text)
	}
	a.Press("Target")
	if h := a.Heading(); h != "A comfortable level" {
		t.Errorf("before the first sound the heading is %q", h)
	}
	if v := a.Set("Volume", -10); !strings.HasSuffix(v, "%") {
		t.Errorf("the volume is read as %q", v)
	}
	a.Press("Comfortable")
	a.Until("the target plays", func() bool { return a.Pressed("Target") })
	c := &e.Controls[0]
	want := c.Field().Format(c.Get(&e.Target))
	if v := a.Set(c.Label, int(math.Round((c.Get(&e.Target)-c.Start)/c.Field().Step))); v != want {
		t.Fatalf("%s is read as %q, want %q", c.Label, v, want)
	}
	a.Press("Yours")
	a.Until("the learner's sound plays", func() bool { return a.Pressed("Yours") && !a.Pressed("Target") })
	a.Press("Hand in")
	a.Until("the marks are announced", func() bool { return strings.HasPrefix(a.Status(), "100 marks of 100.") })
	if say := a.Status(); !strings.Contains(say, e.Teach) {
		t.Errorf("with the marks the page announces %q, without the lesson", say)
	}
	a.Press("Next")
	a.Until("the next exercise", func() bool { return strings.HasPrefix(a.Heading(), fmt.Sprintf("%d. ", i+2)) })
}
