package game

import (
	"math"
	"time"
)

// sweep moves a control by itself, there and back, so that hands are free and
// ears can follow.
type sweep struct {
	on      bool
	control int
	from    time.Duration
	phase   float64 // where it began, cycles
	due     time.Duration
}

const (
	sweepPeriod = 10 * time.Second // there and back
	sweepEvery  = 40 * time.Millisecond
)

// startSweep has a control swept from where it stands, or stops that.
func (g *Game) startSweep(control int) {
	if g.sweep.on && g.sweep.control == control {
		g.sweep, g.dirty = sweep{}, true
		return
	}
	r := g.ruler(control)
	g.sweep = sweep{on: true, control: control, from: g.in.Now, phase: r.Fraction() / 2}
	g.dirty = true
	if g.playing.what == silence {
		g.play(toYours)
	}
}

// move moves what is swept. While a note lies over the page it waits.
func (g *Game) move() {
	s := &g.sweep
	if !s.on || g.in.Now < s.due {
		return
	}
	if g.over != noOverlay {
		s.from += g.in.Now - max(s.due, s.from)
		s.due = g.in.Now
		return
	}
	s.due = g.in.Now + sweepEvery
	cycles := s.phase + float64(g.in.Now-s.from)/float64(sweepPeriod)
	_, at := math.Modf(cycles)
	r := g.ruler(s.control)
	g.set(s.control, r.At(1-math.Abs(1-2*at)))
}
