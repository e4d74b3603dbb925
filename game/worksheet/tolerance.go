package worksheet

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

const (
	enough  = 80 // marks, which count as right in practice too
	nearby  = 3  // just-noticeable steps at which so many are left (testdata/measured/marks.md)
	halving = 4  // times the way between enough and too few is halved: a bound lies within a tenth of its distance
)

// A tolerance finds how far a control may lie from its target on either side until fewer marks than
// enough are left, with everything else as in the target. It marks one sound a step.
type tolerance struct {
	target  synth.Sound
	control sheet.Control
	times   float64

	reference *mark.Reference
	sides     [2]side
	at        int // the side that is being worked on
}

// A side is the way from the target to one end of the control's range.
type side struct {
	begun     bool
	good, bad float64 // values with and without enough marks; bad is NaN until one is known
	end       float64
	try       float64
	left      int // halvings
}

func (t *tolerance) low() float64  { return t.sides[0].good }
func (t *tolerance) high() float64 { return t.sides[1].good }

// step goes on, and says whether both sides are known.
func (t *tolerance) step() (done bool) {
	if t.reference == nil {
		t.reference = mark.Measure(t.target)
		at := t.control.Get(&t.target)
		t.sides = [2]side{{good: at, end: t.control.Min}, {good: at, end: t.control.Max}}
		return false
	}
	s := &t.sides[t.at]
	if !s.begun {
		t.begin(s)
	}
	if s.left > 0 && s.good != s.end {
		yours := t.target
		t.control.Set(&yours, s.try)
		s.take(t.reference.Marks(yours, t.times) >= enough, t.control.Field())
	}
	if s.left <= 0 || s.good == s.end {
		t.at++
	}
	return t.at == len(t.sides)
}

// begin guesses where the marks fall below enough: at the end of the range where it is nearer.
func (t *tolerance) begin(s *side) {
	s.begun, s.bad, s.left, s.try = true, math.NaN(), halving, s.end
	if v, ok := mark.Away(t.control.Field().Name, t.target, nearby*t.times, s.end); ok {
		s.try = v
	}
	if t.control.Field().Whole {
		s.left = int(min(16, math.Abs(s.end-s.good)))
		s.try = s.good + math.Copysign(1, s.end-s.good)
	}
}

// take puts what was tried on its side and chooses what to try next.
func (s *side) take(enough bool, f *synth.Field) {
	tried := s.try
	switch {
	case !enough:
		s.bad = tried
	case math.IsNaN(s.bad): // go on, twice as far
		further := tried + (tried - s.good)
		s.good = tried
		if (s.end-further)*(s.end-tried) <= 0 {
			further = s.end
		}
		if f.Whole {
			further = tried + math.Copysign(1, s.end-tried)
			s.left--
		}
		s.try = further
		return
	default:
		s.good = tried
	}
	s.left--
	if f.Whole {
		s.left = 0 // it goes by ones
	}
	s.try = (s.good + s.bad) / 2
}
