package mark

import (
	"math"
	"testing"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// The further a control is moved from a recorded target, the fewer marks: at 5
// and 21 of its steps to either side. (The duty to 0.97 mirrors to that of the target.)
func TestMarksFallFromARecording(t *testing.T) {
	t.Parallel()
	pairs, steady := 0, 0
	for _, e := range Swept() {
		s := e.Target
		s.A.Phase, s.B.Phase, s.LFO.Phase = 0.31, 0.77, 0.43
		lead := make([]float32, Rate/4)
		x := append(append(append([]float32{}, lead...), synth.Render(s, Rate)...), lead...)
		for i := range x {
			x[i] *= 0.3
		}
		k, err := take.Find(x, Rate)
		if err != nil {
			t.Fatalf("%s: %v", e.ID, err)
		}
		r := PrepareTake(k)
		for i := range e.Controls {
			c := &e.Controls[i]
			if len(c.Field().Choices) > 0 {
				continue
			}
			at := c.Get(&e.Target)
			for _, end := range []float64{c.Min, c.Max} {
				far := func(x float64) float64 { return Steps(c.Fields[0], e.Target, at, x) }
				last, fell := 100.0, []float64{}
				for _, want := range []float64{5, 21} {
					if far(end) < want {
						break
					}
					y := e.Target
					c.Set(&y, stepsAway(far, want, at, end))
					m := r.Mark(y, 1).Marks
					fell = append(fell, math.Round(m))
					pairs++
					if m < last+1 { // a mark up is no movement
						steady++
					} else {
						t.Logf("NOT STEADY %s/%s", e.ID, c.Fields[0])
					}
					last = m
				}
				if len(fell) > 0 {
					t.Logf("%s/%s to %.3g: %v", e.ID, c.Fields[0], end, fell)
				}
			}
		}
	}
	t.Logf("%d of %d steps away lose marks", steady, pairs)
	if float64(steady) < 0.93*float64(pairs) { // as the distance of the features is known to be, DEVELOPERS.md
		t.Errorf("only %d of %d steps away lose marks", steady, pairs)
	}
}
