package take

import (
	"math"
	"slices"
)

// blockSeconds is the time over which levels are taken: an onset is found to
// within it.
const blockSeconds = 0.002

// quietest is the root mean square, full scale 1, below which a recording is
// silent: -60 dB, 33 steps of 16 bits (design choice).
const quietest = 1e-3

// A stretch is the part of a recording that sounds.
type stretch struct {
	start, end int       // in samples
	block      int       // samples of a block
	level      []float64 // root mean square of each block of the stretch, smoothed over 32 ms
	floor      float64   // of the recording around it
	top        float64   // the loudest level
}

// stretchOf finds where the level rises above the floor of the recording and
// where it last falls to it: 10 dB above the floor, but at most 60 and at least
// 12 dB under the loudest (design choices). nil for silence.
func stretchOf(x []float32) *stretch {
	s := &stretch{block: int(blockSeconds * Rate)}
	// Of the differences from a mean of 64 ms, so that DC has no level.
	centred := withoutDC(x)
	var rms []float64
	for i := 0; i < len(x); i += s.block {
		sum := 0.0
		b := centred[i:min(i+s.block, len(x))]
		for _, v := range b {
			sum += v * v
		}
		rms = append(rms, math.Sqrt(sum/float64(len(b))))
	}
	if len(rms) == 0 {
		return nil
	}
	smooth := smoothed(rms, 16)
	s.top = slices.Max(smooth)
	if s.top < quietest {
		return nil
	}
	sorted := slices.Sorted(slices.Values(smooth))
	s.floor = sorted[len(sorted)/20]
	least := math.Max(s.top*1e-3, math.Min(s.top*0.25, s.floor*3))
	first, last := 0, len(rms)-1
	for rms[first] < least {
		first++
	}
	for rms[last] < least {
		last--
	}
	s.start, s.end = first*s.block, min((last+1)*s.block, len(x))
	s.level = smooth[first : last+1]
	return s
}

// withoutDC takes from x its mean over all of it.
func withoutDC(x []float32) []float64 {
	mean := 0.0
	for _, v := range x {
		mean += float64(v)
	}
	mean /= float64(max(1, len(x)))
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = float64(v) - mean
	}
	return out
}

// smoothed is the root mean square of n neighbouring values.
func smoothed(x []float64, n int) []float64 {
	sums := make([]float64, len(x)+1)
	for i, v := range x {
		sums[i+1] = sums[i] + v*v
	}
	out := make([]float64, len(x))
	for i := range out {
		from, to := max(0, i-n/2), min(len(x), i+n/2)
		out[i] = math.Sqrt((sums[to] - sums[from]) / float64(max(1, to-from)))
	}
	return out
}

// rests says whether the sound falls silent for a quarter of a second and
// comes back: 40 dB under the loudest and back to within 20 (design choices: a
// tremolo of the shape of a square with more than two swings a second does not).
func (s *stretch) rests() bool {
	quiet, heard := 0, false
	for _, l := range s.level {
		switch {
		case l > s.top*0.1:
			if heard && float64(quiet)*blockSeconds >= 0.25 {
				return true
			}
			heard, quiet = true, 0
		case l < s.top*0.01 || l < s.floor*2:
			quiet++
		}
	}
	return false
}

// steady is the part, in samples of the recording, from where the level has
// come within 3 dB of its loudest to where it leaves the uppermost 20 dB for
// good, less 30 ms at either end where there is time.
func (s *stretch) steady() (from, to int) {
	first, last := 0, len(s.level)-1
	for s.level[first] < s.top*0.7 {
		first++
	}
	for last > first && s.level[last] < s.top*0.1 {
		last--
	}
	from, to = s.start+first*s.block, min(s.end, s.start+(last+1)*s.block)
	if edge := int(0.03 * Rate); to-from > 5*edge {
		from, to = from+edge, to-edge
	}
	if to-from < int(shortest*Rate) {
		from, to = s.start, s.end
	}
	return from, to
}
