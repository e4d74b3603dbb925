package game

import "partialcredit/game/ui"

// actOnWriting is for what is written.
func (g *Game) actOnWriting(name string, n int, a ui.Action) bool { return false }
