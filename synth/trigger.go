package synth

// pastSteps bounds how far an output lies behind the oscillators: 9 steps for
// frequency modulation at 44.1 kHz.
const pastSteps = 16

// A past is the movement of the phases of A and B during one step.
type past struct {
	a, fromA, toA float64
	b, fromB, toB float64
}

// sameTrigger is how much slower B must be, as a fraction, to take the trigger
// from A: more than detuning, wander and rounding make of two equal pitches,
// so that the picture does not change hands.
const sameTrigger = 0.07

// byB says whether B triggers: the slowest oscillator that is heard.
func (c *core) byB() bool {
	l := &c.last
	a, b := c.increments(l)
	switch c.build.how {
	case OnlyA, Sync:
		return false
	case Mix:
		heardA, heardB := l.levelA > 0 && l.balance < 1, l.levelB > 0 && l.balance > -1
		return heardB && (!heardA || b < a*(1-sameTrigger))
	case AM:
		if l.depth == 0 {
			return false
		}
	case FM:
		if l.index == 0 {
			return false
		}
	}
	return l.levelB > 0 && b < a*(1-sameTrigger)
}

// cycles writes the triggering phase at each output sample of the last tick.
func (c *core) cycles(out *[tick]float32) {
	byB, delay := c.byB(), c.delayA()
	if byB {
		delay = c.delayB()
	}
	for i := range out {
		// From the start of the last step that was made.
		x := c.over*(i-tick) + ticks - delay
		t := c.step - 1
		for x < 0 {
			x += ticks
			t--
		}
		p := &c.pasts[(t+pastSteps)%pastSteps]
		phase, from, to := p.a, p.fromA, p.toA
		if byB {
			phase, from, to = p.b, p.fromB, p.toB
		}
		r := float64(x)
		y := float32(wrap(phase + from*r + (to-from)*r*r/(2*ticks)))
		if y >= 1 { // rounded up
			y = 0
		}
		out[i] = y
	}
}
