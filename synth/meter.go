package synth

import "math"

// How sounds come out of the app: those that are compared at one loudness, quiet enough
// for narrow pulses to stay below the limit, and none with a peak above that (design
// choices).
const (
	Loudness  = -26.0 // LKFS (ITU-R BS.1770-4)
	PeakLimit = 0.49  // linear; just under -6 dBFS
)

// A Meter measures loudness and peak. The loudness is that of ITU-R BS.1770-4
// in blocks of 400 ms that overlap by 75 %, without gates; the mono signal
// counts as both channels of a stereo one, as it is played, so that a full
// scale sine of 997 Hz has 0.0 LKFS, and -3.01 LKFS in one channel.
type Meter struct {
	filter  kWeighting
	hop     int        // samples in a quarter of a block
	n       int        // samples in the quarter that is being filled
	sums    [4]float64 // energies of the last quarters, the newest first
	loudest float64    // energy of the loudest block
	peak    float64
}

// NewMeter makes a meter for a sample rate in hertz, 8000 to 768000.
func NewMeter(rate float64) *Meter {
	rate = clampRate(rate)
	return &Meter{filter: newKWeighting(rate), hop: int(math.Round(rate / 10))}
}

// Write measures the next samples.
func (m *Meter) Write(samples []float32) {
	for _, s := range samples {
		x := float64(s)
		m.peak = math.Max(m.peak, math.Abs(x))
		y := m.filter.run(x)
		m.sums[0] += y * y
		if m.n++; m.n == m.hop {
			m.loudest = math.Max(m.loudest, m.block())
			copy(m.sums[1:], m.sums[:3])
			m.sums[0], m.n = 0, 0
		}
	}
}

// block is the energy of the last block, padded with silence.
func (m *Meter) block() float64 { return m.sums[0] + m.sums[1] + m.sums[2] + m.sums[3] }

// Loudness returns the greatest loudness of any block of 400 ms so far, in
// LKFS; what is shorter is padded with silence. -Inf for silence.
func (m *Meter) Loudness() float64 {
	mean := math.Max(m.loudest, m.block()) / float64(4*m.hop)
	return -0.691 + 10*math.Log10(2*mean)
}

// Peak returns the greatest absolute sample so far.
func (m *Meter) Peak() float64 { return m.peak }
