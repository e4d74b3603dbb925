package game

import (
	"slices"
	"strconv"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// mostPause is the longest time between two things that a person does which still counts
// as spent on the exercise: a design choice, above the longest that a sound plays on.
const mostPause = 2 * time.Minute

// logged is what is known of the work on the open exercise, for the slip; nil where it
// belongs on none.
func (g *Game) logged() *slip.Work {
	s := g.own()
	if s == nil || g.session.on {
		return nil
	}
	switch g.page {
	case working, marked, questionPage, answered:
	default:
		return nil
	}
	id := g.exercise().ID
	w := g.kept.Log[id]
	if w == nil {
		w = &slip.Work{ID: original(id)}
		g.kept.Log[id] = w
	}
	return w
}

// spend counts the time since a person last did something.
func (g *Game) spend(d time.Duration) {
	if d <= 0 {
		return
	}
	if w := g.logged(); w != nil {
		g.spare += min(d, mostPause)
		w.Seconds = min(w.Seconds+int(g.spare/time.Second), slip.MostSeconds)
		g.spare %= time.Second
	}
}

// replayed counts a sound that was started.
func (g *Game) replayed() {
	if w := g.logged(); w != nil {
		w.Replays = min(w.Replays+1, slip.MostReplays)
		g.keep()
	}
}

// attempted keeps an answer to the open exercise: the first, and the best since.
func (g *Game) attempted(a slip.Attempt, better bool) {
	w := g.logged()
	switch {
	case w == nil:
		return
	case w.Tries == 0:
		w.First = a
	case better:
		w.Best = &a
	}
	w.Tries = min(w.Tries+1, slip.MostTries)
}

// attemptedMatch keeps what was handed in.
func (g *Game) attemptedMatch() {
	if g.own() == nil {
		return
	}
	a := g.attempt()
	g.attempted(slip.Attempt{Settings: a.Settings, Uncovered: a.Uncovered}, g.work.marks > g.kept.Marks[g.exercise().ID].Best)
}

// attemptedRun keeps a run that has ended. Of a limit, the last one counts.
func (g *Game) attemptedRun() {
	if g.own() == nil {
		return
	}
	e, run := g.exercise(), g.asking.run
	run.Answers = slices.Clone(run.Answers)
	tries := 0
	if w := g.kept.Log[e.ID]; w != nil {
		tries = w.Tries
	}
	g.attempted(slip.Attempt{Run: &run, Try: tries}, e.Kind == sheet.Limit || run.Marks(e) > g.kept.Marks[e.ID].Best)
}

// begun is a new run of the open exercise. Where the sheet varies, its questions follow
// from the learner's name.
func (g *Game) begun() ask.Run {
	s := g.own()
	switch {
	case s == nil:
		return ask.Run{Seed: g.in.Random}
	case !s.sheet.Vary:
		return ask.Run{Seed: g.in.Random >> 32} // enough, and short on the slip
	}
	id, tries := g.exercise().ID, 0
	if w := g.kept.Log[id]; w != nil {
		tries = w.Tries
	}
	return ask.Run{Seed: s.sheet.Seed(s.Name, original(id), tries)}
}

// roundSettings leaves five figures of what is set, far more than is heard, so that a
// slip stays short and says just what was marked.
func (g *Game) roundSettings() {
	if g.own() == nil {
		return
	}
	for i := range g.work.controls {
		c := &g.work.controls[i]
		v, err := strconv.ParseFloat(strconv.FormatFloat(c.Get(&g.work.yours), 'g', 5, 64), 64)
		if err == nil {
			g.set(i, max(c.Min, min(c.Max, v)))
		}
	}
}
