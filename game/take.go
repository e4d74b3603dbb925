package game

import "partialcredit/game/ui"

// layTake lays out a recording.
func (g *Game) layTake(p *paper) { g.stub(p, "Recording") }

// actOnTake is for recordings.
func (g *Game) actOnTake(name string, n int, a ui.Action) bool { return false }
