package game

import (
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// actOnVaried is for what differs from question to question, what is heard before each, and
// what is published of a limit.
func (g *Game) actOnVaried(name string, n int, a ui.Action) bool {
	e, item := g.drafted(), g.cabinet.Desk.Item
	switch {
	case name == "varies":
		all, s := draft.Varied(e, item)
		fields := g.heardIn(s).varied
		if all == nil || n < 0 || n >= len(fields) {
			return false
		}
		g.change("", func(e *sheet.Exercise) { draft.ToggleVary(e, item, fields[n]) })
	case name == "lower" && a.Moved:
		g.change(numberedID(name, n), func(e *sheet.Exercise) { draft.SetVary(e, item, n, draft.Lowest, a.Value) })
	case name == "upper" && a.Moved:
		g.change(numberedID(name, n), func(e *sheet.Exercise) { draft.SetVary(e, item, n, draft.Highest, a.Value) })
	case name == "reference" && e.Kind == sheet.Name:
		s := g.onTheBench()
		g.change("", func(e *sheet.Exercise) { draft.ToggleReference(e, s) })
	case name == "published" && e.Quantity != nil:
		g.change("", draft.TogglePublished)
	case name == "published value" && a.Moved && e.Quantity != nil:
		g.change(name, func(e *sheet.Exercise) { draft.SetPublished(e, a.Value) })
	case name == "source" && e.Quantity != nil && e.Quantity.Published != nil:
		g.write(name, a, func(e *sheet.Exercise) *string { return &e.Quantity.Published.Source })
	default:
		return false
	}
	g.changed()
	return true
}

// varying says that an exercise has something that differs from question to question.
func varying(e *sheet.Exercise) bool { return e.Kind == sheet.Name || e.Kind == sheet.Same }
