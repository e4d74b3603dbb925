package sheet

import (
	"fmt"
	"strings"

	"partialcredit/synth"
)

// How many answers a naming may offer.
const (
	LeastAnswers = 2
	MostAnswers  = 6
)

// An Answer is one name and what it sounds like.
type Answer struct {
	Name  string      `json:"name"`
	Cue   string      `json:"cue"` // what to listen for: one sentence
	Sound synth.Sound `json:"sound"`
	Vary  []Variation `json:"vary"` // what differs from question to question
}

// A Variation lets each question have its own value of one or several fields
// that are alike, between two values.
type Variation struct {
	Set     []string `json:"set"`
	Between Range    `json:"between"`
}

func (e *Exercise) checkAnswers() error {
	if n := len(e.Answers); n < LeastAnswers || n > MostAnswers {
		return fmt.Errorf("it has %d answers; it must have %d to %d", n, LeastAnswers, MostAnswers)
	}
	seen := map[string]bool{}
	for i, a := range e.Answers {
		switch {
		case strings.TrimSpace(a.Name) == "":
			return fmt.Errorf("answer %d: name is missing", i+1)
		case strings.TrimSpace(a.Cue) == "":
			return fmt.Errorf("answer %s: cue is missing", a.Name)
		case seen[a.Name]:
			return fmt.Errorf("two answers are called %s", a.Name)
		case a.Sound.Version == 0:
			return fmt.Errorf("answer %s: sound is missing", a.Name)
		}
		seen[a.Name] = true
		for _, v := range a.Vary {
			if err := v.check(); err != nil {
				return fmt.Errorf("answer %s: %w", a.Name, err)
			}
		}
	}
	return nil
}

func (v *Variation) check() error {
	if len(v.Set) == 0 {
		return fmt.Errorf(`vary names no field in "set"`)
	}
	if v.Between[0] > v.Between[1] {
		return fmt.Errorf("vary %s: the lower value must come first", v.Set[0])
	}
	for _, name := range v.Set {
		f, ok := synth.FieldByName(name)
		if !ok {
			return fmt.Errorf("vary sets %s, which is not a field of a sound", name)
		}
		for _, value := range v.Between {
			if err := f.Check(value); err != nil {
				return fmt.Errorf("vary: %w", err)
			}
		}
	}
	return nil
}

// Apply sets every field to the value at a place, 0 to 1, between the two:
// equal ratios are equal ways where the field has it so.
func (v *Variation) Apply(s *synth.Sound, at float64) {
	for _, name := range v.Set {
		f, ok := synth.FieldByName(name)
		if !ok {
			continue
		}
		f.Set(s, f.Clamp(between(f, v.Between, at)))
	}
}
