package plot

import "math"

// A Trigger chooses where the picture of a sound starts, again and again, so
// that a steady sound stands still. It remembers the picture it chose last.
//
// Candidates are the newest few instants at which the sound's cycle begins.
// Of these it takes the one whose picture is most like the last: a pattern
// that spans several cycles (a second oscillator at 1.5 times or half the
// frequency) stands still too, and a slow change is seen as a slow change.
//
// Weakness: the picture of a slowly changing sound may be as old as the oldest
// candidate, eight cycles.
type Trigger struct {
	last  [lookAt]float32
	valid bool
	now   [lookAt]float32

	smoothed []float32 // scratch
}

const (
	lookAt     = 96 // points compared across the picture
	smoothing  = 6  // corner of the low-pass in cycles a picture: about the second partial
	candidates = 8  // cycles: patterns of up to eight cycles are found again
	// Scores this close (as a share of the picture's energy) count as equal, and
	// the newest wins: an rms difference of a thousandth, 0.1 of 100 pixels.
	sameScore = 1e-6
)

// Start returns the time, in samples, at which a picture span samples long
// should start. cycle holds beside each sample the phase, 0 to 1, of what the
// picture is triggered by; where it is missing, rising crossings of zero serve. Every input is answered, silence and none at all with the
// newest stretch there is.
func (t *Trigger) Start(samples, cycle []float32, span float64) float64 {
	newest := float64(len(samples)) - span - reach
	if !(newest >= reach) { // also where span is not a number
		return 0
	}
	if len(cycle) != len(samples) {
		t.smoothed = smooth(t.smoothed[:0], samples, smoothing/span)
		return t.choose(samples, span, crossings(t.smoothed, newest))
	}
	return t.choose(samples, span, wraps(cycle, newest))
}

// A source yields candidates from new to old; ok is false where there are no more.
type source func() (at float64, ok bool)

// wraps yields the instants at which the phase wraps from 1 to 0, between the
// samples, newest first.
func wraps(cycle []float32, newest float64) source {
	i := int(newest)
	return func() (float64, bool) {
		for ; i > reach; i-- {
			before, after := float64(cycle[i-1]), float64(cycle[i])
			if before-after > 0.5 { // it fell by more than half a cycle: it wrapped
				at := float64(i-1) + (1-before)/(1-before+after)
				i--
				return at, true
			}
		}
		return 0, false
	}
}

// choose takes the best of the candidates and remembers its picture.
func (t *Trigger) choose(samples []float32, span float64, next source) float64 {
	var at, score [candidates]float64
	n, best, energy := 0, 0, 0.0
	for n < candidates {
		c, ok := next()
		if !ok {
			break
		}
		at[n] = c
		t.look(samples, c, span)
		score[n] = t.difference()
		if !t.valid {
			score[n] = t.balance()
		}
		for _, v := range t.now {
			energy = max(energy, float64(v)*float64(v))
		}
		n++
	}
	if n == 0 {
		t.valid = false
		return float64(len(samples)) - span - reach
	}
	for i := 1; i < n; i++ { // newest first, so only a clearly better one wins
		if score[i] < score[best]-sameScore*energy*lookAt {
			best = i
		}
	}
	t.look(samples, at[best], span)
	t.last, t.valid = t.now, true
	return at[best]
}

// look samples the picture that starts at a time.
func (t *Trigger) look(samples []float32, start, span float64) {
	for i := range t.now {
		t.now[i] = cubic(samples, start+span*float64(i)/lookAt)
	}
}

// difference is the squared difference between the picture looked at and the last.
func (t *Trigger) difference() float64 {
	sum := 0.0
	for i, v := range t.now {
		d := float64(v - t.last[i])
		sum += d * d
	}
	return sum
}

// balance is a property of the picture alone, by which the first picture is
// chosen, so that it does not depend on the time of opening: how much lies late.
func (t *Trigger) balance() float64 {
	sum := 0.0
	for i, v := range t.now {
		sum += math.Abs(float64(v)) * float64(i) / lookAt
	}
	return sum
}

// cubic interpolates with a third-degree Lagrange polynomial: coarse above a
// quarter of the rate, but it only ranks pictures.
func cubic(samples []float32, t float64) float32 {
	n := int(t)
	if n < 1 || n+2 >= len(samples) {
		return 0
	}
	x := float32(t - float64(n))
	a, b, c, d := samples[n-1], samples[n], samples[n+1], samples[n+2]
	return -a*x*(x-1)*(x-2)/6 + b*(x+1)*(x-1)*(x-2)/2 - c*(x+1)*x*(x-2)/2 + d*(x+1)*x*(x-1)/6
}
