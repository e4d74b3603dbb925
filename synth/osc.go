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

// An osc is one oscillator at the oversampled rate.
type osc struct {
	shape  Shape
	k      float64 // bending
	phased bool    // its phase is modulated: a sine then leaves the droop out
	cut    bool    // it is synced
	phase  float64 // φ after the last tick, without modulation of the phase
	duty   float64 // of a pulse, after the last tick

	sine float64 // phase of a sine
	one  walk    // any other shape; of a pulse -s(φ)
	two  walk    // of a pulse s(φ-d)
	line line
	eq   droop
	out  [ticks]float64 // the last tick, delayed by reach unless bare

	inc, inc2 [ticks]float64
	soft      [ticks]float64 // see [walk.run]; 0 without modulation of the phase
	resets    []reset        // with the targets of two
	from      float64        // cycles per sample at the start and the end of the tick
	to        float64
}

// start puts the oscillator at phase φ.
func (o *osc) start(shape Shape, k, phase, duty float64, phased bool) {
	resets := o.resets
	*o = osc{shape: shape, k: k, phased: phased, phase: wrap(phase), duty: duty, resets: resets[:0]}
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

// bare says that out comes straight from the sine.
func (o *osc) bare() bool { return o.phased && o.shape == Sine }

// move sets the increments of the tick: the frequency moves from what it was
// to inc, and the phase by shift cycles beyond that.
func (o *osc) move(from, to, shift float64) {
	o.from, o.to = from+shift/ticks, to+shift/ticks
	d := (to - from) / ticks
	x := o.from + d/2
	for i := range o.inc {
		o.inc[i] = x
		x += d
	}
	o.phase = wrap(o.phase + ticks*(o.from+o.to)/2)
}

// modulate moves the phase by dev cycles more; last is dev before the tick,
// splined is dev as the spline makes it.
func (o *osc) modulate(dev, splined *[ticks]float64, last float64) {
	for i, d := range dev {
		o.inc[i] += d - last
		o.soft[i] = splined[i] - d
		last = d
	}
}

// run makes the tick after move. duty is what a pulse has at its end.
func (o *osc) run(duty float64, resets []reset) {
	switch {
	case o.shape == Sine && o.phased:
		o.modulated()
		return
	case o.shape == Sine:
		o.sines(resets)
	case o.shape == Pulse:
		o.pulse(duty, resets)
	default:
		for i := range resets {
			resets[i].to = o.origin()
		}
		o.one.run(&o.line, &o.inc, &o.soft, resets)
	}
	copy(o.out[:], o.line[:])
	o.line.next()
}

// pulse makes a pulse as the difference of two sawtooths, s(φ-d) - s(φ): exact
// for any movement of d, with no mean (identity: sound.md 3). d is taken
// modulo 1 by the shorter way, so that a sawtooth sweep over the whole period
// goes on without a jump.
func (o *osc) pulse(duty float64, resets []reset) {
	d := duty - o.duty
	d = (d - math.Round(d)) / ticks
	for i := range o.inc2 {
		o.inc2[i] = o.inc[i] - d
	}
	o.resets = o.resets[:0]
	for i, r := range resets {
		resets[i].to = 0
		o.resets = append(o.resets, reset{r.i, r.t, -(o.duty + d*(float64(r.i)+1-r.t))})
	}
	o.one.run(&o.line, &o.inc, &o.soft, resets)
	o.two.run(&o.line, &o.inc2, &o.soft, o.resets)
	o.duty = duty
}

// bow is a sine s bent by k to s + k(1/2 - s²), which is s + k/2·cos 4πφ.
func bow(s, k float64) float64 { return s + k*(0.5-s*s) }

// modulated makes a sine whose phase moves by any amount per sample.
func (o *osc) modulated() {
	p := o.sine
	for i, d := range o.inc {
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
	gain := undroop
	switch {
	case o.cut:
		gain = spline
	case max(o.from, o.to) > maxSine:
		gain = func(float64) float64 { return 0 }
	}
	g, g2 := gain(o.from), o.k*gain(2*o.from)
	dg, dg2 := (gain(o.to)-g)/ticks, (o.k*gain(2*o.to)-g2)/ticks
	p := o.sine
	for i, d := range o.inc {
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
	}
	o.sine = p
	sinesOf(&o.out)
	line := (*[ticks]float64)(o.line[reach:])
	for i, s := range o.out {
		g += dg
		g2 += dg2
		line[i] += g*s + g2*(0.5-s*s)
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
	p := o.sine
	for i, d := range o.inc {
		p += d
		if p >= 1 {
			p--
			o.resets = append(o.resets, reset{i: i, t: math.Min(p/d, 1)})
		} else if p < 0 {
			p++
		}
	}
	o.sine = p
	return o.resets
}
