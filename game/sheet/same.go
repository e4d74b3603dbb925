package sheet

import (
	"fmt"
	"strings"

	"partialcredit/synth"
)

// A Pair is two sounds and whether the ear can tell them apart.
type Pair struct {
	Name  string      `json:"name"` // short: what the two are
	One   synth.Sound `json:"one"`
	Other synth.Sound `json:"other"`
	Same  bool        `json:"same"` // to the ear
	Why   string      `json:"why"`  // one sentence: why they sound the same, or what tells them apart
	Vary  []Variation `json:"vary"` // what differs from question to question, in both at once
}

func (e *Exercise) checkPairs() error {
	if len(e.Pairs) == 0 {
		return fmt.Errorf("it has no pairs")
	}
	seen := map[string]bool{}
	for i, p := range e.Pairs {
		switch {
		case strings.TrimSpace(p.Name) == "":
			return fmt.Errorf("pair %d: name is missing", i+1)
		case strings.TrimSpace(p.Why) == "":
			return fmt.Errorf("pair %s: why is missing", p.Name)
		case seen[p.Name]:
			return fmt.Errorf("two pairs are called %s", p.Name)
		case p.One.Version == 0 || p.Other.Version == 0:
			return fmt.Errorf("pair %s: one or other is missing", p.Name)
		}
		seen[p.Name] = true
		for _, v := range p.Vary {
			if err := v.check(); err != nil {
				return fmt.Errorf("pair %s: %w", p.Name, err)
			}
		}
	}
	return nil
}
