package mark

import (
	"math"

	"partialcredit/synth"
)

// plain has the value of every field that is not heard.
var plain = synth.Default()

// reduced returns the plainest description that sounds like s: whatever is not
// heard has its default, and of two settings that sound alike one stands for
// both. The identities are those of hearing.md 1.7 and sound.md 1 and 7.4;
// cmd/desk/credit renders them, and a test of it holds their marks.
func reduced(s synth.Sound) synth.Sound {
	uncombine(&s)
	s.A.Phase, s.B.Phase, s.LFO.Phase = 0, 0, 0
	for _, o := range []*synth.Osc{&s.A, &s.B} {
		switch {
		case o.Shape != synth.Pulse:
			o.Duty = plain.A.Duty
		case o.Duty > 0.5: // d sounds like 1 - d
			o.Duty = 1 - o.Duty
		}
	}
	directions(&s)
	movements(&s)
	return s
}

// uncombine drops what the way to combine does not use, and the way itself
// where it comes to A alone. Overall level is not heard.
func uncombine(s *synth.Sound) {
	c := &s.Combine
	switch {
	case c.How == synth.Mix && (c.Balance <= -1 || s.B.Level == 0),
		c.How == synth.AM && c.Depth*s.B.Level == 0,
		c.How == synth.FM && c.Index*s.B.Level == 0:
		c.How = synth.OnlyA
	case c.How == synth.Mix && (c.Balance >= 1 || s.A.Level == 0):
		c.How, s.A, s.Envelope.A = synth.OnlyA, s.B, s.Envelope.B
	}
	silent := c.How == synth.OnlyA && s.A.Level == 0
	switch c.How {
	case synth.OnlyA:
		s.B, *c, s.Envelope.B, s.A.Level = plain.B, plain.Combine, 0, 1
	case synth.Mix: // levels are compared as their ratio
		*c = synth.Combine{How: synth.Mix, Balance: c.Balance, Ratio: plain.Combine.Ratio, Depth: plain.Combine.Depth, Index: plain.Combine.Index}
		return
	case synth.Sync: // A only gives the pitch
		s.A.Shape, s.A.Duty, s.A.Level, s.B.Level = plain.A.Shape, plain.A.Duty, 1, 1
		c.Balance, c.Depth, c.Index = plain.Combine.Balance, plain.Combine.Depth, plain.Combine.Index
	case synth.Ring:
		s.A.Level, s.B.Level = 1, 1
		c.Balance, c.Depth, c.Index = plain.Combine.Balance, plain.Combine.Depth, plain.Combine.Index
	case synth.AM:
		c.Depth *= s.B.Level
		s.A.Level, s.B.Level = 1, 1
		c.Balance, c.Index = plain.Combine.Balance, plain.Combine.Index
	case synth.FM:
		c.Index *= s.B.Level
		s.A.Level, s.B.Level = 1, 1
		c.Balance, c.Depth = plain.Combine.Balance, plain.Combine.Depth
	}
	if silent {
		s.A.Level = 0
	}
	if c.How != synth.OnlyA { // one ratio says what footage, detune and ratio of B do together
		a, b := s.Hz()
		c.Ratio = b / a
		s.B.Footage, s.B.Cents = s.A.Footage, s.A.Cents
	}
	sawtooth := s.B.Shape == synth.Sawtooth || s.B.Shape == synth.FallingSawtooth
	if c.How == synth.Sync && sawtooth && s.Envelope.B <= 0 {
		c.Ratio = math.Max(c.Ratio, 1) // below it the sawtooth is only cut off, which makes it softer
	}
}

// directions turns falling sawtooths into rising ones where only phases
// change: alone, where the other oscillator's partials do not add to its own
// in step, and both at once.
func directions(s *synth.Sound) {
	falls := func(o *synth.Osc) bool { return o.Shape == synth.FallingSawtooth }
	together := falls(&s.A) && falls(&s.B)
	for _, o := range []*synth.Osc{&s.A, &s.B} {
		if falls(o) && (together || s.Combine.How != synth.FM && s.Combine.How != synth.AM) {
			o.Shape = synth.Sawtooth
		}
	}
}

// movements drops the parts of LFO, envelope and character that move nothing.
func movements(s *synth.Sound) {
	l, e := &s.LFO, &s.Envelope
	pulsed := s.A.Shape == synth.Pulse || s.B.Shape == synth.Pulse
	if !pulsed {
		l.Duty = 0
	}
	if l.Duty == 0 && l.Cents == 0 && l.Level == 0 {
		*l = plain.LFO
	}
	if s.Combine.How != synth.AM && s.Combine.How != synth.FM {
		e.Depth = 0
	}
	if e.A == 0 && e.B == 0 && e.Depth == 0 {
		e.Seconds = plain.Envelope.Seconds
	}
	if s.Amplitude.Sustain == 1 {
		s.Amplitude.Decay = plain.Amplitude.Decay
	}
	if s.Character == 0 {
		s.Seed = plain.Seed
	}
}

// exchanged is s with A and B in each other's place, which a mix does not hear.
func exchanged(s synth.Sound) synth.Sound {
	s.A, s.B = s.B, s.A
	s.Envelope.A, s.Envelope.B = s.Envelope.B, s.Envelope.A
	s.Combine.Balance = -s.Combine.Balance
	return s
}

// gains are the levels of A and B in a mix.
func gains(s *synth.Sound) (a, b float64) {
	return s.A.Level * math.Min(1, 1-s.Combine.Balance), s.B.Level * math.Min(1, 1+s.Combine.Balance)
}
