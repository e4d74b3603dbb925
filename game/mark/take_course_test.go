package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth/take"
)

func TestCourseTakes(t *testing.T) {
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Match {
				continue
			}
			x, rate := recorded(e.Target, 0.4)
			k, err := take.Find(x, rate)
			if err != nil {
				t.Errorf("REFUSED %s: %v", e.ID, err)
				continue
			}
			a, b := e.Target.Hz()
			t.Logf("%-20s how %v start %.4f sec %.2f/%.2f steady %.2f..%.2f faded %v hz %.2f (A %.2f, B %.2f: %.1f cents) clarity %.3f", e.ID, e.Target.Combine.How, k.Start, k.Seconds, e.Target.Seconds+e.Target.Amplitude.Release, k.From, k.To, k.Faded, k.Hz, a, b, 1200*math.Log2(k.Hz/a), k.Clarity)
		}
	}
}
