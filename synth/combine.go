package synth

import "math"

// run makes the next tick, during which the controls move to now.
func (c *core) run(now *control, out *[tick]float64) {
	var block, other [ticks]float64
	if c.over == 4 {
		var half [ticks]float64
		between := c.last.halfway(now)
		c.oscillators(&between, &half, &other)
		c.first.decimate(block[:ticks/2], half[:])
		c.oscillators(now, &half, &other)
		c.first.decimate(block[ticks/2:], half[:])
	} else {
		c.oscillators(now, &block, &other)
	}
	if c.product() {
		c.multiply(block[:], other[:])
	}
	c.second.decimate(out[:], block[:])
}

// oscillators makes the next step: the sound, or the two operands of a product.
func (c *core) oscillators(now *control, block, other *[ticks]float64) {
	last := &c.last
	fromA, fromB := c.increments(last)
	toA, toB := c.increments(now)
	c.pasts[c.step%pastSteps] = past{c.a.phase, fromA, toA, c.b.phase, fromB, toB}
	runA := func() *[ticks]float64 {
		c.a.advance(fromA, toA, now.phaseA-last.phaseA)
		return c.a.run(now.dutyA, nil)
	}
	runB := func() *[ticks]float64 {
		c.b.advance(fromB, toB, now.phaseB-last.phaseB)
		return c.b.run(now.dutyB, nil)
	}
	switch c.build.how {
	case OnlyA:
		scale(block, runA(), last.levelA, now.levelA)
		c.a.eq.run(block)
	case Mix:
		scale(block, runA(), last.levelA*onlyB(-last.balance), now.levelA*onlyB(-now.balance))
		scale(other, runB(), last.levelB*onlyB(last.balance), now.levelB*onlyB(now.balance))
		for i, x := range other {
			block[i] += x
		}
		c.a.eq.run(block)
	case Sync:
		c.a.advance(fromA, toA, 0)
		c.b.advance(fromB, toB, 0) // the resets forget any other phase
		scale(block, c.b.run(now.dutyB, c.a.wraps()), last.levelB, now.levelB)
		c.a.eq.run(block)
	case FM:
		const cycle = 2 * math.Pi // radians
		scale(other, runB(), last.levelB*last.index/cycle, now.levelB*now.index/cycle)
		c.a.advance(fromA, toA, now.phaseA-last.phaseA)
		c.modulate(other)
		scale(block, c.a.run(now.dutyA, nil), last.levelA, now.levelA)
		if !c.a.bare {
			c.a.eq.run(block)
		}
	case Ring, AM:
		scale(block, runA(), last.levelA, now.levelA)
		c.a.eq.run(block)
		if c.build.how == Ring {
			scale(other, runB(), last.levelB, now.levelB)
		} else {
			scale(other, runB(), last.levelB*last.depth, now.levelB*now.depth)
		}
		c.b.eq.run(other)
	}
	c.last = *now
	c.step++
}

// modulate moves the phase of A by dev, in cycles and still without its droop
// undone; unless A is bare, one sample later, so that what comes next is known.
func (c *core) modulate(dev *[ticks]float64) {
	var splined [ticks]float64
	n := c.b.eq.delay() + 1
	copy(splined[:], c.splined[:n])
	copy(splined[n:], dev[:])
	copy(c.splined[:n], dev[ticks-n:])
	if !c.b.bare {
		c.b.eq.run(dev)
	}
	next := dev[ticks-1]
	if !c.a.bare {
		copy(dev[1:], dev[:])
		dev[0] = c.next
	}
	c.a.modulate(dev, &splined, c.dev, next)
	c.dev, c.next = dev[ticks-1], next
}

// product says whether the core multiplies its oscillators.
func (c *core) product() bool { return c.build.how == Ring || c.build.how == AM }

// multiply puts the product of the two operands, at twice the output rate, in
// the place of the first: a·b, or a·(1+b). Either operand is whole up to
// limitEdge and has nothing from rate - limitEdge on, so that no sum of two of
// their partials can fold back below limitEdge. This limit is part of what the
// sound is: without one the product of two rich waveforms has no exact value,
// as partials however high have difference tones that are heard (sound.md 5.4).
func (c *core) multiply(a, b []float64) {
	c.limits[0].filter(a)
	c.limits[1].filter(b)
	one := 0.0
	if c.build.how == AM {
		one = 1
	}
	for i, x := range b {
		a[i] *= one + x
	}
}

// onlyB is the gain of B at a balance of A and B: all of it from the middle
// on.
func onlyB(balance float64) float64 { return math.Min(1, 1+balance) }

// scale multiplies a block by a gain that moves in a straight line.
func scale(out, in *[ticks]float64, from, to float64) {
	if from == 1 && to == 1 {
		*out = *in
		return
	}
	d := (to - from) / ticks
	for i, x := range in {
		from += d
		out[i] = x * from
	}
}
