package game

import "partialcredit/game/ui"

// layBook lays out the mark book.
func (g *Game) layBook(p *paper) { g.stub(p, "Mark book") }

// takeSlip takes the text of a slip: a link, or its fragment.
func (g *Game) takeSlip(text string) {}

// actOnBook is for the mark book.
func (g *Game) actOnBook(name string, n int, a ui.Action) bool { return false }
