package draft

import (
	"strings"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// Missing says in a sentence what an exercise still needs, or ok.
func Missing(e *sheet.Exercise) (text words.Message, ok bool) {
	for _, rule := range []struct {
		broken bool
		text   words.Message
	}{
		{empty(e.Title), words.Say("The title is missing: write the question that the exercise asks.")},
		{empty(e.Task), words.Say("The task is missing: write what to do, or what to listen for.")},
		{empty(e.Teach), words.Say("The teaching sentence is missing: write what to know, which is shown afterwards.")},
		missingOf(e),
	} {
		if rule.broken {
			return rule.text, false
		}
	}
	return words.Message{}, true
}

type rule = struct {
	broken bool
	text   words.Message
}

func missingOf(e *sheet.Exercise) rule {
	switch e.Kind {
	case sheet.Match, sheet.Show:
		return rule{len(e.Controls) == 0, words.Say("No control is chosen: choose what the learner sets.")}
	case sheet.Limit:
		q := e.Quantity
		if q != nil && q.Published != nil && empty(q.Published.Source) {
			return rule{true, words.Say("The published threshold has no source: write who found it, and with what sounds.")}
		}
		return rule{q == nil || !(0 < q.Least && q.Least < q.Start && q.Start <= q.Most), words.Say("No quantity is chosen of which there is room to grow in this sound: choose another one.")}
	case sheet.Name:
		return missingOfName(e)
	}
	return missingOfSame(e)
}

func missingOfName(e *sheet.Exercise) rule {
	if len(e.Answers) < sheet.LeastAnswers {
		return rule{true, words.Say("A naming needs two answers or more: set another sound on the bench and add it.")}
	}
	seen := map[string]bool{}
	for i, a := range e.Answers {
		switch {
		case empty(a.Name):
			return rule{true, words.Say("Answer %d has no name.", i+1)}
		case empty(a.Cue):
			return rule{true, words.Say("Answer %d has no cue: write what to listen for.", i+1)}
		case seen[a.Name]:
			return rule{true, words.Say("Two answers have the same name: change that of answer %d.", i+1)}
		}
		seen[a.Name] = true
	}
	return rule{}
}

func missingOfSame(e *sheet.Exercise) rule {
	if len(e.Pairs) == 0 {
		return rule{true, words.Say("A comparison needs a pair of sounds: set a sound on the bench and add a pair with it.")}
	}
	seen := map[string]bool{}
	for i, p := range e.Pairs {
		switch {
		case empty(p.Name):
			return rule{true, words.Say("Pair %d has no name: write what the two are.", i+1)}
		case empty(p.Why):
			return rule{true, words.Say("Pair %d has no reason: write why the two sound the same, or what tells them apart.", i+1)}
		case seen[p.Name]:
			return rule{true, words.Say("Two pairs have the same name: change that of pair %d.", i+1)}
		}
		seen[p.Name] = true
	}
	return rule{}
}

// A gap is what MissingOfSheet has said.
type gap struct {
	text     words.Message
	exercise int
	ok       bool
}

// Missing is [MissingOfSheet] of the draft as it is now.
func (d *Draft) Missing() (text words.Message, exercise int, ok bool) {
	if d.missing == nil {
		text, exercise, ok = MissingOfSheet(&d.sheet)
		d.missing = &gap{text, exercise, ok}
	}
	return d.missing.text, d.missing.exercise, d.missing.ok
}

// MissingOfSheet says what a sheet still needs before it can be handed out, and in
// which exercise, or -1.
func MissingOfSheet(s *sheet.Sheet) (text words.Message, exercise int, ok bool) {
	switch {
	case empty(s.Title):
		return words.Say("The sheet has no title."), -1, false
	case len(s.Exercises) == 0:
		return words.Say("The sheet has no exercises: add one, or make one of a sound on the bench."), -1, false
	}
	for i := range s.Exercises {
		if text, ok := Missing(&s.Exercises[i]); !ok {
			return text, i, false
		}
	}
	return words.Message{}, -1, true
}

func empty(s string) bool { return strings.TrimSpace(s) == "" }
