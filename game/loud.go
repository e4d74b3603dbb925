package game

import (
	"math"

	"partialcredit/synth"
)

// Rate is the sample rate of everything the game renders, in hertz.
const Rate = 48000

const (
	workPerTick = 2048 // samples measured a tick, so that no tick takes long
	measuredAt  = 0.1  // gain: below the limiter, and with the ramps of what is played, which soften a stroke by 0.4 dB
)

// loud finds the gains that make the target and the learner's sound equally
// loud. It measures a little every tick, so that moving a control costs
// nothing; until it has done, the last gains hold.
type loud struct {
	target, yours level
}

// A level is the loudness of one sound and the measuring of the next.
type level struct {
	lkfs, peak float64
	known      bool

	todo   *synth.Sound
	player *synth.Player // nil where nothing is measured
	meter  *synth.Meter
	left   int
	buffer []float32
}

// newSilent is for pages without sounds.
func newSilent() *loud { return &loud{} }

// alone is for a sound that nothing is compared with.
func (g *Game) alone(yours synth.Sound) *loud { return &loud{yours: g.level(yours)} }

// pair is for two sounds that are compared.
func (g *Game) pair(target, yours synth.Sound) *loud {
	return &loud{target: g.level(target), yours: g.level(yours)}
}

// level measures all of a sound at once, which takes longer than a frame, or
// remembers: the sounds of a question come again after the answer, and the common
// sound of a limit all the time.
func (g *Game) level(s synth.Sound) level {
	l, ok := g.levels[s]
	if !ok {
		if len(g.levels) >= mostLevels {
			clear(g.levels)
		}
		l = g.gauge(s)
		g.levels[s] = l
	}
	return l
}

// mostLevels bounds how many levels are remembered.
const mostLevels = 64

func gauge(s synth.Sound) level {
	var l level
	l.measure(s)
	l.finish()
	return level{lkfs: l.lkfs, peak: l.peak, known: true}
}

// change tells that the learner's sound has changed.
func (l *loud) change(yours synth.Sound) { l.yours.measure(yours) }

// work measures n more samples and reports whether the gains have changed.
func (l *loud) work(n int) bool {
	before := l.yours
	l.yours.work(n)
	return l.yours.lkfs != before.lkfs || l.yours.peak != before.peak
}

// idle reports that nothing is left to measure.
func (l *loud) idle() bool { return l.yours.player == nil }

// gains are the linear gains of the target and the learner's sound: equally
// loud, and neither above the limit.
func (l *loud) gains() (target, yours float64) {
	target, yours = l.target.gain(), l.yours.gain()
	over := max(1, l.target.peak*target/synth.PeakLimit, l.yours.peak*yours/synth.PeakLimit)
	return target / over, yours / over
}

func (v *level) gain() float64 {
	if !v.known || math.IsInf(v.lkfs, -1) {
		return 0
	}
	return math.Pow(10, (synth.Loudness-v.lkfs)/20)
}

// measure starts on a sound, or notes it for later when one is under way.
func (v *level) measure(s synth.Sound) {
	v.todo = &s
	if v.player == nil {
		v.begin()
	}
}

func (v *level) begin() {
	if v.buffer == nil {
		v.buffer = make([]float32, workPerTick)
	}
	v.player = synth.NewPlayer(Rate)
	v.player.Play(synth.Program{Items: []synth.Item{{Sound: *v.todo, Gain: measuredAt}}, Once: true})
	v.meter = synth.NewMeter(Rate)
	v.left = int((v.todo.Seconds + v.todo.Amplitude.Release) * Rate)
	v.todo = nil
}

func (v *level) work(n int) {
	for n > 0 && v.player != nil {
		block := v.buffer[:min(n, v.left, len(v.buffer))]
		v.player.Render(block, nil)
		v.meter.Write(block)
		n, v.left = n-len(block), v.left-len(block)
		if v.left > 0 {
			continue
		}
		v.lkfs, v.peak, v.known = v.meter.Loudness()-20*math.Log10(measuredAt), v.meter.Peak()/measuredAt, true
		v.player = nil
		if v.todo != nil {
			v.begin()
		}
	}
}

func (v *level) finish() {
	for v.player != nil {
		v.work(workPerTick)
	}
}
