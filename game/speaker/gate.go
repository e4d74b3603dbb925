package speaker

import (
	"sync/atomic"
	"time"
)

// A gate lets samples be made at the last moment. Oto keeps a chunk that it has
// read until the device pulls: without the gate every control would wait there,
// for as long as a chunk lasts.
type gate struct {
	pulls     chan struct{}
	announced atomic.Bool // the device announces its pulls
	patience  *time.Timer
	most      time.Duration
}

// A reason is why samples are to be made now.
type reason int

const (
	pullWas   reason = iota // the device has just pulled, or the start is being prepared
	pullComes               // the device is about to pull
	noPull                  // it has not pulled for long: it stands still
)

func newGate(most time.Duration) *gate {
	return &gate{pulls: make(chan struct{}), patience: time.NewTimer(most), most: most}
}

// announce says that the device is about to pull. It never waits: where nobody
// does, the samples are there already.
func (g *gate) announce() {
	g.announced.Store(true)
	select {
	case g.pulls <- struct{}{}:
	default:
	}
}

// wait returns when samples are to be made.
func (g *gate) wait() reason {
	if !g.announced.Load() {
		return pullWas
	}
	g.patience.Reset(g.most)
	select {
	case <-g.pulls:
		return pullComes
	case <-g.patience.C:
		return noPull
	}
}
