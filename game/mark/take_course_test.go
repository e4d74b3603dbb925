package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/take"
)

// Every match of the course, played and recorded (44.1 kHz, 16 bits, noise at -60
// dB, other start phases, half a second late), is one note, and as good as right:
// by a recording of what is described, by a description of what was recorded, and
// by another recording of it (48 kHz, yet other phases). At one end of its first
// control it is not.
func TestRecordingsOfTheCourse(t *testing.T) {
	t.Parallel()
	const right = 90.0 // the demand of the brief
	var all []sheet.Exercise
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind == sheet.Match {
				all = append(all, e)
			}
		}
	}
	marks := make([][]float64, len(all))
	t.Run("all", func(t *testing.T) {
		for i, e := range all {
			t.Run(e.ID, func(t *testing.T) {
				t.Parallel()
				marks[i] = markRecordings(t, &e)
			})
		}
	})
	cases, good := 0, 0
	for _, of := range marks {
		for _, m := range of {
			cases++
			if m >= right {
				good++
			}
		}
	}
	t.Logf("%d of %d recordings of the same sound earn %v and more", good, cases, right)
	if good < cases*9/10 || cases == 0 {
		t.Errorf("only %d of %d recordings of the same sound earn %v", good, cases, right)
	}
}

// markRecordings are the marks of a match for the three ways to be as good as right.
func markRecordings(t *testing.T, e *sheet.Exercise) []float64 {
	target, err := take.Find(recorded(e.Target, 0.4))
	if err != nil {
		t.Errorf("%s is refused: %v", e.ID, err)
		return nil
	}
	again, err := take.Find(again(e.Target), 48000)
	if err != nil {
		t.Errorf("%s is refused at another level: %v", e.ID, err)
		return nil
	}
	described, taken := mark.Prepare(e.Target), mark.PrepareTake(target)
	marks := []float64{described.MarkTake(target, 1).Marks, taken.Mark(e.Target, 1).Marks, taken.MarkTake(again, 1).Marks}
	wrong, value := farEnd(e)
	away := taken.Mark(wrong, 1)
	t.Logf("%5.1f %5.1f %5.1f; %s at %.3g: %5.1f %v", marks[0], marks[1], marks[2], e.Controls[0].Fields[0], value, away.Marks, away.Reasons)
	for _, m := range marks {
		if !(m >= 75) { // own bound: a step and a half of a practised listener
			t.Errorf("%s earns only %.1f", e.ID, m)
		}
	}
	if !(away.Marks < math.Min(60, marks[1])) {
		t.Errorf("%s: %s at %.3g earns %.1f", e.ID, e.Controls[0].Fields[0], value, away.Marks)
	}
	return marks
}

// farEnd is a match with its first control at that end of it which lies further off.
func farEnd(e *sheet.Exercise) (s synth.Sound, value float64) {
	s = e.Target
	c := &e.Controls[0]
	value = c.Min
	at := c.Get(&s)
	if mark.Steps(c.Fields[0], s, at, c.Max) > mark.Steps(c.Fields[0], s, at, c.Min) {
		value = c.Max
	}
	c.Set(&s, value)
	return s, value
}
