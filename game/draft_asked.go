package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// The bounds of what is asked (of the format of a sheet).
const (
	leastQuestions, mostQuestions = 4, 40
	lowestNote, highestNote       = 24, 96
)

// around is how many semitones above and below the sound's own note questions are
// asked at first (design choice: an octave in all).
const around = 6

// actOnAsked is for the quantity of a limit, and for how often and at which notes
// questions are asked.
func (g *Game) actOnAsked(name string, n int, a ui.Action) bool {
	e := g.drafted()
	switch name {
	case "measure":
		fields := g.heardIn(e.Target).measured
		if e.Kind != sheet.Limit || n < 0 || n >= len(fields) {
			return false
		}
		g.change("", func(e *sheet.Exercise) { e.Quantity = draft.Quantity(fields[n], e.Target) })
	case "notes":
		g.change("", func(e *sheet.Exercise) {
			if e.Notes != nil {
				e.Notes = nil
				return
			}
			note := draft.Sound(e).Note
			e.Notes = &sheet.Range{max(lowestNote, note-around), min(highestNote, note+around)}
		})
	default:
		if !a.Moved || !g.setAsked(e, name, a.Value) {
			return false
		}
	}
	g.changed()
	return true
}

// setAsked is for the rulers among them.
func (g *Game) setAsked(e *sheet.Exercise, name string, v float64) bool {
	ends := map[string]draft.End{"smallest": draft.Lowest, "largest": draft.Highest, "first": draft.Start}
	end, isEnd := ends[name]
	switch {
	case isEnd && e.Quantity != nil:
		g.change(name, func(e *sheet.Exercise) { draft.SetQuantity(e, end, v) })
	case name == "lowest note" && e.Notes != nil:
		g.change(name, func(e *sheet.Exercise) { e.Notes[0] = min(v, e.Notes[1]) })
	case name == "highest note" && e.Notes != nil:
		g.change(name, func(e *sheet.Exercise) { e.Notes[1] = max(v, e.Notes[0]) })
	case name == "questions":
		g.change(name, func(e *sheet.Exercise) { e.Questions = int(max(leastQuestions, min(mostQuestions, v))) })
	default:
		return false
	}
	return true
}

// slot names the sound that is set under the present tab: the target, an answer, what is
// heard before the questions, the first of a pair. "other" is the second of the pair.
func (g *Game) slot() string {
	e, tab := g.drafted(), g.cabinet.Desk.Tab
	switch tab {
	case tabHow:
		if e.Reference != nil {
			return "reference"
		}
	case tabWhat, tabVary:
		switch {
		case len(e.Answers) > 0:
			return "answer"
		case len(e.Pairs) > 0:
			return "one"
		}
	}
	return "target"
}

// sound is that of a slot; nil where the exercise has none such.
func sound(e *sheet.Exercise, slot string, item int) *synth.Sound {
	switch {
	case slot == "answer" && item < len(e.Answers):
		return &e.Answers[item].Sound
	case slot == "one" && item < len(e.Pairs):
		return &e.Pairs[item].One
	case slot == "other" && item < len(e.Pairs):
		return &e.Pairs[item].Other
	case slot == "reference":
		return e.Reference
	case slot == "target":
		return &e.Target
	}
	return nil
}

// put puts a sound into the exercise.
func (g *Game) put(slot string, s synth.Sound) {
	item := g.cabinet.Desk.Item
	g.stop()
	g.change("", func(e *sheet.Exercise) {
		switch at := sound(e, slot, item); {
		case at == nil:
		case slot == "target":
			draft.SetTarget(e, s)
		case slot == "reference":
			*at = s
		case slot == "answer":
			draft.SetAnswer(e, item, s, g.lang)
		case slot == "one":
			draft.SetPair(&e.Pairs[item], s, e.Pairs[item].Other, g.lang)
		default:
			draft.SetPair(&e.Pairs[item], e.Pairs[item].One, s, g.lang)
		}
	})
}

// toBench lays a sound of the exercise on the bench, from where it can be brought
// back.
func (g *Game) toBench(slot string) {
	s := sound(g.drafted(), slot, g.cabinet.Desk.Item)
	if s == nil {
		return
	}
	g.lay(*s)
	g.cabinet.Desk.Slot = slot
	g.changed()
}

// hearDraft plays the sound under the present tab, a pair in turn.
func (g *Game) hearDraft() {
	if g.playing.what != silence {
		g.stop()
		return
	}
	e, item := g.drafted(), g.cabinet.Desk.Item
	if slot := g.slot(); slot == "one" && item < len(e.Pairs) {
		p := e.Pairs[item]
		g.work = compare(p.One, p.Other, nil)
		g.playing.loud = g.pair(p.One, p.Other)
		g.play(inTurn)
	} else if s := sound(e, slot, item); s != nil {
		if s.Version == 0 { // of a naming or a comparison that came from a file
			of := draft.Sound(e)
			s = &of
		}
		g.work = compare(*s, *s, nil)
		g.playing.loud = g.alone(*s)
		g.play(toYours)
	}
}
