package advice

import (
	"math"
	"slices"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// comparing holds what is said of pairs to the marking.
func (a *Adviser) comparing() {
	least, hardest := math.Inf(1), ""
	for i := range a.exercise.Pairs {
		p := &a.exercise.Pairs[i]
		nearest, furthest := math.Inf(1), 0.0
		for _, s := range settings(p, a.exercise.Notes) {
			steps := a.apart(s[0], s[1])
			nearest, furthest = min(nearest, steps), max(furthest, steps)
		}
		switch {
		case phased(&p.One) || phased(&p.Other):
			a.tell(Told, -1, Note, words.Say("“%s” is not looked into: its start phases decide how two oscillators add, and the marking does not hear them.", p.Name))
			nearest = math.Inf(1)
		case p.Same && furthest >= 1:
			a.tell(Told, -1, Mistake, words.Say("“%s” is said to be the same, but its sounds lie up to %s just-noticeable steps apart.", p.Name, stepped(furthest)))
		case !p.Same && nearest < 1:
			a.tell(Alike, -1, Mistake, words.Say("“%s” is said to be different, but its sounds can lie only %s just-noticeable steps apart.", p.Name, stepped(nearest)))
		case !p.Same && nearest < 2:
			a.tell(Alike, -1, Warning, words.Say("“%s” is said to be different, but its sounds can hardly be told apart: they lie %s just-noticeable steps apart.", p.Name, stepped(nearest)))
		}
		if !p.Same && nearest < least {
			least, hardest = nearest, p.Name
		}
		if !a.ends(p.One, a.exercise.Notes, words.Say("A sound of “%s”", p.Name)) {
			a.ends(p.Other, a.exercise.Notes, words.Say("A sound of “%s”", p.Name))
		}
	}
	if all := !slices.ContainsFunc(a.exercise.Pairs, func(p sheet.Pair) bool { return !p.Same }); all {
		a.tell(Difficulty, -1, Warning, words.Say("All pairs are said to be the same: there is nothing to tell apart."))
		return
	}
	if least >= 2 && hardest != "" {
		a.tell(Difficulty, -1, Note, words.Say("The pair that is hardest to tell apart is “%s”, %s just-noticeable steps: %s.", hardest, stepped(least), told(least)))
	}
}

// settings are a pair at either end of all of its variations and of the notes.
func settings(p *sheet.Pair, notes *sheet.Range) (all [][2]synth.Sound) {
	ends := []float64{0, 1}
	if len(p.Vary) == 0 {
		ends = ends[:1]
	}
	for _, at := range ends {
		one, other := p.One, p.Other
		for i := range p.Vary {
			p.Vary[i].Apply(&one, at)
			p.Vary[i].Apply(&other, at)
		}
		if notes == nil {
			all = append(all, [2]synth.Sound{one, other})
			continue
		}
		for _, note := range notes {
			by := note - one.Note
			low, high := one, other
			low.Note, high.Note = low.Note+by, min(96, max(24, high.Note+by))
			all = append(all, [2]synth.Sound{low, high})
			if notes[0] == notes[1] {
				break
			}
		}
	}
	return all
}

// phased says that start phases take part in how two oscillators add.
func phased(s *synth.Sound) bool {
	return s.Combine.How != synth.OnlyA && s.A.Phase != s.B.Phase
}
