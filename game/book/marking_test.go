package book

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// Marks in slices, in parallel and by [slip.Marker] are the same, and every sound is
// marked once.
func TestMarksAreThoseOfTheMarker(t *testing.T) {
	for _, vary := range []bool{false, true} {
		sh := testSheet(t, vary)
		slips := []*slip.Slip{testSlip(sh, "Kite", 5, 0.3, 8), testSlip(sh, "Owl", 5, 0.3, 6), testSlip(sh, "Fox", 5, 0.12, 12)}
		slips[0].Work[0].Best = &slip.Attempt{Settings: []float64{0.26}, Uncovered: true}
		sliced, parallel := &Book{}, &Book{}
		for _, b := range []*Book{sliced, parallel} {
			b.Open(sh)
			for _, s := range slips {
				b.Add(s.Fragment(), "")
			}
		}
		want := 4 // sounds and the start: Owl's is Kite's
		if vary {
			want = 7 // each learner has a target and a start
		}
		if sliced.Left() != want {
			t.Errorf("vary %v: %d sounds to mark, want %d", vary, sliced.Left(), want)
		}
		if left := sliced.Table(sh.Fingerprint()).Left; left != 3 {
			t.Errorf("vary %v: %d cells to mark, want 3", vary, left)
		}
		steps := 1
		for sliced.Step() {
			steps++
		}
		told := 0
		parallel.MarkAll(2, func(done, all int) { told = done })
		if steps != want || told != want || sliced.Left() != 0 || parallel.Left() != 0 || sliced.Step() {
			t.Errorf("vary %v: %d steps and %d in parallel, want %d", vary, steps, told, want)
		}
		var m slip.Marker
		for i, s := range slips {
			x := slip.Exercise(sh.For(s.Name), "duty")
			o := s.Work[0].Outcome(x, sheet.Practised.Times(), &m)
			for _, b := range []*Book{sliced, parallel} {
				table := b.Table(sh.Fingerprint())
				c := table.Rows[i].Cells[0]
				if c.First != o.First || c.Best != o.Best || !c.Marked || table.Left != 0 {
					t.Errorf("vary %v: %s has %v and %v, want %v and %v", vary, s.Name, c.First, c.Best, o.First, o.Best)
				}
			}
		}
		if vary {
			continue
		}
		x := slip.Exercise(sh, "duty")
		start := mark.Measure(x.Target).Marks(x.Start(), sheet.Practised.Times())
		if got := sliced.Table(sh.Fingerprint()).Items[0].Chance; got != start {
			t.Errorf("leaving the control where it starts gives %v, want %v", got, start)
		}
	}
}

// What is already marked is not marked again when its slip comes back.
func TestMarksAreRemembered(t *testing.T) {
	sh := testSheet(t, false)
	b := &Book{}
	b.Open(sh)
	b.Add(testSlip(sh, "Kite", 5, 0.3, 8).Fragment(), "")
	b.MarkAll(1, nil)
	b.Add(testSlip(sh, "Owl", 5, 0.3, 3).Fragment(), "")
	b.Add(testSlip(sh, "Kite", 9, 0.3, 12).Fragment(), "")
	if b.Left() != 0 {
		t.Errorf("%d sounds are to be marked again", b.Left())
	}
	if c := b.Table(sh.Fingerprint()).Rows[0].Cells[0]; math.IsNaN(c.First) || !c.Marked {
		t.Error("the second slip has no marks")
	}
}
