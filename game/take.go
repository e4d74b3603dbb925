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

	soon  func() // what takes longer than a frame, once the page has said so
	asked time.Duration
	waits string // what it says meanwhile
}

// soonAfter is how long the page that says what takes long stands before it does: a
// few frames, a design choice.
const soonAfter = 100 * time.Millisecond

// soon does what takes longer than a frame, after the page has said it.
func (g *Game) soon(say string, do func()) {
	g.taking.soon, g.taking.waits, g.taking.asked = do, say, g.in.Now
	g.say, g.dirty = say, true
}

// getOn does what has been said.
func (g *Game) getOn() {
	if do := g.taking.soon; do != nil && g.in.Now-g.taking.asked >= soonAfter {
		g.taking.soon, g.taking.waits, g.say = nil, "", ""
		do()
	}
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
func (g *Game) markTake() {
	g.stop()
	g.playing.loud.yours.finish()
	g.work.result = mark.PrepareTake(g.taking.take).Mark(g.work.yours, 1)
	g.work.marks = g.work.result.Marks
	g.show(takenPage)
	g.say = g.takenVerdict()
}

// answerWithTake marks the recording as an answer to the open exercise. The marks of
// the course are kept; a sheet that was given keeps none, for a slip could not prove them.
func (g *Game) answerWithTake() {
	e, t := g.exercise(), g.taking.take
	start := e.Start()
	w := compare(e.Target, start, nil)
	w.mine.recorded(t)
	w.result = g.marker().MarkTake(t, g.sheet().Strictness.Times())
	w.marks = w.result.Marks
	if g.kept.Left[e.ID].Uncovered {
		w.marks = min(w.marks, UncoveredCap)
	}
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
	if !g.page.ofRecording() || t.soon != nil {
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
