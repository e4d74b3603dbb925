package view

import (
	"sync/atomic"
	"time"

	"github.com/hajimehoshi/ebiten/v2"
)

// A Rester is an App that tells when nothing will change until somebody does
// something: while Idle is true it gets only a few ticks a second, and after
// Frames(false) there need be no frames between them. Whatever brings it
// something to do (a finger, a key, a change of the page) should call Wake, so
// that it need not wait for the next of those.
type Rester interface {
	Idle() bool
	Frames(on bool)
}

// Wake asks for a tick now. It may be called at any time.
func Wake() { wake() }

var wake = ebiten.ScheduleFrame // or that of the rest

const (
	heartbeat = 250 * time.Millisecond // between the ticks of an idle app
	leastTick = 11 * time.Millisecond  // a screen of 120 Hz is not worth twice the battery
)

// rest spaces the ticks: an idle app lets the processor sleep. A frame without
// a tick costs a quarter of one with an empty tick (0.3 to 1.1 ms, headless
// Chromium), and about as much again in the browser's threads.
type rest struct {
	app   Rester // nil where the app never rests
	timer *time.Timer
	last  time.Time
	woken atomic.Bool // since the last tick began
}

func (r *rest) begin(app App) {
	rester, ok := app.(Rester)
	if !ok {
		return
	}
	r.app = rester
	wake = r.wake
	r.timer = time.AfterFunc(heartbeat, wake)
	// The modern way to skip frames skips drawing only; this one skips ticks too.
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum)
}

func (r *rest) wake() {
	r.woken.Store(true)
	r.app.Frames(true)
	ebiten.ScheduleFrame()
}

// early reports whether it is too early for a tick.
func (r *rest) early() bool {
	if now := time.Now(); now.Sub(r.last) >= leastTick {
		r.last = now
		r.woken.Store(false)
		return false
	}
	if r.app != nil {
		ebiten.ScheduleFrame()
	}
	return true
}

// end asks for the next tick; busy, where there is work beside the app's.
func (r *rest) end(busy bool) {
	if r.app == nil {
		return
	}
	if busy || !r.app.Idle() || r.woken.Load() {
		ebiten.ScheduleFrame()
		return
	}
	r.app.Frames(false)
	r.timer.Reset(heartbeat)
}
