package game

import "partialcredit/game/ui"

// laySlip lays out the slip that a learner hands in.
func (g *Game) laySlip(p *paper) { g.stub(p, "Your slip") }

// actOnSlip is for the slip.
func (g *Game) actOnSlip(name string, n int, a ui.Action) bool { return false }
