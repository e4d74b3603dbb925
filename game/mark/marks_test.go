package mark_test

import (
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
)

// Marks without reasons are those with them.
func TestMarksAlone(t *testing.T) {
	for _, e := range sheet.Matches().Exercises[:6] {
		want := mark.Prepare(e.Target).Mark(e.Start(), 2).Marks
		r := mark.Measure(e.Target)
		if got := r.Marks(e.Start(), 2); got != want {
			t.Errorf("%s: %v, want %v", e.ID, got, want)
		}
		if got := r.Mark(e.Start(), 2); got.Marks != want || len(got.Reasons) == 0 {
			t.Errorf("%s: %v and %d reasons after marks alone, want %v", e.ID, got.Marks, len(got.Reasons), want)
		}
	}
}
