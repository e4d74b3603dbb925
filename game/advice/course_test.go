package advice

import (
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

func TestCourse(t *testing.T) {
	for _, s := range sheet.Course()[:10] {
		for i := range s.Exercises {
			start := time.Now()
			a := New(s, i)
			for !a.Step(1) {
			}
			t.Logf("== %s (%s, %s): %d marks, %v", s.Exercises[i].ID, s.Exercises[i].Kind, s.Strictness, a.Marks(), time.Since(start).Round(time.Millisecond))
			for _, f := range a.Found() {
				t.Logf("   %-7s %-10s %s", f.Weight, f.Rule, f.Say(words.English))
			}
		}
	}
}
