package game

import (
	"time"

	"partialcredit/synth"
)

// What the learner listens to.
type listening int

const (
	silence listening = iota
	toTarget
	toYours
	inTurn
	toQuestion
)

// playing is what sounds now.
type playing struct {
	what  listening
	since time.Duration
	loud  *loud
}

const (
	gap       = 0.25             // seconds between notes: a design choice
	apart     = 0.4              // and between the sounds of a question
	restAfter = 90 * time.Second // of playing with nobody touching anything
)

// Program is what should sound now. It is the same from tick to tick unless
// something has changed.
func (g *Game) Program() synth.Program {
	p := synth.Program{Gap: gap}
	switch g.playing.what {
	case silence:
		return p
	case toQuestion:
		return synth.Program{Gap: apart, Once: true, Items: g.asking.items}
	}
	if g.taped() {
		return g.besideTape()
	}
	target, yours := g.playing.loud.gains()
	if g.playing.what != toYours {
		p.Items = append(p.Items, synth.Item{ID: int(toTarget), Sound: g.work.target, Gain: target})
	}
	if g.playing.what != toTarget {
		p.Items = append(p.Items, synth.Item{ID: int(toYours), Sound: g.work.yours, Gain: yours})
	}
	return p
}

// Volume is the volume to play at, 0 to 1, linear. The ruler's steps are about
// equal to the ear because its value is squared.
func (g *Game) Volume() float64 { return g.kept.Volume * g.kept.Volume }

// play starts or stops listening.
func (g *Game) play(what listening) {
	if g.playing.what == what {
		what = silence
	}
	g.playing.what, g.playing.since, g.dirty = what, g.in.Now, true
	g.work.heard = g.work.heard || what != silence
	if what != silence {
		g.replayed()
	}
	if what != silence && !g.kept.Hinted {
		g.over = volumeHint
		g.hands.LetGo()
	}
}

func (g *Game) stop() {
	if g.playing.what != silence {
		g.playing.what, g.dirty = silence, true
	}
}

// rest stops what nobody listens to any more.
func (g *Game) rest() {
	if g.playing.what != silence && g.in.Now-g.last > restAfter {
		g.stop()
		g.sweep = sweep{}
		g.say = g.t("The sound has stopped: nothing was touched for a while, and ears need rests.")
	}
}

// sounding says whether the target and yours can be heard at this moment.
func (g *Game) sounding() (target, yours bool) {
	if g.in.Heard.Item < 0 {
		return false, false
	}
	if g.taped() {
		described := g.playing.what == toTarget || g.playing.what == toYours || g.taking.described
		return described && g.work.wanted.tape == nil, described && g.work.mine.tape == nil
	}
	switch g.playing.what {
	case toTarget:
		return true, false
	case toYours:
		return false, true
	case inTurn:
		return g.in.Heard.Item == 0, g.in.Heard.Item == 1
	}
	return false, false
}
