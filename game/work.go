package game

import (
	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/synth"
)

// work is one or two sounds that are heard and seen, and what has been done to
// the learner's own: in a match, a demonstration, after an answer and on the
// bench.
type work struct {
	target    synth.Sound     // to compare with
	yours     synth.Sound     //
	controls  []sheet.Control // what can be set of it
	uncovered bool            // by the learner, before handing in
	heard     bool            // it has been listened to
	handedIn  bool            // the attempt
	result    mark.Result     //
	marks     float64         // after the cap
	wanted    picture         // of the target
	mine      picture         // of yours
}

// UncoveredCap is the most marks for a target that was uncovered before it was
// handed in.
const UncoveredCap = slip.UncoveredCap

func newWork(e *sheet.Exercise) work {
	return compare(e.Target, e.Start(), e.Controls)
}

func compare(target, yours synth.Sound, controls []sheet.Control) work {
	w := work{target: target, yours: yours, controls: controls}
	w.wanted.still(target)
	w.mine.still(yours)
	return w
}

// set moves a control of the learner's sound.
func (g *Game) set(control int, v float64) {
	if control < 0 || control >= len(g.work.controls) || g.taking.soon != nil { // what is being marked stays
		return
	}
	c := &g.work.controls[control]
	before := c.Get(&g.work.yours)
	c.Set(&g.work.yours, v)
	if c.Get(&g.work.yours) == before {
		return
	}
	g.work.mine.still(g.work.yours)
	g.playing.loud.change(g.work.yours)
	if g.page == benchPage {
		g.onBench(control)
	}
	g.dirty = true
	g.keep()
}

// handIn marks the learner's sound and keeps the marks.
func (g *Game) handIn() {
	g.roundSettings()
	g.grade()
	e := g.exercise()
	g.attemptedMatch()
	g.kept.add(e.ID, g.today(), g.work.marks)
	if g.own() == nil {
		g.kept.review(e.ID, g.work.marks >= matched, g.today())
	}
	g.say = g.verdict()
	g.keep()
}

// matched is how many marks count as right in practice: within about three
// just-noticeable steps, a design choice.
const matched = 80

// grade marks the learner's sound.
func (g *Game) grade() {
	g.stop()
	g.playing.loud.yours.finish()
	g.work.result = g.marker().Mark(g.work.yours, g.sheet().Strictness.Times())
	g.work.marks = g.work.result.Marks
	if g.work.uncovered {
		g.work.marks = min(g.work.marks, UncoveredCap)
	}
	g.show(marked)
	g.work.handedIn = true
}

// marker measures the target of the current exercise once.
func (g *Game) marker() *mark.Reference {
	e := g.exercise()
	r, ok := g.markers[e.ID]
	if !ok {
		if len(g.markers) >= mostMarkers {
			clear(g.markers)
		}
		r = mark.Prepare(e.Target)
		g.markers[e.ID] = r
	}
	return r
}

// mostMarkers bounds how many measured targets are held in memory.
const mostMarkers = 8

// again goes back to work on a marked exercise, from where it was handed in.
func (g *Game) again() {
	g.work.uncovered, g.work.handedIn = false, false
	g.show(working)
}
