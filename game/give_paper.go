package game

// printSheet puts what is handed out on paper: the worksheet, or the answer key.
func (g *Game) printSheet(key bool) {}
