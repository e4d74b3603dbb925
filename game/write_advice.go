package game

// advised is the advice on what is written, as far as it is worked out.
type advised struct{}

func (a *advised) stale() {}

// firstAdvice is what matters most of what there is to say of an exercise.
func (g *Game) firstAdvice(i int) (string, Ink) { return "", Faint }

// sign says in a list whether there is advice on an exercise.
func (g *Game) sign(i int) string { return "" }
