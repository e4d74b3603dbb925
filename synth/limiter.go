package synth

import "math"

// A limiter keeps samples within the ceiling. Its gain falls at once to what a
// sample needs, stays there for longer than a period of the lowest note, so
// that a steady sound is only made softer and not bent, and then recovers
// slowly. Common practice. Known weakness: the one period in which the gain
// falls is bent.
type limiter struct {
	gain    float64
	hold    int // samples before recovery
	holdAll int
	recover float64 // per sample
}

func newLimiter(rate float64) limiter {
	return limiter{
		gain:    1,
		holdAll: int(0.15 * rate), // the lowest note has a period of 122 ms
		recover: 1 - math.Exp(-1/(0.3*rate)),
	}
}

// run returns x times the gain.
func (l *limiter) run(x float64) float64 {
	y := math.Abs(x)
	if y*l.gain > ceiling {
		l.gain = ceiling / y
	}
	switch {
	case y*l.gain > 0.9*ceiling:
		l.hold = l.holdAll
	case l.hold > 0:
		l.hold--
	default:
		l.gain += (1 - l.gain) * l.recover
	}
	return x * l.gain
}

// A slide is a number on its way in a straight line.
type slide struct {
	now, goal, step float64
	left            int
}

func (s *slide) to(goal, samples float64) {
	s.left = max(1, int(samples))
	s.goal, s.step = goal, (goal-s.now)/float64(s.left)
}

func (s *slide) advance() float64 {
	if s.left > 0 {
		if s.left--; s.left == 0 {
			s.now = s.goal
		} else {
			s.now += s.step
		}
	}
	return s.now
}
