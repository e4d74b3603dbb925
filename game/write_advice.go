package game

import (
	"time"

	"partialcredit/game/advice"
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// advised is the advice on what is written, as far as it is worked out.
type advised struct {
	known   map[string][]advice.Advice // by what is advised on
	keys    []*string                  // of the exercises of the sheet; nil where they are not known
	at      string                     // what is being worked on
	adviser *advice.Adviser            // nil where nothing is
}

// stale is called when anything has changed.
func (a *advised) stale() { a.keys = nil }

const (
	pondered    = 500 * time.Millisecond // after the last touch advice begins (design choice)
	mostAdvised = 300                    // exercises, in memory
)

// key is what there is advice on, of an exercise of the sheet; empty where it is
// unfinished.
func (g *Game) key(i int) string {
	a, w := &g.advised, g.written()
	if w == nil || i < 0 || i >= len(w.Sheet().Exercises) {
		return ""
	}
	s := w.Sheet()
	if len(a.keys) != len(s.Exercises) {
		a.keys = make([]*string, len(s.Exercises))
	}
	if a.keys[i] == nil {
		key := ""
		if _, ok := draft.Missing(&s.Exercises[i]); ok {
			key = string(s.Only(i).JSON())
		}
		a.keys[i] = &key
	}
	return *a.keys[i]
}

// toAdvise is the exercise on which advice is still to be worked out; -1 where all is
// known that is asked for on this page.
func (g *Game) toAdvise() int {
	if g.page != writePage && g.page != draftPage || g.over != noOverlay {
		return -1
	}
	a, at := &g.advised, g.cabinet.Desk.Exercise
	open := func(i int) bool {
		key := g.key(i)
		_, ok := a.known[key]
		return key != "" && (!ok || a.adviser != nil && a.at == key)
	}
	if open(at) {
		return at
	}
	if w := g.written(); g.page == writePage && w != nil {
		for i := range w.Sheet().Exercises {
			if open(i) {
				return i
			}
		}
	}
	return -1
}

// advise goes on with the advice by one sound, where nothing sounds and nobody does
// anything.
func (g *Game) advise() {
	if g.playing.what != silence || g.in.Heard.Item >= 0 || g.in.Now-g.last < pondered {
		return
	}
	i := g.toAdvise()
	if i < 0 {
		return
	}
	a := &g.advised
	if key := g.key(i); a.adviser == nil || a.at != key {
		g.beginAdvice(key)
		return
	}
	before := len(a.known[a.at])
	done := a.adviser.Step(1)
	a.known[a.at] = a.adviser.Found()
	if done {
		a.adviser = nil
	}
	g.dirty = g.dirty || done || len(a.known[a.at]) != before
}

func (g *Game) beginAdvice(key string) {
	a := &g.advised
	if a.adviser != nil {
		a.adviser.Stop()
		delete(a.known, a.at) // it was not finished
		a.adviser = nil
	}
	if a.known == nil || len(a.known) > mostAdvised {
		a.known = map[string][]advice.Advice{}
	}
	a.at = key
	one, err := sheet.Parse([]byte(key))
	if err != nil {
		a.known[key] = nil // no advice on what cannot be worked
		return
	}
	a.adviser = advice.New(one, 0)
}

// advice is what is known of an exercise by now, and whether that is all.
func (g *Game) adviceOn(i int) (found []advice.Advice, all bool) {
	a, key := &g.advised, g.key(i)
	if key == "" {
		return nil, true
	}
	found, ok := a.known[key]
	return found, ok && (a.adviser == nil || a.at != key)
}

// weighed says an advice with how much it matters.
func (g *Game) weighed(a advice.Advice) (string, Ink) {
	switch a.Weight {
	case advice.Mistake:
		return g.t("Mistake: %s", a.Text), Red
	case advice.Warning:
		return g.t("Warning: %s", a.Text), Red
	}
	return a.Say(g.lang), Faint
}

// firstAdvice is what matters most of what there is to say of an exercise.
func (g *Game) firstAdvice(i int) (string, Ink) {
	found, all := g.adviceOn(i)
	switch {
	case len(found) > 0:
		return g.weighed(found[0])
	case !all:
		return g.t("The exercise is being worked through for advice."), Faint
	}
	return "", Faint
}

// sign says in a list how much the advice on an exercise matters.
func (g *Game) sign(i int) string {
	found, _ := g.adviceOn(i)
	if len(found) == 0 {
		return ""
	}
	switch found[0].Weight {
	case advice.Mistake:
		return "!!"
	case advice.Warning:
		return "!"
	}
	return ""
}

// adviceBlocks are all the advice on the exercise, with a button where it can be
// followed or heard.
func (g *Game) adviceBlocks(p *paper) (blocks []block) {
	found, all := g.adviceOn(g.cabinet.Desk.Exercise)
	for i, a := range found {
		text, ink := g.weighed(a)
		said := g.saying(p, text, ink)
		if label := g.followed(a); label != "" {
			b, height := g.row(p, ui.Widget{ID: numberedID("follow", i), Label: label}), said.height
			said = block{height + p.gap/2 + b.height, func(r ui.Rect) {
				above, below := r.CutTop(height, p.gap/2)
				p.paragraph(above, text, p.body, false, ink)
				b.lay(below)
			}}
		}
		blocks = append(blocks, said)
	}
	switch {
	case !all:
		blocks = append(blocks, g.saying(p, g.t("The exercise is being worked through for advice."), Faint))
	case len(found) == 0:
		blocks = append(blocks, g.saying(p, g.t("There is no advice on this exercise."), Faint))
	}
	return blocks
}

// followed is what the button beside an advice does; none where empty.
func (g *Game) followed(a advice.Advice) string {
	switch {
	case a.Rule == advice.Met:
		return g.t("Move the start away")
	case a.Rule == advice.Unheard && a.Control >= 0 && len(g.drafted().Controls) > 1 && a.Weight > advice.Note:
		return g.t("Take the control away")
	case len(a.Settings) > 0 && len(a.Settings) == len(g.drafted().Controls):
		return g.t("Hear the target and this in turn")
	}
	return ""
}

// followAdvice does what an advice says, or lets it be heard.
func (g *Game) followAdvice(n int) {
	found, _ := g.adviceOn(g.cabinet.Desk.Exercise)
	if n < 0 || n >= len(found) || g.followed(found[n]) == "" {
		return
	}
	a := found[n]
	switch a.Rule {
	case advice.Met:
		g.change("", func(e *sheet.Exercise) {
			for i := range e.Controls {
				e.Controls[i].Start = draft.Away(&e.Controls[i], e.Target)
			}
		})
	case advice.Unheard:
		g.change("", func(e *sheet.Exercise) {
			if f := e.Controls[a.Control].Field(); f != nil {
				draft.Toggle(e, f)
			}
		})
	default:
		e := g.drafted()
		other := e.Target
		for i, v := range a.Settings {
			e.Controls[i].Set(&other, v)
		}
		g.work = compare(e.Target, other, nil)
		g.playing.loud = g.pair(e.Target, other)
		g.play(inTurn)
		return
	}
	g.changed()
}
