package advice

import (
	"testing"

	"partialcredit/game/sheet"
)

// BenchmarkAdvise is the time of all advice on one exercise, and of one mark of it.
func BenchmarkAdvise(b *testing.B) {
	for _, s := range sheet.Course() {
		for i := range s.Exercises {
			id := s.Exercises[i].ID
			b.Run(id, func(b *testing.B) {
				marks := 0
				for b.Loop() {
					a := New(s, i)
					for !a.Step(1) {
					}
					marks += a.Marks()
				}
				b.ReportMetric(float64(marks)/float64(b.N), "marks/op")
				b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(max(1, marks)), "ms/mark")
			})
		}
	}
}
