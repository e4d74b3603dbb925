package mark

import (
	"testing"

	"partialcredit/game/sheet"
)

// BenchmarkHear gives the time of hearing one sound of each exercise. Wanted:
// under 40 ms native for 3 s.
func BenchmarkHear(b *testing.B) {
	for _, e := range sheet.Builtin().Exercises {
		x := perform(e.Target, listening(e.Target))
		b.Run(e.ID, func(b *testing.B) {
			for b.Loop() {
				hear(&kit, x, Rate, fundamental(e.Target))
			}
			b.ReportMetric(float64(len(x))/Rate, "s-of-sound")
		})
	}
}
