package synth

import "math"

// limitEdge is the frequency up to which everything is whole; from rate -
// limitEdge on there is nothing. At rates under 44.1 kHz it is lower.
const limitEdge = 20000.0

// A build is what a core is made for and cannot change.
type build struct {
	how                How
	shapeA, shapeB     Shape
	footageA, footageB float64
	character          float64
}

func buildOf(s *Sound) build {
	return build{s.Combine.How, s.A.Shape, s.B.Shape, s.A.Footage, s.B.Footage, s.Character}
}

// A core is the two oscillators and their combination for one choice of
// shapes, footages and way to combine, up to the output rate.
type core struct {
	build build
	rate  float64
	over  int // samples of an oscillator for one of the output
	a, b  osc
	last  control // at the end of the last step
	dev   float64 // of the phase of A, in cycles
	next  float64 // the same one sample later
	// What comes next of the same, before its droop is undone.
	splined [droopMost + 1]float64

	m1, m2 int
	late   int          // output samples by which second is late
	first  *halfband    // from four times to twice the output rate
	limits [2]*halfband // of operands of a product
	second *halfband    // from twice to the output rate

	pasts [pastSteps]past // the phases, per step
	step  int
}

func newCore(rate float64) *core {
	edge := math.Min(limitEdge, 0.4535*rate)
	h1 := halfbandTaps(edge / (4 * rate))
	h2 := halfbandTaps(edge / (2 * rate))
	c := &core{rate: rate, m1: len(h1), m2: len(h2), first: newHalfband(h1, ticks/2, 0)}
	for i := range c.limits {
		c.limits[i] = newHalfband(h2, tick, 0)
	}
	// A delay of whole ticks, but for products and frequency modulation: what
	// is worked out at the end of a tick holds exactly at every 16th sample.
	c.use(build{})
	c.late = tick - 1 - (c.delay()/2+tick-1)%tick
	c.second = newHalfband(h2, tick, c.late)
	c.a.resets = make([]reset, 0, ticks)
	c.b.resets = make([]reset, 0, ticks)
	return c
}

// start clears the core and puts the oscillators so that they have these
// phases at the output sample that comes after warm ticks. now is where the
// controls stand at the start, and until that sample.
func (c *core) start(b build, phaseA, phaseB float64, now control) {
	c.use(b)
	c.last = now
	c.first.reset()
	for i := range c.limits {
		c.limits[i].reset()
	}
	c.second.reset()
	k := bend * b.character
	incA, incB := c.increments(&now)
	ahead := c.warm() * tick * c.over
	c.a.start(b.shapeA, k, phaseA-incA*float64(ahead-c.delayA()), now.dutyA)
	c.b.start(b.shapeB, k, phaseB-incB*float64(ahead-c.delayB()), now.dutyB)
	c.a.bare, c.b.bare = c.bare()
	c.b.cut = b.how == Sync
	c.dev, c.next, c.splined, c.step = 0, 0, [droopMost + 1]float64{}, 0
}

// use chooses what the core makes.
func (c *core) use(b build) {
	c.build, c.over = b, 2
	taps := droopPlain
	switch {
	case b.how == FM:
		c.over, taps = 4, droopFourfold
	case c.product():
		taps = droopProduct
	}
	c.a.eq.taps, c.b.eq.taps = taps, taps
}

// bare says which oscillators are sines that nothing has to correct: one
// whose phase anything moves, and a sine that moves it.
func (c *core) bare() (a, b bool) {
	a = c.build.how == FM && c.build.shapeA == Sine
	return a, a && c.build.shapeB == Sine
}

// warm is the number of ticks after which the filters have forgotten that
// there was nothing before.
func (c *core) warm() int { return 2*c.delay()/(tick*c.over) + 2 }

// phases returns the phases of A and B at the output sample that comes next.
func (c *core) phases() (a, b float64) {
	incA, incB := c.increments(&c.last)
	return wrap(c.a.phase - incA*float64(c.delayA())), wrap(c.b.phase - incB*float64(c.delayB()))
}

// increments returns the cycles per sample of A and B.
func (c *core) increments(now *control) (a, b float64) {
	scale, most := 8/(float64(c.over)*c.rate), maxHz/float64(c.over)
	a = now.hzA * scale / c.build.footageA
	b = now.hzB * scale / c.build.footageB
	if c.build.how != OnlyA && c.build.how != Mix {
		b *= now.ratio
	}
	return math.Min(a, most), math.Min(b, most)
}

// delay is how many samples the next output lies behind what the oscillators
// have come to; delayA and delayB are those of either.
func (c *core) delay() int { return max(c.delayA(), c.delayB()) }

// lag is the delay in seconds.
func (c *core) lag() float64 { return float64(c.delay()) / (float64(c.over) * c.rate) }

func (c *core) delayA() int {
	if bare, _ := c.bare(); bare {
		return c.filters()
	}
	return c.filters() + reach + c.a.eq.delay()
}

func (c *core) delayB() int {
	d := reach + c.b.eq.delay()
	switch bareA, bareB := c.bare(); {
	case bareB:
		return c.delayA()
	case bareA:
		return c.delayA() + d
	case c.build.how == FM:
		return c.delayA() + d + 1
	}
	return c.filters() + d
}

// filters is the delay of the way from the oscillators to the output, less the
// one sample that the next is further on.
func (c *core) filters() int {
	d := 2 * (c.m2 - 1 + c.late)
	if c.product() {
		d += 2*c.m2 - 1
	}
	if c.over == 4 {
		d = 2*d + 2*(c.m1-1)
	}
	return d - 1
}
