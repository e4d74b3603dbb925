package mark

import (
	"math"
	"testing"
	"time"

	"partialcredit/game/sheet"
)

// Marking a hand-in takes two to five times as long as making its sound; with
// FFTPACK's transforms, made anew each time, it took up to eleven times
// (measured natively). The fastest of several runs of either is compared, and
// there are more runs where they were disturbed, so that only slow code fails,
// or a synthesizer that has become much faster. How long it takes in the browser
// is for the test of the app to say.
func TestMarkingIsNotMuchSlowerThanMakingTheSound(t *testing.T) {
	const bound = 7 // half as much again as the worst
	for _, e := range sheet.Builtin().Exercises {
		r, yours := Prepare(e.Target), e.Start()
		marking, making := math.Inf(1), math.Inf(1)
		for try := 0; try < 2 || try < 30 && marking > bound*making; try++ {
			making = math.Min(making, seconds(func() { perform(yours, r.grid.seconds) }))
			marking = math.Min(marking, seconds(func() { r.Mark(yours) }))
		}
		t.Logf("%s: %.0f ms, %.1f times making the sound", e.ID, 1000*marking, marking/making)
		if marking > bound*making {
			t.Errorf("%s: marking takes %.1f times as long as making the sound", e.ID, marking/making)
		}
	}
}

func seconds(do func()) float64 {
	start := time.Now()
	do()
	return time.Since(start).Seconds()
}
