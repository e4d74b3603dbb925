package synth

// tick is the number of output samples between two evaluations of the
// controls; in between they move in straight lines. At 48 kHz it is 0.33 ms:
// an LFO of 20 Hz bends by 2e-4 of its depth in that time.
const tick = 16

// oversampling is the ratio of the rate of the oscillators to the output rate.
const oversampling = 4

// ticks is the number of oversampled samples in a tick, a power of two.
const ticks = tick * oversampling

// A line is the delay line of an oscillator: the samples of one tick, delayed
// by reach, and after them those still open to corrections.
type line [ticks + 3]float64

// at returns the samples that a discontinuity before sample i touches.
func (l *line) at(i int) *[4]float64 { return (*[4]float64)(l[i : i+4]) }

// next moves on to the next tick.
func (l *line) next() {
	open := [3]float64(l[ticks:])
	*l = line{}
	copy(l[:3], open[:])
}

// A reset sends the phase of a synced oscillator to a value, t samples before
// sample i, 0 <= t <= 1.
type reset struct {
	i     int
	t, to float64
}

// A droop is the state of a three-tap filter [-1/6, 4/3, -1/6] which undoes the
// fall of sinc⁴(f/fs) that the corrections bring, to second order (own
// derivation, sound.md 4.1). Delay: one sample. Known weakness: 0.03 dB are
// missing at 18 kHz at four times 48 kHz.
type droop struct{ x1, x2 float64 }

// run filters a block in place.
func (d *droop) run(block *[ticks]float64) {
	x1, x2 := d.x1, d.x2
	for i, x := range block {
		block[i] = (4.0/3)*x1 - (1.0/6)*(x+x2)
		x1, x2 = x, x1
	}
	d.x1, d.x2 = x1, x2
}

// undroop is what a sine of inc cycles per sample must be multiplied by so
// that it leaves [droop] with its own amplitude.
func undroop(inc float64) float64 {
	return 1 / (4.0/3 - cosineOf(wrap(inc))/3)
}
