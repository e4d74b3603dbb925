package draft

import (
	"slices"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// differs is the name of the first field in which two sounds are not alike, of those
// that are heard if there are any.
func differs(one, other synth.Sound) string {
	for _, f := range Heard(one) {
		if f.Get(&one) != f.Get(&other) {
			return f.Name
		}
	}
	for _, f := range synth.Fields() {
		if f.Get(&one) != f.Get(&other) {
			return f.Name
		}
	}
	return ""
}

// Pair is a pair of two sounds, with what it may say: whether they are the same to the
// ear, and why.
func Pair(one, other synth.Sound, l *words.Language) sheet.Pair {
	p := sheet.Pair{One: short(one), Other: short(other)}
	judge(&p, l)
	return p
}

// SetPair gives a pair another first or second sound, says anew whether the two are the
// same to the ear, and puts new texts in the place of those that nobody has written.
func SetPair(p *sheet.Pair, one, other synth.Sound, l *words.Language) {
	before := Pair(p.One, p.Other, l)
	now := Pair(one, other, l)
	p.One, p.Other, p.Same = now.One, now.Other, now.Same
	if p.Name == before.Name || p.Name == "" {
		p.Name = now.Name
	}
	if p.Why == before.Why || p.Why == "" {
		p.Why = now.Why
	}
}

func judge(p *sheet.Pair, l *words.Language) {
	p.Same = SameToTheEar(p.One, p.Other)
	f, ok := synth.FieldByName(differs(p.One, p.Other))
	if !ok {
		p.Name, p.Why = l.Say("twice the same"), l.Say("It is the same sound twice.")
		return
	}
	from, to := f.Format(f.Get(&p.One)), f.Format(f.Get(&p.Other))
	p.Name = l.Say("%s: %s and %s", f.Label, from, to)
	if p.Same {
		p.Why = l.Say("%s differs, but the ear hears the same partials.", f.Label)
	} else {
		p.Why = l.Say("%s differs: %s and then %s.", f.Label, from, to)
	}
}

// Answer is an answer of a sound, named after what makes it differ from the others.
func Answer(s synth.Sound, others []sheet.Answer, l *words.Language) sheet.Answer {
	a := sheet.Answer{Sound: short(s)}
	name := ""
	if len(others) > 0 {
		name = differs(others[0].Sound, a.Sound)
	} else {
		name = told(s).Name
	}
	if f, ok := synth.FieldByName(name); ok {
		a.Name = l.Value(f.Format(f.Get(&a.Sound)))
		a.Cue = l.Say("%s: %s.", f.Label, f.Format(f.Get(&a.Sound)))
	}
	return a
}

// SetAnswer gives an answer another sound. Its name and its cue follow where nobody
// has written them.
func SetAnswer(e *sheet.Exercise, i int, s synth.Sound, l *words.Language) {
	others := slices.Delete(slices.Clone(e.Answers), i, i+1)
	a := &e.Answers[i]
	before, now := Answer(a.Sound, others, l), Answer(s, others, l)
	a.Sound = now.Sound
	if a.Name == before.Name || a.Name == "" {
		a.Name = now.Name
	}
	if a.Cue == before.Cue || a.Cue == "" {
		a.Cue = now.Cue
	}
}
