package worksheet

import (
	"testing"
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
)

// What the key says of marks is what handing in earns (mark.Reference.Marks, which game/mark holds to
// Mark): enough at the bounds, and
// too few at a tenth of the way beyond them, or the bound is the end of the range. The bound is sought
// among a few values, so a quarter of the way is allowed.
func TestToleranceIsWhatHandingInEarns(t *testing.T) {
	all, sides, ends := 0, 0, 0
	for i, e := range sheet.Matches().Exercises {
		if i%6 != 0 {
			continue
		}
		for _, c := range e.Controls {
			if len(c.Field().Choices) > 0 {
				continue
			}
			all++
			tol := tolerance{target: e.Target, control: c, times: 2}
			steps := 1
			for ; !tol.step(); steps++ {
				if steps > 60 {
					t.Fatalf("%s: no end", e.ID)
				}
			}
			ref := mark.Measure(e.Target)
			marks := func(v float64) float64 {
				s := e.Target
				c.Set(&s, v)
				return ref.Marks(s, 2)
			}
			at := c.Get(&e.Target)
			for j, v := range []float64{tol.low(), tol.high()} {
				end := []float64{c.Min, c.Max}[j]
				sides++
				if marks(v) < enough {
					t.Errorf("%s, %s: %v marks at %v, target %v", e.ID, c.Fields[0], marks(v), v, at)
				}
				if v == end {
					ends++
					continue
				}
				beyond := v + 0.25*(v-at)
				if v == at || c.Field().Whole {
					beyond = tol.sides[j].bad
				}
				if m := marks(beyond); m >= enough+1 && (beyond-end)*(v-end) > 0 {
					t.Errorf("%s, %s: still %v marks at %v, beyond %v; target %v", e.ID, c.Fields[0], m, beyond, v, at)
				}
			}
		}
	}
	if all < 4 || sides-ends < 6 {
		t.Errorf("only %d controls were looked at, %d of %d sides ended within the range", all, sides-ends, sides)
	}
	t.Logf("%d controls, %d of %d sides within the range", all, sides-ends, sides)
}

// BenchmarkKey makes the key of a sheet and tells how long its longest step is: a frame waits for it.
func BenchmarkKey(b *testing.B) {
	longest, steps := time.Duration(0), 0
	for b.Loop() {
		m := New(sheet.Course()[5], Options{Key: true, Address: address})
		for done := false; !done; steps++ {
			from := time.Now()
			done = m.Step()
			longest = max(longest, time.Since(from))
		}
	}
	b.ReportMetric(float64(longest.Milliseconds()), "ms/longest-step")
	b.ReportMetric(float64(steps)/float64(b.N), "steps")
}
