package game

import (
	"time"

	"partialcredit/game/words"
)

// A recorder is what is recorded from the device's microphone or line input.
type recorder struct {
	on      bool
	running bool    // sound comes in
	peak    float64 // the greatest of late, 0 to 1
	seconds float64 // that have come in
	drawn   time.Duration
}

// LongestRecording is how many seconds are recorded at most.
const LongestRecording = 10

// meterEvery is how often the level is drawn: calm enough not to flicker (design choice).
const meterEvery = 200 * time.Millisecond

// startRecording asks for the input of the device. Nothing sounds from here meanwhile.
func (g *Game) startRecording() {
	g.fresh()
	g.taking.device = recorder{on: true}
	g.wish(Wish{Kind: Record})
}

// endRecording ends it; what came in comes by [Game.Recorded].
func (g *Game) endRecording() {
	if g.taking.device.on {
		g.wish(Wish{Kind: StopRecord})
	}
}

// dropRecording turns the device off; what came in is forgotten.
func (g *Game) dropRecording() {
	if g.taking.device.on {
		g.taking.device = recorder{}
		g.wish(Wish{Kind: DropRecord})
	}
}

// Recording tells how loud what comes in has been of late, 0 to 1, and for how many
// seconds it has come in.
func (g *Game) RecordingLevel(peak, seconds float64) {
	d := &g.taking.device
	if !d.on {
		return
	}
	d.peak, d.seconds = max(d.peak, peak), seconds
	if !d.running || g.in.Now-d.drawn >= meterEvery {
		d.running, d.drawn, g.dirty = true, g.in.Now, true
	}
}

// Recorded takes what was recorded, at a rate in hertz; the device is off.
func (g *Game) Recorded(samples []float32, rate float64) {
	if !g.taking.device.on {
		return
	}
	g.taking.device = recorder{}
	g.soon(g.t("Looking for the note …"), func(pause func()) func() { return g.findNote(samples, rate, pause) })
}

// RecordFailed tells why nothing is recorded; the device is off.
func (g *Game) RecordFailed(why words.Message) {
	if g.taking.device.on {
		g.taking.device = recorder{}
		g.refuseTake(g.lang.In(why))
	}
}
