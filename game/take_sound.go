package game

import (
	"math"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// Recording is the recording that should sound now, over and over with a short gap,
// and its linear gain; nil for none. What else sounds is in [Game.Program].
func (g *Game) Recording() (t *take.Take, gain float64) {
	target, yours := g.playing.loud.gains()
	mine, wanted := g.work.mine.tape, g.work.wanted.tape
	switch g.playing.what {
	case toTarget:
		return wanted, target
	case toYours:
		return mine, yours
	case inTurn:
		switch {
		case g.taking.described:
		case wanted != nil:
			return wanted, target
		case mine != nil:
			return mine, yours
		}
	}
	return nil, 0
}

// taped says whether one of two sounds is a recording.
func (g *Game) taped() bool { return g.work.mine.tape != nil || g.work.wanted.tape != nil }

// besideTape is the program while a recording is one of the sounds.
func (g *Game) besideTape() synth.Program {
	p := synth.Program{Gap: gap}
	target, yours := g.playing.loud.gains()
	all := g.playing.what == inTurn && g.taking.described
	p.Once = all
	if g.work.wanted.tape == nil && (all || g.playing.what == toTarget) {
		p.Items = append(p.Items, synth.Item{ID: int(toTarget), Sound: g.work.target, Gain: target})
	}
	if g.work.mine.tape == nil && (all || g.playing.what == toYours) {
		p.Items = append(p.Items, synth.Item{ID: int(toYours), Sound: g.work.yours, Gain: yours})
	}
	return p
}

// takeTurns lets the recording and the described sound sound in turn.
func (g *Game) takeTurns() {
	k := &g.taking
	if g.playing.what != inTurn || !g.taped() {
		return
	}
	if k.since < g.playing.since {
		k.since, k.described = g.playing.since, g.work.wanted.tape == nil
	}
	if (g.in.Now - k.since).Seconds() >= g.turnSeconds() {
		k.since, k.described = g.in.Now, !k.described
	}
}

// turnSeconds is how long the present turn lasts.
func (g *Game) turnSeconds() float64 {
	s := &g.work.yours
	if g.work.mine.tape != nil {
		s = &g.work.target
	}
	if g.taking.described {
		return s.Seconds + s.Amplitude.Release + gap
	}
	t := g.work.wanted.tape
	if t == nil {
		t = g.work.mine.tape
	}
	return t.Seconds + gap
}

// recorded makes the picture that of a recording, from the middle of its steady part.
func (p *picture) recorded(t *take.Take) {
	*p = picture{tape: t, stale: true}
}

// steady takes what is pictured of a recording. Its trace starts where the phase of
// the fundamental is a given one, in cycles.
func (p *picture) steady() {
	t := p.tape
	n := len(t.Samples)
	middle := int((t.From + t.To) / 2 * Rate)
	from := max(0, min(middle-Window/2, n-Window))
	p.samples = append(p.samples[:0], t.Samples[from:min(n, from+Window)]...)
	for len(p.samples) < analysed { // a note of less than a fifth of a second
		p.samples = append(p.samples, 0)
	}
	p.cycle = p.cycle[:0]
	for i := range p.samples {
		at := float64(i) * p.f0() / Rate
		p.cycle = append(p.cycle, float32(at-math.Floor(at)))
	}
	p.turnTo(risesAt)
}

// risesAt is the phase of a sine, in cycles, which rises at its start.
const risesAt = -0.25

// phase is that of the fundamental against the cycle, in cycles.
func (p *picture) phase() float64 {
	var re, im float64
	for i, c := range p.cycle {
		sin, cos := math.Sincos(2 * math.Pi * float64(c))
		re, im = re+float64(p.samples[i])*cos, im-float64(p.samples[i])*sin
	}
	return math.Atan2(im, re) / (2 * math.Pi)
}

// turnTo moves the cycle so that the fundamental has a phase, so that two traces lie
// over one another.
func (p *picture) turnTo(phase float64) {
	by := p.phase() - phase
	for i, c := range p.cycle {
		at := float64(c) + by
		p.cycle[i] = float32(at - math.Floor(at))
	}
}

// align lays the trace of a recording over that of the described sound.
func (g *Game) align() {
	mine, wanted := &g.work.mine, &g.work.wanted
	switch {
	case wanted.tape != nil && mine.tape == nil && len(mine.cycle) > 0 && !mine.live:
		wanted.turnTo(mine.phase())
	case mine.tape != nil && wanted.tape == nil && len(wanted.cycle) > 0 && !wanted.live:
		mine.turnTo(wanted.phase())
	}
}
