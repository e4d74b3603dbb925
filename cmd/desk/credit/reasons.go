package credit

import (
	"fmt"
	"strings"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// spoken are the marks below which a setting must be given the right reason.
// Higher ones are earned by settings under two steps away, of which hardly a
// listener could say what differs (design choice).
const spoken = 90.0

// A Tally counts the verdicts on one control of one technique.
type Tally struct {
	Technique, Field                   string
	Cases, Right, Contradicting, Stray int
}

// Add counts what yours, a setting of s, was given, unless it earns too much to
// be spoken of. It returns what is amiss, empty where nothing is.
func (c *Tally) Add(s *Sweep, yours synth.Sound, got mark.Result) (amiss string) {
	if got.Marks >= spoken {
		return ""
	}
	v := Judge(s, yours, got.Reasons)
	c.Cases++
	count := func(n *int, yes bool) {
		if yes {
			*n++
		}
	}
	count(&c.Right, v.Right)
	count(&c.Contradicting, v.Contradicts)
	count(&c.Stray, v.Strays)
	if v.Right && !v.Contradicts && !v.Strays {
		return ""
	}
	f, _ := synth.FieldByName(s.Field)
	said := []string{}
	for _, r := range got.Reasons {
		said = append(said, fmt.Sprintf("[%.1f] %s", r.Cost, r.Text))
	}
	return fmt.Sprintf("right %t, contradicts %t, strays %t: %s/%s %.5g of %.5g, %.0f marks: %s", v.Right, v.Contradicts, v.Strays,
		s.Technique, s.Field, f.Get(&yours), f.Get(&s.Target), got.Marks, strings.Join(said, " | "))
}

// total adds up tallies.
func total(tallies []Tally) Tally {
	var all Tally
	for _, c := range tallies {
		all.Cases += c.Cases
		all.Right += c.Right
		all.Contradicting += c.Contradicting
		all.Stray += c.Stray
	}
	return all
}

// Choices returns the settings of the controls that are choices, each a sweep
// over all but the target's.
func (t *Technique) Choices(target synth.Sound) (all []Sweep) {
	for _, field := range t.Fields {
		f, _ := synth.FieldByName(field)
		if len(f.Choices) == 0 {
			continue
		}
		s := Sweep{Technique: t.Name, Field: field, Target: target}
		for i := range f.Choices {
			if v := float64(i); v != f.Get(&target) {
				s.Values = append(s.Values, v)
			}
		}
		all = append(all, s)
	}
	return all
}
