package game

import (
	"math"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// asking is the question that lies open, and the run it belongs to.
type asking struct {
	run      ask.Run
	question ask.Question
	answer   int           // what was chosen, once it is answered
	items    []synth.Item  // how it is played: the lead, then the sounds
	length   time.Duration // of all of it
	begun    int           // how many of the items have begun to sound
	listened bool          // the question has begun to sound
	heard    bool          // and has been heard to its end
}

// openRun goes on with the run of the current exercise, or begins one. Where the
// last answer was given and the page loaded anew, it shows how the run went.
func (g *Game) openRun() {
	e := g.exercise()
	run, ok := g.kept.Runs[e.ID]
	ok = ok && run.Valid(e)
	if !ok {
		run = g.begun()
		g.kept.Runs[e.ID] = run
	}
	g.asking = asking{run: run}
	if run.Done(e) {
		g.showResult()
		return
	}
	g.ask(run.Question(e, len(run.Answers)))
}

// ask puts a question.
func (g *Game) ask(q ask.Question) {
	g.serial++
	g.asking.question, g.asking.begun = q, 0
	g.asking.listened, g.asking.heard = false, false
	g.asking.items, g.asking.length = nil, 0
	g.show(questionPage)
}

// listen plays the question from its beginning, or stops it.
func (g *Game) listen() {
	g.equalise()
	g.asking.begun = 0
	g.play(toQuestion)
	g.asking.listened = g.asking.listened || g.playing.what == toQuestion
}

// equalise finds the gains that make all sounds of the question equally loud but
// for what the question itself wants louder, and keeps all below the limit.
func (g *Game) equalise() {
	a := &g.asking
	if a.items != nil {
		return
	}
	q := &a.question
	var sounds []synth.Sound
	var louder []float64
	if q.Lead != nil {
		sounds, louder = append(sounds, *q.Lead), append(louder, 0)
	}
	sounds, louder = append(sounds, q.Sounds...), append(louder, q.Louder...)
	over, seconds := 1.0, 0.0
	for i, s := range sounds {
		l := g.level(s)
		gain := l.gain() * math.Pow(10, louder[i]/20)
		over = max(over, l.peak*gain/synth.PeakLimit)
		a.items = append(a.items, synth.Item{ID: 100 + 10*g.serial + i, Sound: s, Gain: gain})
		seconds += s.Seconds + s.Amplitude.Release + apart
	}
	for i := range a.items {
		a.items[i].Gain /= over
	}
	a.length = time.Duration(seconds * float64(time.Second))
}

// overtime is how much longer than it should a question may play before it counts
// as ended: devices take their time.
const overtime = 5 * time.Second

// follow watches the question being played, and ends it.
func (g *Game) follow() {
	a := &g.asking
	if g.playing.what != toQuestion || g.in.Audio != Running {
		return
	}
	if i := g.in.Heard.Item; i >= 0 && a.begun != i+1 && i < len(a.items) {
		a.begun, g.dirty = i+1, true
	}
	passed := g.in.Now - g.playing.since
	ended := a.begun == len(a.items) && g.in.Heard.Item < 0 && passed > a.length/2 // sooner, it was what sounded before
	if ended || passed > a.length+overtime {
		a.heard = true
		g.stop()
	}
}

// choose answers the question.
func (g *Game) choose(answer int) {
	a, e := &g.asking, g.exercise()
	if g.page != questionPage || answer < 0 || answer >= len(a.question.Answers) {
		return
	}
	q := &a.question
	right := answer == q.Right
	a.answer = answer
	if g.session.on {
		g.session.count(right)
	} else {
		a.run.Answer(e, answer)
		g.kept.Runs[e.ID] = a.run
		if a.run.Done(e) {
			g.record()
		}
	}
	if e.Kind != sheet.Limit {
		g.kept.tally(e, q, answer)
		if g.own() == nil {
			g.kept.recall(e, q, answer, g.today())
		}
	}
	one, other := q.Compared(e, answer)
	g.show(answered)
	g.work = compare(one, other, nil)
	g.playing.loud = g.pair(one, other)
	if !right && e.Kind != sheet.Limit && a.listened {
		g.play(inTurn) // what is missed is heard again at once, beside what it was taken for
	}
	g.say = g.told()
}

// told says in words how the question was answered.
func (g *Game) told() string {
	a, e := &g.asking, g.exercise()
	q := &a.question
	right := a.answer == q.Right
	cue := g.t(q.Cue(e))
	switch {
	case e.Kind == sheet.Limit && right:
		return g.t("Right.")
	case e.Kind == sheet.Limit:
		return g.t("It was another one: %s.", q.Answers[q.Right])
	case e.Kind == sheet.Same && right && q.Right == 0:
		return g.t("Right: the same to the ear. %s", cue)
	case e.Kind == sheet.Same && right:
		return g.t("Right: they differ. %s", cue)
	case e.Kind == sheet.Same && q.Right == 0:
		return g.t("They are the same to the ear. %s", cue)
	case e.Kind == sheet.Same:
		return g.t("They differ. %s", cue)
	case right:
		return g.t("Right: %s. %s", q.Answers[q.Right], cue)
	}
	return g.t("It was %s; you said %s. %s", q.Answers[q.Right], q.Answers[a.answer], cue)
}

// proceed puts the next question, or ends the run.
func (g *Game) proceed() {
	if g.session.on {
		g.practise()
		return
	}
	e := g.exercise()
	if !g.asking.run.Done(e) {
		g.ask(g.asking.run.Question(e, len(g.asking.run.Answers)))
		g.listen()
		return
	}
	g.showResult()
}

// record keeps how the run went, as soon as its last answer is given.
func (g *Game) record() {
	e, run := g.exercise(), &g.asking.run
	g.attemptedRun()
	if e.Kind == sheet.Limit {
		stairs := run.Staircase(e)
		value, factor, ok := stairs.Threshold()
		g.kept.limit(e.ID, limitRun{Day: g.today(), Value: value, Factor: factor, Found: ok})
		return
	}
	g.kept.add(e.ID, g.today(), run.Marks(e))
}

// showResult shows how the run went, and ends it.
func (g *Game) showResult() {
	delete(g.kept.Runs, g.exercise().ID)
	g.show(result)
	g.say = g.outcome()
}

// outcome says in words how the run went.
func (g *Game) outcome() string {
	e, run := g.exercise(), &g.asking.run
	if e.Kind == sheet.Limit {
		return g.limitFound(e, run)
	}
	n := len(run.Answers)
	s := g.t("%d of %d right: %.0f marks of 100, with what guessing gives taken off.", run.Right(e), n, math.Floor(run.Marks(e)+0.05))
	switch p := run.Guessed(e); {
	case p > 0.05:
		s += " " + g.t("Guessing alone gets that far once in %d runs, so this does not yet show that you hear it.", max(1, int(math.Round(1/p))))
	case p > 0.0005:
		s += " " + g.t("Guessing alone gets that far once in %d runs: you do hear it.", int(math.Round(1/p)))
	default:
		s += " " + g.t("That is no guessing: you do hear it.")
	}
	return s
}

func (g *Game) limitFound(e *sheet.Exercise, run *ask.Run) string {
	stairs := run.Staircase(e)
	value, factor, ok := stairs.Threshold()
	q := e.Quantity
	var s string
	switch {
	case ok:
		s = g.t("Your limit here: about %s, within a factor of %s.", q.Format(value), oneDecimal(factor))
	case value == q.Least:
		s = g.t("You hear even the smallest difference that is asked here, %s.", q.Format(value))
	case value == q.Most:
		s = g.t("Even the largest difference that is asked here, %s, was not heard surely. Rest, check the volume, and try again.", q.Format(value))
	default:
		s = g.t("This run found no limit: try again.")
	}
	s += " " + g.t("At the limit you are right in %d of 100 cases.", int(math.Round(100*practice.Target)))
	if p := q.Published; p != nil {
		s += " " + g.t("Published: %s (%s).", q.Format(p.Value), p.Source)
	}
	return s
}
