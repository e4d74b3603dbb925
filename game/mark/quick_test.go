package mark

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Time is measured against that of gonum's transform of the same sound, so that
// the bound holds on every machine: measuring and hearing take as long as some
// two to eight of them (natively; in WebAssembly gonum is slower, and it is less).
// The fastest of several runs of either is compared, and there are more runs
// where they were disturbed, so that only slow code fails.
func TestMarkingIsQuick(t *testing.T) {
	const bound = 16
	for _, e := range Swept() {
		g := newGrid(listening(e.Target), fundamental(e.Target))
		sound := perform(e.Start(), g.seconds)
		samples := make([]float64, len(sound))
		for i, v := range sound {
			samples[i] = float64(v)
		}
		fft := fourier.NewFFT(len(samples))
		out := make([]complex128, len(samples)/2+1)
		marking, transform := math.Inf(1), math.Inf(1)
		for try := 0; try < 3 || try < 30 && marking > bound*transform; try++ {
			marking = math.Min(marking, seconds(func() { g.take(sound) }))
			transform = math.Min(transform, seconds(func() { fft.Coefficients(out, samples) }))
		}
		t.Logf("%-12s %5.1f ms, %4.1f transforms", e.ID, 1000*marking, marking/transform)
		if marking > bound*transform {
			t.Errorf("%s: measuring and hearing take as long as %.1f transforms", e.ID, marking/transform)
		}
	}
}

func seconds(do func()) float64 {
	start := time.Now()
	do()
	return time.Since(start).Seconds()
}
