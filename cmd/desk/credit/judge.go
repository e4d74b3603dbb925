package credit

import (
	"regexp"
	"strconv"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// A Verdict judges the reasons given for one setting of one control.
type Verdict struct {
	Right       bool // the first names the control's audible effect and its direction
	Contradicts bool // one says the opposite
	Strays      bool // one speaks of what the control cannot have caused
}

// Judge holds the reasons for yours, which differs from the target of s in the
// field of s alone, against the rule for that control.
func Judge(s *Sweep, yours synth.Sound, got []mark.Reason) (v Verdict) {
	r := ruleFor(s, yours)
	for i, reason := range got {
		said := annotate(reason.Text.String())
		right := r.right.MatchString(said)
		v.Right = v.Right || right && i == 0
		switch {
		case !right && r.wrong.MatchString(said):
			v.Contradicts = true
		case !right && !r.own.MatchString(said):
			v.Strays = true
		}
	}
	return v
}

// A ruling says of the sentences about one setting, as regular expressions,
// which are right, which say the opposite, and which may be said at all.
type ruling struct{ right, wrong, own *regexp.Regexp }

var never = regexp.MustCompile(`$^`)

// ruleFor turns the rule of a control to the side on which yours lies.
func ruleFor(s *Sweep, yours synth.Sound) ruling {
	name := s.Technique + "/" + s.Field
	r, ok := rules[name]
	if !ok {
		return ruling{never, never, never}
	}
	f, _ := synth.FieldByName(s.Field)
	up := f.Get(&yours) > f.Get(&s.Target)
	switch name {
	case "shape/a.shape":
		return ruling{says(otherShape(s.Target, yours)), never, r.own}
	case "octaves/b.footage":
		return ruling{says(otherOctave(s.Target, yours)), never, r.own}
	case "fm/combine.ratio":
		if s.beatsOnly(yours) {
			side, other := `lower`, `higher`
			if up {
				side, other = other, side
			}
			return ruling{says(`^Yours beats|(partials|level) of yours swell|ratio is ` + side), says(`yours stands still|ratio is ` + other), r.own}
		}
	case "width/a.duty", "width/lfo.duty":
		if folds(s.Target) || folds(yours) {
			r = foldedRules[name]
			if name == "width/a.duty" && yours.A.Duty < yours.LFO.Duty {
				// Stopped at no width at all it does move less, whichever way it went.
				return ruling{r.side(up), rules[name].side(!up), r.own}
			}
		}
	case "bell/envelope.depth":
		if s.Target.Envelope.Seconds > 0.3 { // it falls through most of what is listened to: a slower fall cannot be told from a smaller one
			return ruling{says(`falls less far|bright longer`), never, r.own}
		}
	case "beats/combine.balance": // which of the two is the fainter is not heard
		up = fainterDB(yours) < fainterDB(s.Target)
	}
	return ruling{r.side(up), r.side(!up), r.own}
}

var (
	saidRates = regexp.MustCompile(`([0-9]+(?:\.[0-9]+)?) times a second, the target ([0-9]+(?:\.[0-9]+)?)`)
	saidFall  = regexp.MustCompile(`falls from ([0-9]+(?:\.[0-9]+)?) semitones above, the target from ([0-9]+(?:\.[0-9]+)?)`)
)

// annotate adds to a sentence the direction that only its numbers give.
func annotate(said string) string {
	return said + direction(said, saidRates, " FASTER", " SLOWER") + direction(said, saidFall, " HIGHER", " LOWER")
}

// direction is above where the first number that re finds in a sentence, that
// of yours, is greater than the second.
func direction(said string, re *regexp.Regexp, above, below string) string {
	m := re.FindStringSubmatch(said)
	if m == nil {
		return ""
	}
	yours, _ := strconv.ParseFloat(m[1], 64)
	target, _ := strconv.ParseFloat(m[2], 64)
	switch {
	case yours > target:
		return above
	case yours < target:
		return below
	}
	return ""
}
