package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/mark"
	"partialcredit/game/sheet"
)

// trial is the learner's own state while the teacher tries a sheet: nothing of what is
// done to the sheet goes into it.
type trial struct {
	on     bool
	course []*sheet.Sheet
	at     place
	kept   progress
	back   page
}

// try plays the sheet as a learner would, from the exercise that is written.
func (g *Game) try() {
	w := g.written()
	if w == nil || g.trial.on {
		return
	}
	s, err := sheet.Parse(w.Sheet().JSON())
	at := g.cabinet.Desk.Exercise
	if err != nil && at >= 0 && at < len(w.Sheet().Exercises) {
		one := w.Sheet().Only(at) // the others may be unfinished
		s, err = sheet.Parse(one.JSON())
		at = 0
	}
	if err != nil {
		g.sayMissing()
		return
	}
	g.trial = trial{on: true, course: g.course, at: g.at, kept: g.kept, back: g.page}
	g.stop()
	g.course, g.session = []*sheet.Sheet{s.For("")}, session{}
	g.kept = progress{Volume: g.kept.Volume, Theme: g.kept.Theme, Language: g.kept.Language, Keyless: g.kept.Keyless, Hinted: g.kept.Hinted}
	g.kept.tidy()
	g.markers = map[string]*mark.Reference{} // they go by ids, which the course may have too
	g.page = contents                        // nothing is left
	g.open(place{0, min(at, len(s.Exercises)-1)})
}

// untry goes back to writing.
func (g *Game) untry() {
	if !g.trial.on {
		return
	}
	back := g.trial.back
	g.endTrial()
	g.show(back)
}

// endTrial puts the learner's own state back.
func (g *Game) endTrial() {
	t := &g.trial
	if !t.on {
		return
	}
	g.stop()
	g.kept = g.ownProgress()
	g.course, g.at = t.course, t.at
	g.trial, g.session, g.asking, g.work = trial{}, session{}, asking{}, work{}
	g.markers = map[string]*mark.Reference{}
	g.page = contents
}

// ownProgress is what is kept of the learner: while a sheet is tried only the settings
// of the device are taken from there.
func (g *Game) ownProgress() progress {
	if !g.trial.on {
		return g.kept
	}
	k := g.trial.kept
	k.Volume, k.Theme, k.Language, k.Keyless, k.Hinted = g.kept.Volume, g.kept.Theme, g.kept.Language, g.kept.Keyless, g.kept.Hinted
	return k
}

// sayMissing tells what is missing of the exercise that is written.
func (g *Game) sayMissing() {
	e := g.drafted()
	if e == nil {
		return
	}
	if text, ok := draft.Missing(e); !ok {
		g.say, g.over, g.dirty = g.t("The exercise cannot be tried yet. %s", text), note, true
	}
}
