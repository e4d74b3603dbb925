package game

import (
	"fmt"
	"slices"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// The tabs of an exercise that is written. What lies under the third and the fourth
// depends on its kind.
const (
	tabKind = iota
	tabTexts
	tabWhat // controls, answers, pairs, the quantity
	tabHow  // ranges, questions
	tabAdvice
	tabVary // of an answer or a pair
	draftTabs
)

// change changes the exercise and brings texts up to date that nobody has written.
func (g *Game) change(what string, f func(e *sheet.Exercise)) {
	w, at := g.written(), g.cabinet.Desk.Exercise
	if what != "" {
		what = fmt.Sprintf("%s %d %d", what, at, g.cabinet.Desk.Item)
	}
	w.ChangeExercise(at, what, func(e *sheet.Exercise) {
		before := draft.Suggest(e, g.lang)
		f(e)
		draft.Retell(e, before, draft.Suggest(e, g.lang))
	})
}

// write puts a text into the exercise.
func (g *Game) write(what string, a ui.Action, at func(e *sheet.Exercise) *string) {
	if !a.Typed {
		return
	}
	what = fmt.Sprintf("%s %d %d", what, g.cabinet.Desk.Exercise, g.cabinet.Desk.Item)
	g.written().ChangeExercise(g.cabinet.Desk.Exercise, what, func(e *sheet.Exercise) { *at(e) = a.Text })
}

// actOnDraft is for the exercise that is written.
func (g *Game) actOnDraft(name string, n int, a ui.Action) bool {
	e, d := g.drafted(), &g.cabinet.Desk
	if e == nil {
		return false
	}
	switch name {
	case "draft":
		d.Slot = ""
		g.leave()
		g.show(draftPage)
	case "tab":
		d.Tab, g.part = n, 0
		g.stop()
	case "kind":
		if n >= 0 && n < len(draft.Kinds) {
			d.Item = 0
			g.change("", func(e *sheet.Exercise) {
				draft.SetKind(e, draft.Kinds[n])
				if e.Kind == sheet.Name && len(e.Answers) == 1 && e.Answers[0].Name == "" {
					e.Answers[0] = draft.Answer(e.Answers[0].Sound, nil, g.lang)
				}
			})
		}
	case "title":
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Title })
	case "task text":
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Task })
	case "teach":
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Teach })
	case "suggest":
		g.change("", func(e *sheet.Exercise) { e.Title, e.Task, e.Teach = "", "", "" })
	case "item":
		d.Item, g.part = n, 0
		g.stop()
	case "hear":
		g.hearDraft()
		return true
	case "follow":
		g.followAdvice(n)
		return true
	case "from bench":
		g.put(g.slot(), g.onTheBench())
	case "from bench 2":
		g.put("other", g.onTheBench())
	case "to bench":
		g.toBench(g.slot())
		return true
	case "to bench 2":
		g.toBench("other")
		return true
	case "bring":
		slot := d.Slot
		d.Slot = ""
		g.put(slot, g.work.yours)
		g.show(draftPage)
	default:
		return g.actOnControls(name, n, a) || g.actOnAnswers(name, n, a) || g.actOnVaried(name, n, a) || g.actOnAsked(name, n, a)
	}
	g.changed()
	return true
}

// actOnControls is for what the learner sets.
func (g *Game) actOnControls(name string, n int, a ui.Action) bool {
	e, d := g.drafted(), &g.cabinet.Desk
	ends := map[string]draft.End{"lowest": draft.Lowest, "highest": draft.Highest, "start": draft.Start, "drawn from": draft.DrawnFrom, "drawn to": draft.DrawnTo}
	end, isEnd := ends[name]
	switch {
	case name == "offer":
		fields := g.heardIn(e.Target).fields
		if n >= 0 && n < len(fields) {
			g.change("", func(e *sheet.Exercise) { draft.Toggle(e, fields[n]) })
			d.Item = max(0, len(g.drafted().Controls)-1)
		}
	case d.Item >= len(e.Controls):
		return false
	case isEnd && a.Moved:
		g.change(name, func(e *sheet.Exercise) { draft.SetEnd(e, d.Item, end, a.Value) })
	case name == "away":
		g.change("", func(e *sheet.Exercise) {
			c := &e.Controls[d.Item]
			c.Start = draft.Away(c, e.Target)
		})
	default:
		return false
	}
	g.changed()
	return true
}

// actOnAnswers is for answers and pairs.
func (g *Game) actOnAnswers(name string, n int, a ui.Action) bool {
	e, d := g.drafted(), &g.cabinet.Desk
	answers, pairs := d.Item < len(e.Answers), d.Item < len(e.Pairs)
	switch {
	case name == "more answers" && len(e.Answers) < sheet.MostAnswers:
		g.change("", func(e *sheet.Exercise) {
			e.Answers = append(e.Answers, draft.Answer(g.onTheBench(), e.Answers, g.lang))
		})
		d.Item = len(g.drafted().Answers) - 1
	case name == "more pairs" && len(e.Pairs) < mostPairs:
		g.change("", func(e *sheet.Exercise) {
			one := draft.Sound(e)
			if len(e.Pairs) > 0 {
				one = e.Pairs[len(e.Pairs)-1].One
			}
			e.Pairs = append(e.Pairs, draft.Pair(one, g.onTheBench(), g.lang))
		})
		d.Item = len(g.drafted().Pairs) - 1
	case name == "less item" && answers:
		g.change("", func(e *sheet.Exercise) { e.Answers = slices.Delete(e.Answers, d.Item, d.Item+1) })
	case name == "less item" && pairs:
		g.change("", func(e *sheet.Exercise) { e.Pairs = slices.Delete(e.Pairs, d.Item, d.Item+1) })
	case name == "answer name" && answers:
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Answers[d.Item].Name })
	case name == "cue" && answers:
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Answers[d.Item].Cue })
	case name == "pair name" && pairs:
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Pairs[d.Item].Name })
	case name == "why" && pairs:
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Pairs[d.Item].Why })
	case name == "alike" && pairs:
		g.change("", func(e *sheet.Exercise) { draft.SetSame(&e.Pairs[d.Item], n == 0, g.lang) })
	default:
		return false
	}
	g.changed()
	return true
}

// mostPairs is how many pairs a comparison can be given here (design choice: more than
// are asked in one run).
const mostPairs = 24

// heard is what can be set in a sound: finding it out takes some milliseconds.
type heard struct {
	sound            synth.Sound
	fields, measured []*synth.Field
	varied           []*synth.Field // from question to question
}

func (g *Game) heardIn(s synth.Sound) *heard {
	if h := &g.heard; h.fields == nil || h.sound != s {
		*h = heard{s, draft.Heard(s), draft.Measured(s), draft.CanVary(s)}
	}
	return &g.heard
}

// onTheBench is the sound there.
func (g *Game) onTheBench() synth.Sound {
	if g.kept.Bench != nil {
		return *g.kept.Bench
	}
	return benchStart()
}
