package game

import "partialcredit/game/ui"

// layGive lays out how a sheet is handed out.
func (g *Game) layGive(p *paper) { g.stub(p, "Hand out") }

// actOnGiving is for handing out.
func (g *Game) actOnGiving(name string, n int, a ui.Action) bool { return false }
