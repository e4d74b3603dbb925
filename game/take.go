package game

import (
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth/take"
)

// Taking is a recording and what is done with it. It lives as long as its pages are
// open: nothing of it is kept.
type taking struct {
	from    page // where the page was opened from
	answers bool // the open exercise
	wrong   string
	take    *take.Take
	level   level // of it
	device  recorder

	described bool          // in turn, the described sound has its turn
	since     time.Duration // it has had it

	soon  func() (then func(), more bool) // goes on with what takes longer than a frame; nil where nothing does
	stop  func()                          // lets go of it
	asked time.Duration
	waits string // what the page says meanwhile
}

// ofRecording says whether a page is about a recording.
func (p page) ofRecording() bool { return p == takePage || p == besidePage || p == takenPage }

// openTaking opens the page for a recording.
func (g *Game) openTaking(answers bool) {
	from := g.page
	g.leave()
	if from != working && from != benchPage {
		from = contents
	}
	g.show(takePage)
	g.taking = taking{from: from, answers: answers}
	g.pictureTake()
}

// pictureTake pictures the recording alone, or nothing.
func (g *Game) pictureTake() {
	g.work, g.playing.loud = work{}, newSilent()
	if t := g.taking.take; t != nil {
		g.work.mine.recorded(t)
		g.playing.loud = &loud{yours: g.taking.level}
	}
}

// answerable says whether a recording can answer the open exercise.
func (g *Game) answerable() bool { return g.exercise().Kind == sheet.Match && !g.session.on }

// beside puts the recording beside the rulers of the bench.
func (g *Game) beside() {
	t := g.taking.take
	if t == nil {
		return
	}
	yours := likeTake(t)
	g.show(besidePage)
	g.bench.slow, g.bench.part = false, 0
	g.work = compare(yours, yours, benchControls())
	g.work.wanted.recorded(t)
	g.playing.loud = &loud{target: g.taking.level, yours: g.level(yours)}
}

// markTake marks what was set beside the recording.
func (g *Game) markTake(pause func()) (then func()) {
	t, yours := g.taking.take, g.work.yours
	g.playing.loud.yours.finish()
	result := mark.PrepareTake(t).Pausing(pause).Mark(yours, 1)
	return func() {
		g.work.result, g.work.marks = result, result.Marks
		g.show(takenPage)
		g.say = g.takenVerdict()
	}
}

// answerWithTake marks the recording as an answer to the open exercise. The marks of
// the course are kept; a sheet that was given keeps none, for a slip could not prove them.
func (g *Game) answerWithTake(pause func()) (then func()) {
	e, t := g.exercise(), g.taking.take
	w := compare(e.Target, e.Start(), nil)
	w.mine.recorded(t)
	r := g.marker()
	pause()
	w.result = r.Pausing(pause).MarkTake(t, g.sheet().Strictness.Times())
	w.marks = w.result.Marks
	if g.kept.Left[e.ID].Uncovered {
		w.marks = min(w.marks, UncoveredCap)
	}
	return func() { g.answeredWith(e, w) }
}

// answeredWith shows the marks of a recording that answers an exercise.
func (g *Game) answeredWith(e *sheet.Exercise, w work) {
	g.work = w
	g.playing.loud = &loud{target: g.level(e.Target), yours: g.taking.level}
	g.taking.answers = true
	g.show(takenPage)
	if g.own() == nil && !g.trial.on {
		g.kept.add(e.ID, g.today(), g.work.marks)
		g.keep()
	}
	g.say = g.takenVerdict()
}

// actOnTake is for recordings.
func (g *Game) actOnTake(name string, n int, a ui.Action) bool {
	t := &g.taking
	switch name {
	case "recording":
		g.openTaking(false)
		return true
	case "record answer":
		g.openTaking(true)
		return true
	}
	if !g.page.ofRecording() || t.soon != nil && name != "back to it" {
		return false
	}
	switch name {
	case "open take":
		g.wish(Wish{Kind: OpenFile, Purpose: "recording", Accept: ".wav,audio/wav,audio/x-wav,audio/wave", Most: MostDropped})
	case "record":
		g.startRecording()
	case "stop recording":
		g.endRecording()
	case "another":
		g.stop()
		g.show(takePage)
		t.take, t.wrong = nil, ""
		g.pictureTake()
	case "beside":
		t.answers = false
		g.beside()
	case "back to it":
		g.show(takePage)
		g.pictureTake()
	case "set on":
		g.show(besidePage)
	case "mark take":
		g.stop()
		g.soon(g.t("Marking …"), g.markTake)
	case "answer take":
		g.stop()
		g.soon(g.t("Marking …"), g.answerWithTake)
	default:
		return false
	}
	g.dirty = true
	return true
}
