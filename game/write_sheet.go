package game

import (
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// plainly is a text that is not put into the language.
func plainly(s string) words.Message { return words.Message{Format: "%s", Args: []any{raw(s)}} }

// raw is a text that nobody translates.
type raw string

// strictnesses in the order of the buttons, and what is said of them.
var strictnesses = []sheet.Strictness{sheet.Beginner, sheet.Practised, sheet.Expert}

// actOnWritten is for the sheet that is written.
func (g *Game) actOnWritten(name string, n int, a ui.Action) bool {
	w, d := g.written(), &g.cabinet.Desk
	if w == nil {
		return false
	}
	switch name {
	case "sheet title":
		if a.Typed {
			w.Change("title", func(s *sheet.Sheet) { s.Title = a.Text })
		}
	case "for":
		if n >= 0 && n < len(strictnesses) {
			w.Change("", func(s *sheet.Sheet) { s.Strictness = strictnesses[n] })
		}
	case "vary":
		w.Change("", func(s *sheet.Sheet) { s.Vary = !s.Vary })
	case "side":
		d.Part, g.part = n, 0
	case "line":
		if n == d.Exercise {
			g.openDraft(n)
			return true
		}
		d.Exercise = n
	case "edit":
		g.openDraft(d.Exercise)
		return true
	case "add":
		at := d.Exercise
		if len(w.Sheet().Exercises) == 0 {
			at = -1
		}
		kind := sheet.Match
		if e := g.drafted(); e != nil {
			kind = e.Kind
		}
		g.addExercise(at, kind)
		return true
	case "up":
		d.Exercise = w.Move(d.Exercise, -1)
	case "down":
		d.Exercise = w.Move(d.Exercise, 1)
	case "copy":
		if at := w.Copy(d.Exercise); at >= 0 {
			d.Exercise = at
		}
	case "remove":
		w.Remove(d.Exercise)
	case "undo":
		w.Undo()
	case "redo":
		w.Redo()
	case "give":
		g.give()
	case "sheet page":
		g.show(writePage)
		return true
	default:
		return false
	}
	g.changed()
	return true
}

// openDraft opens an exercise to be written.
func (g *Game) openDraft(n int) {
	w := g.written()
	if w == nil || n < 0 || n >= len(w.Sheet().Exercises) {
		return
	}
	w.Pause()
	g.cabinet.Desk.Exercise, g.cabinet.Desk.Tab, g.cabinet.Desk.Item = n, 0, 0
	g.changed()
	g.show(draftPage)
}

// give goes on to handing the sheet out, if nothing is missing of it.
func (g *Game) give() {
	w := g.written()
	if text, at, ok := w.Missing(); !ok {
		if at >= 0 {
			g.cabinet.Desk.Exercise = at
		}
		g.say, g.over = g.t("The sheet cannot be handed out yet. %s", g.inExercise(at, text)), note
		return
	}
	s, err := sheet.Parse(w.Sheet().JSON()) // as whoever opens it will read it
	if err != nil {
		g.say, g.over = g.t("The sheet cannot be handed out yet. %s", plainly(g.wrong(err))), note
		return
	}
	g.giving = s
	g.remember(s)
	g.show(givePage)
}

// inExercise says in which exercise something is.
func (g *Game) inExercise(at int, text words.Message) words.Message {
	if at < 0 {
		return text
	}
	return words.Say("Exercise %d: %s", at+1, text)
}
