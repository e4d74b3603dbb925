package advice

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/game/words"
)

const (
	met    = 80.0 // marks of a start that is nearly the target: "very close" (hearing.md 8(a)4)
	solved = 95.0 // about those of one step: there is nothing to hear
)

func (a *Adviser) match() {
	r := a.prepare(a.exercise.Target)
	a.start(r)
}

func (a *Adviser) start(r *mark.Reference) {
	marks, _ := a.worth(r, a.exercise.Start())
	text := words.Say("The target is as good as met at the start: handed in untouched, it earns %s marks of 100. Move a start away from the target.", whole(marks))
	switch {
	case marks >= solved:
		a.tell(Met, -1, Mistake, text)
	case marks >= met:
		a.tell(Met, -1, Warning, text)
	}
}

func whole(v float64) string { return words.English.Say("%d", int(math.Round(v))) }
