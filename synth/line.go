package synth

// tick is the number of output samples between two evaluations of the
// controls; in between they move in straight lines. At 48 kHz it is 0.33 ms:
// an LFO of 20 Hz bends by 2e-4 of its depth in that time.
const tick = 16

// ticks is the number of samples that the oscillators make at a time, a power
// of two. They run at twice the output rate, so that it is a tick; only in
// frequency modulation they run at four times, and it is half of one.
const ticks = 2 * tick

// A line is the delay line of an oscillator: the samples of one tick, delayed
// by reach, and after them those still open to corrections.
type line [ticks + 2*reach - 1]float64

// at returns the samples that a discontinuity before sample i touches.
func (l *line) at(i int) *near { return (*near)(l[i : i+2*reach]) }

// next moves on to the next tick.
func (l *line) next() {
	open := [2*reach - 1]float64(l[ticks:])
	*l = line{}
	copy(l[:], open[:])
}

// A reset sends the phase of a synced oscillator to a value, t samples before
// sample i, 0 <= t <= 1.
type reset struct {
	i     int
	t, to float64
}

// A motion is the movement of a phase over a step: at a speed that changes in a
// straight line, by at(i) from sample i-1 to sample i.
type motion struct{ first, step float64 }

func (m motion) at(i int) float64 { return m.first + float64(i)*m.step }
