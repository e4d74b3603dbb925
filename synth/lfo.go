package synth

// lfoAt returns the LFO at a phase in [0, 1): like the oscillators of the same
// name, from -1 to 1; the square is high first.
func lfoAt(shape LFOShape, p float64) float64 {
	switch shape {
	case LFOTriangle:
		switch {
		case p < 0.25:
			return 4 * p
		case p < 0.75:
			return 2 - 4*p
		}
		return 4*p - 4
	case LFOSawtooth:
		return 2*p - 1
	case LFOSquare:
		if p < 0.5 {
			return 1
		}
		return -1
	}
	return sineOf(p)
}

// fade is how much of its depth the LFO has after so many seconds: a straight
// line up to 1 (common practice).
func fade(seconds, length float64) float64 {
	switch {
	case seconds >= length && seconds >= 0:
		return 1
	case seconds <= 0:
		return 0
	}
	return seconds / length
}

// An lfo runs the phase of the LFO and lets one shape go over into another.
type lfo struct {
	phase    float64 // in [0, 1), without the start phase of the description
	old, now LFOShape
	mix      float64 // 1 is all now
	seconds  float64 // where the phase is, from the start of the note
}

// at returns the LFO ahead seconds from now.
func (l *lfo) at(s *LFO, ahead float64) float64 {
	p := wrap(l.phase + s.Phase + s.Hz*ahead)
	y := lfoAt(l.now, p)
	if l.mix < 1 {
		y = l.mix*y + (1-l.mix)*lfoAt(l.old, p)
	}
	return y
}

// advance moves on by so many seconds towards the wanted shape.
func (l *lfo) advance(s *LFO, seconds float64) {
	l.phase = wrap(l.phase + s.Hz*seconds)
	l.seconds += seconds
	if l.mix < 1 {
		l.mix = min(l.mix+seconds/crossfade, 1)
	} else if s.Shape != l.now {
		l.old, l.now, l.mix = l.now, s.Shape, 0
	}
}
