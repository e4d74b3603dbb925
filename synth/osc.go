package synth

import "math"

// maxHz bounds the frequency of an oscillator, as a multiple of the output rate.
// What lies above is inaudible two octaves over.
const maxHz = 1.8

// maxSine bounds the frequency of a sine that nothing corrects, in cycles per
// sample.
const maxSine = 0.45

// bend is the strength of the bending at full character.
const bend = 0.2

// An osc is one oscillator, at twice or four times the output rate.
type osc struct {
	shape Shape
	k     float64 // bending
	bare  bool    // a sine that goes past spline and droop
	cut   bool    // it is synced
	phase float64 // φ after the last step, without modulation of the phase
	duty  float64 // of a pulse, after the last step

	sine float64 // phase of a sine
	one  walk    // any other shape; of a pulse -s(φ)
	two  walk    // of a pulse s(φ-d)
	line line
	eq   droop
	out  [ticks]float64 // the last step of a bare sine

	move        motion
	phased      bool               // its phase is modulated:
	inc, incTwo [ticks + 1]float64 // see [walk.follow]
	soft        [ticks]float64
	resets      []reset // with the targets of two
}

// start puts the oscillator at phase φ.
func (o *osc) start(shape Shape, k, phase, duty float64) {
	resets, eq := o.resets, o.eq
	*o = osc{shape: shape, k: k, phase: wrap(phase), duty: duty, resets: resets[:0], eq: eq}
	o.eq.reset()
	switch shape {
	case Triangle:
		o.one = triangleWalk(k)
	case Sawtooth:
		o.one = rampWalk(1, k)
	case FallingSawtooth:
		o.one = rampWalk(-1, k)
	case Pulse:
		o.one, o.two = rampWalk(-1, k), rampWalk(1, k)
		o.two.jump(phase - duty)
	}
	o.sine = o.phase
	o.one.jump(o.phase + o.origin())
}

// origin is the phase of the walk where φ is 0.
func (o *osc) origin() float64 {
	if o.shape == Triangle {
		return 0.25
	}
	return 0
}

// advance sets the movement of the step: the frequency moves from one increment
// to another, and the phase by shift cycles beyond that.
func (o *osc) advance(from, to, shift float64) {
	d := (to - from) / ticks
	o.move = motion{from + shift/ticks + d/2, d}
	o.phased = false
	o.phase = wrap(o.phase + ticks*(from+to)/2 + shift)
}

// modulate moves the phase by dev cycles more; last is dev before the step, next
// dev after it, splined is dev as the spline makes it.
func (o *osc) modulate(dev, splined *[ticks]float64, last, next float64) {
	o.phased = true
	for i, d := range dev {
		o.inc[i] = o.move.at(i) + d - last
		o.soft[i] = splined[i] - d
		last = d
	}
	o.inc[ticks] = o.move.at(ticks) + next - last
}

// run makes the step after advance and returns it, delayed by reach unless
// bare. duty is what a pulse has at its end.
func (o *osc) run(duty float64, resets []reset) *[ticks]float64 {
	if o.bare {
		o.modulated()
		return &o.out
	}
	o.line.next()
	switch {
	case o.shape == Sine:
		o.sines(resets)
	case o.shape == Pulse:
		o.pulse(duty, resets)
	case o.phased:
		o.one.follow(&o.line, &o.inc, &o.soft)
	default:
		for i := range resets {
			resets[i].to = o.origin()
		}
		o.one.run(&o.line, o.move, resets)
	}
	return (*[ticks]float64)(o.line[:])
}

// pulse makes a pulse as the difference of two sawtooths, s(φ-d) - s(φ): exact
// for any movement of d, with no mean (identity: sound.md 3). d is taken
// modulo 1 by the shorter way, so that a sawtooth sweep over the whole period
// goes on without a jump.
func (o *osc) pulse(duty float64, resets []reset) {
	d := duty - o.duty
	d = (d - math.Round(d)) / ticks
	if o.phased {
		for i, x := range o.inc {
			o.incTwo[i] = x - d
		}
		o.one.follow(&o.line, &o.inc, &o.soft)
		o.two.follow(&o.line, &o.incTwo, &o.soft)
		o.duty = duty
		return
	}
	o.resets = o.resets[:0]
	for i, r := range resets {
		resets[i].to = 0
		o.resets = append(o.resets, reset{r.i, r.t, -(o.duty + d*(float64(r.i)+1-r.t))})
	}
	o.one.run(&o.line, o.move, resets)
	o.two.run(&o.line, motion{o.move.first - d, o.move.step}, o.resets)
	o.duty = duty
}

// bow is a sine s bent by k to s + k(1/2 - s²), which is s + k/2·cos 4πφ.
func bow(s, k float64) float64 { return s + k*(0.5-s*s) }

// modulated makes a bare sine, whose phase moves by any amount per sample.
func (o *osc) modulated() {
	p := o.sine
	for i := range o.out {
		d := o.move.at(i)
		if o.phased {
			d = o.inc[i]
		}
		p += d
		p -= math.Floor(p)
		o.out[i] = p
	}
	o.sine = p
	sinesOf(&o.out)
	if o.k != 0 {
		for i, s := range o.out {
			o.out[i] = bow(s, o.k)
		}
	}
}

// sines makes a sine. It is scaled so that it leaves the droop filter exact;
// if resets may cut it off, as the B-spline would scale it, so that it fits
// the corrections.
func (o *osc) sines(resets []reset) {
	from, to := o.move.at(0), o.move.at(ticks-1)
	gain := o.eq.undo
	switch {
	case o.cut:
		gain = spline
	case max(from, to) > maxSine:
		gain = func(float64) float64 { return 0 }
	}
	g, dg, g2, dg2 := gain(from), 0.0, 0.0, 0.0
	if from != to {
		dg = (gain(to) - g) / ticks
	}
	if o.k != 0 {
		g2 = o.k * gain(2*from)
		dg2 = (o.k*gain(2*to) - g2) / ticks
	}
	p, d := o.sine, from
	for i := range o.out {
		p += d
		if len(resets) > 0 && resets[0].i == i {
			p = o.cutSine(i, p, d*resets[0].t, d, resets[0].t)
			resets = resets[1:]
		}
		if p >= 1 {
			p--
		} else if p < 0 {
			p++
		}
		o.out[i] = p
		d += o.move.step
	}
	o.sine = p
	sinesOf(&o.out)
	line := (*[ticks]float64)(o.line[reach:])
	for i, s := range o.out {
		line[i] += g*s + g2*(0.5-s*s)
		g += dg
		g2 += dg2
	}
}

// cutSine corrects for a sine that is sent to phase 0 t samples before sample
// i, where it would have phase p, and returns the phase it has instead.
func (o *osc) cutSine(i int, p, since, inc, t float64) float64 {
	p = wrap(p - since)
	s, c := sineOf(p), cosineOf(p)
	w := 2 * math.Pi * inc
	correct(o.line.at(i), t, -s, w*(1-c), w*w)
	if o.k != 0 { // k/2·cos 4πφ
		correct(o.line.at(i), t, o.k*s*s, 2*w*o.k*s*c, 4*w*w)
	}
	return since
}

// wraps runs an oscillator that is not heard and returns where it begins a
// period.
func (o *osc) wraps() []reset {
	o.resets = o.resets[:0]
	p, d := o.sine, o.move.first
	for i := range ticks {
		p += d
		if p >= 1 {
			p--
			o.resets = append(o.resets, reset{i: i, t: math.Min(p/d, 1)})
		} else if p < 0 {
			p++
		}
		d += o.move.step
	}
	o.sine = p
	return o.resets
}
