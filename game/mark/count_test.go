package mark_test

import (
	"testing"

	"partialcredit/game/mark"
)

// Count is what Mark says, sooner.
func TestCountsAreThoseOfTheMark(t *testing.T) {
	for _, e := range mark.Swept()[:4] {
		r, yours := mark.Prepare(e.Target), e.Start()
		result := r.Mark(yours, 2)
		steps, heard := r.Count(yours)
		if steps != result.Steps || heard != result.Heard || mark.Credit(steps, 2) != result.Marks {
			t.Errorf("%s: %v steps; the mark has %v", e.ID, steps, result.Steps)
		}
	}
}

func BenchmarkCount(b *testing.B) {
	for _, e := range mark.Swept() {
		b.Run(e.ID, func(b *testing.B) {
			r, yours := mark.Prepare(e.Target), e.Start()
			for b.Loop() {
				r.Count(yours)
			}
		})
	}
}
