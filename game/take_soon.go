package game

import (
	"errors"
	"iter"
	"time"
)

// soonAfter is how long the page that says what takes long stands before it does: a
// few frames, a design choice.
const soonAfter = 100 * time.Millisecond

// soon does what takes longer than a frame, after the page has said it: a piece a tick, as
// far as it pauses, and then what follows from it. Turning to another page ends it.
func (g *Game) soon(say string, do func(pause func()) (then func())) {
	g.forget()
	t := &g.taking
	t.waits, t.asked = say, g.in.Now
	t.soon, t.stop = iter.Pull(func(yield func(func()) bool) {
		defer func() {
			if v := recover(); v != nil && v != errLeft {
				panic(v)
			}
		}()
		yield(do(func() {
			if !yield(nil) {
				panic(errLeft)
			}
		}))
	})
	g.say, g.dirty = say, true
}

var errLeft = errors.New("the page was left")

// getOn does a piece of what has been said.
func (g *Game) getOn() {
	t := &g.taking
	if t.soon == nil || g.in.Now-t.asked < soonAfter {
		return
	}
	then, more := t.soon()
	if more && then == nil {
		return
	}
	if g.say == t.waits {
		g.say = ""
	}
	g.forget()
	g.dirty = true
	if then != nil {
		then()
	}
}

// forget ends what takes long.
func (g *Game) forget() {
	t := &g.taking
	if t.stop != nil {
		t.stop()
	}
	t.soon, t.stop, t.waits = nil, nil, ""
}
