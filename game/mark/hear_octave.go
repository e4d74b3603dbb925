package mark

import "math"

// octave tells a second tone one or more octaves above the pitch.
type octave struct {
	times int        // its frequency re the pitch: 2, 4 or 8
	class [4]float64 // mean level of partials 1, 3, 5 ..; 2, 6, 10 ..; 4, 12 ..; 8, 16 in dB, a fall of 6 dB an octave taken off
	ok    bool
}

// findOctave sorts the partials by how often two divides their number. A second
// tone 2, 4 or 8 times as high adds to all classes from its own on: the first
// class that moves while those before stand still, or else stands 4 dB or more
// out of all before, is taken for it (design choices). Known weakness: single shapes with weak odd partials look alike; a
// synced oscillator near a ratio of two is one.
func findOctave(power []float64, stirred [4]float64) (o octave) {
	if len(power) < 8 {
		return
	}
	top := quantile(power, 1)
	var sum, count [4]float64
	for k := 1; k <= min(16, len(power)); k++ {
		c := classOf(k)
		// Low partials count most: their level is heard best.
		w := 1 / math.Sqrt(float64(k))
		sum[c] += w * (math.Max(inaudible, 10*math.Log10(power[k-1]/top+1e-12)) + 6.02*math.Log2(float64(k)))
		count[c] += w
	}
	for c := range sum {
		o.class[c] = inaudible
		if count[c] > 0 {
			o.class[c] = sum[c] / count[c]
		}
	}
	for c := 1; c < 4; c++ {
		if stirred[c-1] > 0.05 {
			break
		}
		if stirred[c] > 0.15 {
			o.times, o.ok = 1<<c, true
			return
		}
	}
	under := o.class[0]
	for c := 1; c < 4; c++ {
		under = math.Max(under, o.class[c-1])
		if o.class[c] > under+4 {
			o.times, o.ok = 1<<c, true
			return
		}
	}
	return
}

// above is the level in dB of the partials of a tone times as high over those
// of the pitch.
func (o octave) above(times int) float64 {
	c := int(math.Log2(float64(times)))
	return o.class[c] - o.class[0]
}

// classOf is how often two divides the number of a partial, 3 at most.
func classOf(n int) (c int) {
	for ; n%2 == 0 && c < 3; n /= 2 {
		c++
	}
	return
}
