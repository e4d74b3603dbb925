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
	p.Same = SameToTheEar(p.One, p.Other)
	p.Name, p.Why = texts(&p, l)
	return p
}

// SetPair gives a pair another first or second sound, says anew whether the two are the
// same to the ear, and puts new texts in the place of those that nobody has written.
func SetPair(p *sheet.Pair, one, other synth.Sound, l *words.Language) {
	now := Pair(one, other, l)
	retell(p, now, l)
}

// SetSame says whether a pair is the same to the ear, against the suggestion.
func SetSame(p *sheet.Pair, same bool, l *words.Language) {
	now := *p
	now.Same = same
	now.Name, now.Why = texts(&now, l)
	retell(p, now, l)
}

func retell(p *sheet.Pair, now sheet.Pair, l *words.Language) {
	name, why := texts(p, l)
	if p.Name != name && p.Name != "" {
		now.Name = p.Name
	}
	if p.Why != why && p.Why != "" {
		now.Why = p.Why
	}
	p.One, p.Other, p.Same, p.Name, p.Why = now.One, now.Other, now.Same, now.Name, now.Why
}

// texts are what a pair may say.
func texts(p *sheet.Pair, l *words.Language) (name, why string) {
	f, ok := synth.FieldByName(differs(p.One, p.Other))
	if !ok {
		return l.Say("twice the same"), l.Say("It is the same sound twice.")
	}
	from, to := f.Format(f.Get(&p.One)), f.Format(f.Get(&p.Other))
	name = l.Say("%s: %s and %s", f.Label, from, to)
	if p.Same {
		return name, l.Say("%s differs, but the ear hears the same partials.", f.Label)
	}
	return name, l.Say("%s differs: %s and then %s.", f.Label, from, to)
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
