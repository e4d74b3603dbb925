package mark

import (
	"math"

	"partialcredit/synth/spectrum"
)

// heard is what can be told from a sound alone. Every percept says whether it
// is sure; a percept that is not sure must not be put into words.
type heard struct {
	sound   *analysis // what was listened to
	silent  bool
	seconds float64 // how long it sounds, from its start to -50 dB

	pitch    pitch
	glide    glide   // an exponential glide of the pitch at the start
	vibrato  vibrato // a periodic movement of the pitch
	partial  partials
	shape    shape           // what the partials look like
	motion   motion          // periodic movement of the levels of the partials
	sweep    sweep           // brightness falling or rising through the note
	tones    tones           // lines of two frequencies, sums and differences
	octave   octave          // a second tone an octave or more above
	loudness loudness        // how the level rises and falls
	pulses   pulses          // two pulses an octave apart
	slid     *slide          // see the method slide
	last     []spectrum.Line // see the method rest
	drift    float64         // in dB, see frames.drift
	gaps     float64         // share of the steady part that is as good as silent
	near     float64         // the frequency in hertz at which the note is written, 0 where unknown

	bright     course  // brightness over time
	inharmonic float64 // share of the power that lies beside the partials of the pitch
	cam        float64 // mean brightness: centroid of the spectrum on the ERB scale, in Cam
}

// quiet is the level (rms over the whole sound, full scale = 1) below which a
// sound counts as silence: -80 dB (design choice).
const quiet = 1e-4

// hear listens to a sound sampled at rate with what is in the kit. near is the frequency in hertz at
// which the note is written, or 0 where it is not known; it only decides
// between explanations that fit equally well.
//
// Known weakness: one voice at a time. Two notes that are neither an octave nor
// a few cents apart are heard as lines, not as two notes.
func hear(kit *spectrum.Kit, samples []float32, rate, near float64) *heard {
	return hearPausing(kit, samples, rate, near, func() {})
}

// hearPausing pauses between its parts, during which nobody else may use the kit.
func hearPausing(kit *spectrum.Kit, samples []float32, rate, near float64, pause func()) *heard {
	h := &heard{near: near}
	a := newAnalysis(kit, samples, rate)
	if a == nil {
		h.silent = true
		return h
	}
	h.sound = a
	h.seconds = float64(a.end-a.start) / rate
	h.pitch = a.findPitch(near)
	pause()
	t := a.track(h.pitch)
	pause()
	h.glide, h.vibrato = readTrack(t, &h.pitch)
	f := a.settle(t, h)
	pause()
	h.partial = f.mean()
	h.pitch.filled = h.partial.filled()
	h.inharmonic = f.inharmonic()
	h.shape = f.shape(h)
	if !h.glide.ok && (!h.shape.ok || h.inharmonic > 0.02 || modulates(h.shape.family)) {
		h.tones = a.findTones(near)
		if h.tones.ok && h.pitch.ok && (harmonic(h.tones.lines, h.pitch.hz) || harmonic(h.tones.lines, h.pitch.hz/2)) {
			h.tones.ok = false // one pitch explains as much
		}
		h.shape.ok = h.shape.ok && !h.tones.ok
	}
	if h.vibrato.ok && math.Abs(h.glide.semitones) < 3 && h.glide.seconds < 0.5/h.vibrato.hz {
		h.glide.ok = false // the first swing of the vibrato
	}
	if h.shape.ok && resets(h.shape.family) && math.Abs(h.glide.semitones) < 3 {
		h.glide.ok = false // a peak that moves pulls the track along
	}
	pause()
	h.motion = f.motion(h)
	pause()
	if h.vibrato.ok && h.phaseSwing() {
		flat := *t
		flat.cents = make([]float64, len(t.cents))
		// A vibrato that is one leaves more beside the partials of a constant pitch
		// than along its track.
		if g := a.frames(&flat, h); g.inharmonic() < 1.3*f.inharmonic()+0.02 {
			h.vibrato.ok = false
			f = g
			h.partial = f.mean()
			h.shape = f.shape(h)
			h.motion = f.motion(h)
		}
	}
	if m := h.motion; (m.kind == width || m.kind == beats) && m.sure > 0.6 && math.Abs(h.glide.semitones) < 3 {
		h.glide.ok = false // as with the vibrato
	}
	if m := h.motion; h.vibrato.ok && (m.kind == width || m.kind == tremolo) && (m.depth < 0.3 && inStep(m.hz, h.vibrato.hz) || m.depth < 0.15) {
		h.motion = motion{} // what the track leaves of the vibrato
	}
	if !h.glide.ok && math.Abs(f.offset) < 0.003*h.pitch.hz {
		h.pitch.hz += f.offset
	}
	if !h.shape.ok { // one shape explains as much
		power := f.unbeaten(h)
		h.octave, h.pulses = findOctave(power, f.stirred()), hearPulses(power)
	}
	pause()
	h.loudness = a.loudness(h.pitch.hz)
	pause()
	h.cam = f.brightness()
	h.bright = f.course()
	h.drift = f.drift(h)
	h.gaps = f.gaps()
	if h.motion.kind == still || h.motion.kind == slow {
		h.sweep = f.sweep()
	}
	return h
}

// phaseSwing says whether the vibrato is only the movement of phases which comes
// with beats and with a moving duty. A duty that swings by ±D at f hertz moves
// the frequency by 2·f·D at most, here f (derived from pulse = sawtooth -
// sawtooth), a third more where it is measured roughly.
func (h *heard) phaseSwing() bool {
	m, v := h.motion, h.vibrato
	if m.kind != width && m.kind != beats || m.sure < 0.6 || m.depth < 0.2 {
		return false
	}
	if h.shape.family == pulse && m.kind == width && m.depth > 0.5 && (m.sure > 0.8 || inStep(m.hz, v.hz)) {
		return true // the track strayed where the pulse is thin
	}
	return v.cents < 1.3*1200*math.Log2(1+v.hz/h.pitch.hz)
}

// inStep says whether two rates are equal or octaves apart.
func inStep(a, b float64) bool {
	x := math.Log2(a / b)
	return math.Abs(x-math.Round(x)) < 0.07
}

// settle cuts the sound into frames along its pitch track. A glide is believed
// only where the sound is more harmonic along it than along a constant pitch.
func (a *analysis) settle(t *track, h *heard) *frames {
	f := a.frames(t, h)
	if !h.glide.ok {
		return f
	}
	flat := &track{hop: t.hop, base: t.middle}
	g := a.frames(flat, h)
	if until := 3 * h.glide.seconds; f.early(until) < 0.75*g.early(until) && f.inharmonic() < 0.05 {
		return f
	}
	h.glide.ok = false
	if h.vibrato.ok {
		return f
	}
	*t = *flat
	h.pitch.hz = t.base
	return g
}

// An analysis holds a sound while it is listened to.
type analysis struct {
	kit        *spectrum.Kit
	x          []float32
	rate       float64
	start, end int // the part that sounds: from its start to where it dies away
}

// newAnalysis finds where the sound starts (-70 dB of its loudest 5 ms) and
// where it has died away (-50 dB); nil where it is silent. (Design choices.)
func newAnalysis(kit *spectrum.Kit, x []float32, rate float64) *analysis {
	block := max(1, int(rate*0.005))
	var loudest, sum float64
	power := make([]float64, 0, len(x)/block+1)
	for i := 0; i < len(x); i += block {
		p := 0.0
		b := x[i:min(i+block, len(x))]
		for _, v := range b {
			if v == v && !math.IsInf(float64(v), 0) {
				p += float64(v) * float64(v)
			}
		}
		sum += p
		p /= float64(len(b))
		power = append(power, p)
		loudest = max(loudest, p)
	}
	if len(x) == 0 || math.Sqrt(sum/float64(len(x))) < quiet {
		return nil
	}
	first, last := 0, len(power)-1
	for power[first] < loudest*1e-7 {
		first++
	}
	for power[last] < loudest*1e-5 {
		last--
	}
	a := &analysis{kit: kit, x: x, rate: rate, start: first * block, end: min((last+1)*block, len(x))}
	if a.end-a.start < int(rate*0.03) {
		return nil
	}
	// The exact first sample, so that a fall of the pitch is timed from it.
	for a.start < a.end && math.Abs(float64(x[a.start])) < math.Sqrt(loudest)*1e-4 {
		a.start++
	}
	return a
}

// sounding returns the samples of the part that sounds.
func (a *analysis) sounding() []float64 {
	x := make([]float64, a.end-a.start)
	for i, v := range a.x[a.start:a.end] {
		x[i] = float64(v)
	}
	return x
}
