package synth

import "math"

// A control is where the controls of the oscillators stand at one instant.
type control struct {
	hzA, hzB       float64 // as at 8 feet and without the ratio
	phaseA, phaseB float64 // of the description
	dutyA, dutyB   float64 // in [0, 1]
	levelA, levelB float64
	balance        float64
	ratio          float64
	depth, index   float64
}

// control works out the controls at a time in seconds from the start of the
// note; more than a tick before it they stand still. lfo is the LFO, -1 to 1.
func (v *Voice) control(seconds, lfo float64) control {
	s := &v.glide.now
	seconds = math.Max(seconds, -tick/v.rate)
	fall := 0.0
	if s.Envelope.A != 0 || s.Envelope.B != 0 || s.Envelope.Depth != 0 {
		fall = math.Exp(-seconds / s.Envelope.Seconds)
	}
	wanderA, wanderB := 0.0, 0.0
	if s.Character > 0 {
		wanderA = s.Character * v.wander[0].cents(seconds)
		wanderB = s.Character * v.wander[1].cents(seconds)
	}
	lfo *= fade(seconds, s.LFO.Fade)
	vibrato := s.LFO.Cents * lfo
	octavesA := (s.Note-69+s.Envelope.A*fall)/12 + (s.A.Cents+vibrato+wanderA)/1200
	octavesB := (s.Note-69+s.Envelope.B*fall)/12 + (s.B.Cents+vibrato+wanderB)/1200
	return control{
		hzA:     440 * v.exp2[0].of(octavesA),
		hzB:     440 * v.exp2[1].of(octavesB),
		phaseA:  s.A.Phase,
		phaseB:  s.B.Phase,
		dutyA:   math.Min(math.Max(s.A.Duty+s.LFO.Duty*lfo, 0), 1),
		dutyB:   math.Min(math.Max(s.B.Duty+s.LFO.Duty*lfo, 0), 1),
		levelA:  s.A.Level,
		levelB:  s.B.Level,
		balance: s.Combine.Balance,
		ratio:   s.Combine.Ratio,
		depth:   s.Combine.Depth * (1 - s.Envelope.Depth*(1-fall)),
		index:   s.Combine.Index * (1 - s.Envelope.Depth*(1-fall)),
	}
}

// halfway returns the controls half way to those of to.
func (c *control) halfway(to *control) control {
	m := func(a, b float64) float64 { return (a + b) / 2 }
	return control{
		hzA: m(c.hzA, to.hzA), hzB: m(c.hzB, to.hzB), phaseA: m(c.phaseA, to.phaseA), phaseB: m(c.phaseB, to.phaseB),
		dutyA: m(c.dutyA, to.dutyA), dutyB: m(c.dutyB, to.dutyB), levelA: m(c.levelA, to.levelA), levelB: m(c.levelB, to.levelB),
		balance: m(c.balance, to.balance), ratio: m(c.ratio, to.ratio), depth: m(c.depth, to.depth), index: m(c.index, to.index),
	}
}

// An exp2 remembers the last power of two it was asked for: pitch mostly
// stands still.
type exp2 struct{ x, y float64 }

func (e *exp2) of(x float64) float64 {
	if x != e.x || e.y == 0 {
		e.x, e.y = x, math.Exp2(x)
	}
	return e.y
}
