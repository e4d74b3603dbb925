package advice

import (
	"math"

	"partialcredit/game/words"
	"partialcredit/synth"
)

const (
	tooLow  = 20.0 // times below what is published: nobody gets there, and the staircase hardly ends (design choice)
	plain   = 5.0  // steps that nobody misses (design choice: a third of the marks)
	levelAt = 1.0  // dB, one step of level (hearing.md 1.3)
)

// limit tells whether the range of a limit begins where everybody hears and ends where
// nobody does.
func (a *Adviser) limit() {
	e, q := a.exercise, a.exercise.Quantity
	count := func(v float64) (steps, heard float64) {
		if q.IsLevel() {
			return v / levelAt, v / levelAt
		}
		s := e.Target
		q.Apply(&s, v)
		return a.steps(a.prepare(e.Target), s)
	}
	start, _ := count(q.Start)
	start /= a.times
	least := min(count(q.Least)) // of an expert; what is plain must be so in either way of counting
	f := q.Format
	switch {
	case start < 1:
		a.tell(Threshold, -1, Mistake, words.Say("The start, %s, is not heard: it is %s just-noticeable steps. Start with more.", f(q.Start), stepped(start)))
	case start < 2:
		a.tell(Threshold, -1, Warning, words.Say("The start, %s, is hardly heard: it is %s just-noticeable steps. Start with more.", f(q.Start), stepped(start)))
	}
	if least > plain {
		a.tell(Threshold, -1, Warning, words.Say("The least, %s, is still plainly heard, %s just-noticeable steps of an expert: those who hear well find no limit. Let it go lower.", f(q.Least), stepped(least)))
	}
	if p := q.Published; p != nil {
		switch {
		case p.Value < q.Least || p.Value > q.Most:
			a.tell(Threshold, -1, Warning, words.Say("The published threshold, %s, lies outside what is asked, %s to %s.", f(p.Value), f(q.Least), f(q.Most)))
		case p.Value > q.Start:
			a.tell(Threshold, -1, Warning, words.Say("The published threshold, %s, is more than the start, %s: most will not hear it. Start with more.", f(p.Value), f(q.Start)))
		case q.Least < p.Value/tooLow:
			a.tell(Threshold, -1, Note, words.Say("The least, %s, lies far below hearing: the published threshold is %s.", f(q.Least), f(p.Value)))
		}
	}
	a.tell(Difficulty, -1, Note, words.Say("The sound that differs does so by %s just-noticeable steps at the start.", stepped(start)))
	a.ends(e.Target, e.Notes, words.Say("The target"))
	if q.IsLevel() {
		over := listen(&a.kit, e.Target).crest + synth.Loudness + q.Most - 20*math.Log10(synth.PeakLimit)
		if over >= softer {
			a.tell(Loud, -1, Note, words.Say("%s louder, this sound passes the limit of the output: all sounds come out %s softer then.", f(q.Most), whole(over)+" dB"))
		}
	}
}
