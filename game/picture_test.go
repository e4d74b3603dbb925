package game

import (
	"math"
	"testing"
)

// The level that the marks compare is the one that is drawn.
func TestLevelled(t *testing.T) {
	lines := []Line{{Number: 1, Hz: 220}, {Number: 2, Hz: 440, DB: -6}}
	for _, c := range []struct {
		marked []Verdict
		want   float64
	}{
		{[]Verdict{{Number: 1, Hz: 220, Target: -2, Yours: 3.5}}, -2.5},
		{[]Verdict{{Number: 1, Hz: 330, Yours: 3.5}}, -6}, // yours has nothing there
		{[]Verdict{{Number: 2, Hz: 440, Yours: 3.5}}, -6}, // not its strongest
		{nil, -6},
	} {
		if got := levelled(lines, c.marked)[1].DB; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %v dB, want %v", c.marked, got, c.want)
		}
	}
	if lines[1].DB != -6 {
		t.Error("the lines themselves were moved")
	}
}
