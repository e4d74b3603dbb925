package synth

import "math"

// unit is the level of an oscillator of amplitude 1 at the output of a voice:
// -18 dBFS, the alignment level of EBU R 68 (from memory), so that the loudest
// product of two narrow pulses stays within full scale.
const unit = 0.125

// dcHz is the corner of the one-pole high-pass filter at the output of a
// voice. Products, frequency modulation and sync make a mean; it must not
// reach the ear or eat up headroom. Known weakness: 0.06 dB are missing at the
// lowest pitch there is, 8.2 Hz.
const dcHz = 1

// rounding is what a count of ticks may be off by without being another.
const rounding = 1e-6

// A Voice plays one note. It works in ticks of 16 samples counted from the
// start of the note, so that any split into blocks gives the same bits.
type Voice struct {
	rate   float64
	glide  glide
	lfo    lfo
	wander [2]wander
	seed   float64
	exp2   [2]exp2

	cores   [2]*core // [0] sounds; while mix < 1 [1] is going
	mix     float64
	tick    int     // ticks made
	release float64 // seconds; +Inf before it is known
	gain    float64 // at the end of the last tick
	dcIn    float64
	dcOut   float64

	ready  int // samples of the last tick not yet given away
	out    [tick]float32
	cycle  [tick]float32
	traced bool // cycle is up to date
}

// NewVoice starts a note of s at a sample rate in hertz, 8000 to 768000. Every
// field of s is brought into its range; what is not a number becomes the
// default.
func NewVoice(s Sound, rate float64) *Voice {
	rate = clampRate(rate)
	v := &Voice{rate: rate, cores: [2]*core{newCore(rate), newCore(rate)}}
	v.start(s)
	return v
}

// start begins another note with the same buffers.
func (v *Voice) start(s Sound) {
	*v = Voice{rate: v.rate, cores: v.cores, mix: 1, release: math.Inf(1)}
	v.glide.start(s, v.rate)
	now := &v.glide.now
	v.lfo = lfo{old: now.LFO.Shape, now: now.LFO.Shape, mix: 1}
	v.reseed()
	v.startCore(0, now.A.Phase, now.B.Phase)
}

func (v *Voice) reseed() {
	v.seed = v.glide.now.Seed
	v.wander = newWanders(v.seed)
}

// startCore makes cores[i] what the description wants, with these phases now,
// and warms it up with the controls of the time before.
func (v *Voice) startCore(i int, phaseA, phaseB float64) {
	c := v.cores[i]
	c.use(buildOf(&v.glide.goal))
	warm := c.warm()
	now := v.ahead(c, v.seconds(v.tick)-c.lag())
	c.start(c.build, phaseA, phaseB, now)
	var out [tick]float64
	for i := range warm {
		now = v.ahead(c, v.seconds(v.tick+1+i-warm))
		c.run(&now, &out)
	}
}

// ahead returns the controls that a core needs for the output at a time.
func (v *Voice) ahead(c *core, seconds float64) control {
	s := &v.glide.now
	seconds += c.lag()
	return v.control(seconds, v.lfo.at(&s.LFO, seconds-v.lfo.seconds))
}

// seconds is the time at the end of so many ticks.
func (v *Voice) seconds(n int) float64 { return float64(n) * tick / v.rate }

// Set moves the controls while the note sounds. What is continuous glides to
// its new value within 20 ms; shapes, footages, the way to combine and the
// amount of character go over by a crossfade of 15 ms between two voices in
// phase; length and seed change at once. It takes effect within a millisecond
// or two. s is brought into its ranges as in [NewVoice].
func (v *Voice) Set(s Sound) { v.glide.set(s) }

// Release starts the release of the note now.
func (v *Voice) Release() { v.release = math.Min(v.release, v.seconds(v.tick)) }

// Done says that the note has ended: everything further is zero.
func (v *Voice) Done() bool { return v.ready == 0 && v.over() }

func (v *Voice) over() bool { return v.remaining()*v.rate/tick <= rounding }

// remaining is the time in seconds to the end of the note.
func (v *Voice) remaining() float64 {
	release := v.release
	if math.IsInf(release, 1) {
		release = math.Max(v.glide.now.Seconds, v.seconds(v.tick))
	}
	return release + v.glide.now.Amplitude.Release - v.seconds(v.tick)
}

// Render writes the next samples of the note to dst and, unless cycle is nil,
// to cycle the phase in [0, 1) of the slowest oscillator that is heard at each
// of them: the trigger of an oscilloscope. cycle must be as long as dst. The
// delay of the filters is made up for: the note starts with the first sample.
// An oscillator of amplitude 1 has amplitude 0.125 here.
func (v *Voice) Render(dst, cycle []float32) {
	for i := 0; i < len(dst); {
		if v.ready == 0 {
			v.next()
		}
		n := min(v.ready, len(dst)-i)
		copy(dst[i:i+n], v.out[tick-v.ready:])
		if cycle != nil {
			copy(cycle[i:i+n], v.trace()[tick-v.ready:])
		}
		v.ready -= n
		i += n
	}
}

// trace returns the triggering phase at each sample of the last tick.
func (v *Voice) trace() *[tick]float32 {
	if !v.traced {
		v.cores[0].cycles(&v.cycle)
		v.traced = true
	}
	return &v.cycle
}

// next makes a tick.
func (v *Voice) next() {
	v.ready = tick
	if v.over() {
		v.out, v.cycle, v.traced = [tick]float32{}, [tick]float32{}, true
		return
	}
	v.prepare()
	start, end := v.seconds(v.tick), v.seconds(v.tick+1)
	s := &v.glide.now
	if math.IsInf(v.release, 1) && end > s.Seconds {
		v.release = math.Max(s.Seconds, start)
	}
	var block, old [tick]float64
	now := v.ahead(v.cores[0], end)
	v.cores[0].run(&now, &block)
	if v.mix < 1 {
		now = v.ahead(v.cores[1], end)
		v.cores[1].run(&now, &old)
		v.fade(&block, &old)
	}
	v.finish(&block, s.Amplitude.level(end, v.release)*tremolo(s.LFO.Level*fade(end, s.LFO.Fade), v.lfo.at(&s.LFO, 0)))
	v.traced = false
	v.tick++
}

// prepare moves the controls to the end of the tick and starts a crossfade
// where one is due.
func (v *Voice) prepare() {
	if v.mix == 1 && v.cores[0].build != buildOf(&v.glide.goal) {
		v.cores[0], v.cores[1] = v.cores[1], v.cores[0]
		a, b := v.cores[1].phases()
		v.startCore(0, a, b)
		v.mix = 0
	}
	v.glide.advance()
	if v.glide.now.Seed != v.seed {
		v.reseed()
	}
	v.lfo.advance(&v.glide.now.LFO, tick/v.rate)
}

// fade mixes the core that is going into the one that comes. They are in
// phase, so the gains and not the powers add up to one.
func (v *Voice) fade(block, old *[tick]float64) {
	from := raisedCosine(v.mix)
	v.mix = math.Min(1, v.mix+tick/(v.rate*crossfade))
	d := (raisedCosine(v.mix) - from) / tick
	for i := range block {
		from += d
		block[i] = from*block[i] + (1-from)*old[i]
	}
}

// tremolo is the gain by which an LFO of this depth swings the level.
func tremolo(depth, lfo float64) float64 { return 1 - depth*(1-lfo)/2 }

// finish takes the mean off and puts the gain on, which moves to gain.
func (v *Voice) finish(block *[tick]float64, gain float64) {
	pole := 1 - 2*math.Pi*dcHz/v.rate
	d := (unit*gain - v.gain) / tick
	for i, x := range block {
		v.dcOut = pole*v.dcOut + x - v.dcIn
		v.dcIn = x
		v.out[i] = float32(v.gain * v.dcOut)
		v.gain += d
	}
}

// Render returns the whole note of s at a sample rate in hertz: its length and
// its release, rounded up to a multiple of 16 samples. See [NewVoice] and
// [Voice.Render].
func Render(s Sound, rate float64) []float32 {
	v := NewVoice(s, rate)
	s = v.glide.goal
	n := math.Ceil((s.Seconds+s.Amplitude.Release)*v.rate/tick - rounding)
	out := make([]float32, int(n)*tick)
	v.Render(out, nil)
	return out
}
