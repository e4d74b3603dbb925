package mark

import (
	"testing"
)

// BenchmarkParts gives the time of each part of a hand-in for every exercise of
// the built-in sheet, from the learner's start. A mark is all four of them; a
// preparation is the first three, for the target.
func BenchmarkParts(b *testing.B) {
	for _, e := range Swept() {
		yours, r := e.Start(), Prepare(e.Target)
		sound := perform(yours, r.grid.seconds)
		f, h := r.grid.take(sound)
		part := func(name string, do func()) {
			b.Run(e.ID+"/"+name, func(b *testing.B) {
				defer r.grid.borrow()()
				for b.Loop() {
					do()
				}
				b.ReportMetric(r.grid.seconds, "s-of-sound")
			})
		}
		part("render", func() { perform(yours, r.grid.seconds) })
		part("measure", func() { r.grid.measure(sound) })
		part("hear", func() { hear(&r.grid.kit, sound, Rate, r.grid.note) })
		part("compare", func() {
			r.distance(f)
			reasons(r.heard, h)
			r.grid.ticks(r.places, r.target, f)
		})
	}
}
