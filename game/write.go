package game

import (
	"slices"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// desk is where a teacher is in what is written, so that it is found again.
type desk struct {
	Sheet    int    `json:"sheet"`
	Exercise int    `json:"exercise"`
	Tab      int    `json:"tab"`            // of the exercise
	Part     int    `json:"part"`           // of the sheet
	Item     int    `json:"item"`           // the control, answer or pair that is set
	Slot     string `json:"slot,omitempty"` // the sound of the exercise that is on the bench; none where empty
}

// mostWritten is how many sheets a teacher keeps here: a tablet's storage is small.
const mostWritten = 200

// tidyDesk brings what was kept into range.
func (g *Game) tidyDesk() {
	c := &g.cabinet
	c.Written = slices.DeleteFunc(c.Written, func(d *draft.Draft) bool { return d == nil })
	d := &c.Desk
	d.Sheet = max(0, min(len(c.Written)-1, d.Sheet))
	d.Tab, d.Part = max(0, min(draftTabs-1, d.Tab)), max(0, min(1, d.Part))
	if s := g.written(); s != nil {
		d.Exercise = max(0, min(len(s.Sheet().Exercises)-1, d.Exercise))
		if e := g.drafted(); e != nil {
			d.Item = max(0, min(items(e)-1, d.Item))
			if d.Tab == tabVary && !varying(e) {
				d.Tab = tabKind
			}
		}
	}
}

// items is how many things of a kind an exercise has, of which one at a time is set.
func items(e *sheet.Exercise) int { return max(len(e.Controls), len(e.Answers), len(e.Pairs)) }

// written is the sheet that is written; nil where there is none.
func (g *Game) written() *draft.Draft {
	c := &g.cabinet
	if c.Desk.Sheet < 0 || c.Desk.Sheet >= len(c.Written) {
		return nil
	}
	return c.Written[c.Desk.Sheet]
}

// drafted is the exercise that is written; nil where there is none.
func (g *Game) drafted() *sheet.Exercise {
	w := g.written()
	if w == nil {
		return nil
	}
	s, at := w.Sheet(), g.cabinet.Desk.Exercise
	if at < 0 || at >= len(s.Exercises) {
		return nil
	}
	return &s.Exercises[at]
}

// changed sees to it that what was written is kept and seen.
func (g *Game) changed() {
	g.tidyDesk()
	g.dirty = true
	g.advised.stale()
	g.file()
}

// actOnWriting is for what is written.
func (g *Game) actOnWriting(name string, n int, a ui.Action) bool {
	switch name {
	case "teacher":
		g.leave()
		g.show(teacherPage)
	case "make":
		g.making.kind, g.making.into = sheet.Match, min(1, len(g.cabinet.Written))*(g.cabinet.Desk.Sheet+1)
		g.show(makePage)
	case "of":
		g.making.kind = draft.Kinds[max(0, min(len(draft.Kinds)-1, n))]
	case "into":
		g.making.into = n
	case "make it":
		g.makeExercise()
	case "book":
		g.show(bookPage)
	case "take":
		g.show(takePage)
	case "try":
		g.try()
	case "untry":
		g.untry()
	default:
		switch g.page { // other pages have names of their own
		case teacherPage:
			return g.actOnSheets(name, n)
		case writePage, draftPage:
			return g.actOnWritten(name, n, a) || g.actOnDraft(name, n, a)
		case benchPage:
			return (name == "draft" || name == "bring") && g.actOnDraft(name, n, a)
		}
		return false
	}
	g.dirty = true
	return true
}

// making is what is asked before an exercise is made of the sound on the bench.
type making struct {
	kind sheet.Kind
	into int // 0 a new sheet, else one more than the number of the sheet
}

// makeExercise makes an exercise of the sound on the bench.
func (g *Game) makeExercise() {
	c := &g.cabinet
	if g.making.into < 1 || g.making.into > len(c.Written) {
		if !g.newSheet(sheet.Sheet{Strictness: sheet.Beginner}) {
			return
		}
	} else {
		c.Desk.Sheet = g.making.into - 1
	}
	g.addExercise(-1, g.making.kind)
}

// addExercise adds one of the sound on the bench behind another and opens it.
func (g *Game) addExercise(after int, k sheet.Kind) {
	w := g.written()
	if w == nil {
		return
	}
	e := draft.Make(k, g.onTheBench())
	if k == sheet.Name {
		e.Answers[0] = draft.Answer(g.onTheBench(), nil, g.lang)
	}
	draft.Retell(&e, draft.Texts{}, draft.Suggest(&e, g.lang))
	at := w.Add(after, e)
	if at < 0 {
		g.Tell("A sheet has room for 100 exercises, and this one has them all. Put this exercise on another sheet.")
		return
	}
	d := &g.cabinet.Desk
	d.Exercise, d.Tab, d.Item = at, 0, 0
	g.changed()
	g.show(draftPage)
}
