package mark_test

import (
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth/take"
)

func TestCourseTakes(t *testing.T) {
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Match {
				continue
			}
			k, err := take.Find(recorded(e.Target, 0.4))
			if err != nil {
				t.Errorf("REFUSED %s: %v", e.ID, err)
				continue
			}
			other, err := take.Find(onTape(other(e.Target), 48000, 0.1), 48000)
			if err != nil {
				t.Errorf("REFUSED %s: %v", e.ID, err)
				continue
			}
			a := mark.Prepare(e.Target).MarkTake(k, 1)
			b := mark.PrepareTake(k).Mark(e.Target, 1)
			c := mark.PrepareTake(k).MarkTake(other, 1)
			t.Logf("%-14s %5.1f %5.1f %5.1f %v %v %v", e.ID, a.Marks, b.Marks, c.Marks, a.Reasons, b.Reasons, c.Reasons)
		}
	}
}
