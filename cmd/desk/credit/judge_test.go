package credit

import (
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// Every control of every technique has a rule.
func TestRules(t *testing.T) {
	n := 0
	for _, q := range Techniques {
		for _, field := range q.Fields {
			if _, ok := rules[q.Name+"/"+field]; !ok {
				t.Errorf("no rule for %s of %s", field, q.Name)
			}
			n++
		}
	}
	if n != len(rules) {
		t.Errorf("%d rules for %d controls", len(rules), n)
	}
}

// Verdicts on sentences whose truth is plain from the settings.
func TestJudge(t *testing.T) {
	tremolo := synth.Default()
	tremolo.LFO.Hz, tremolo.LFO.Level = 4, 0.5
	pulse := synth.Default()
	pulse.A.Shape, pulse.A.Duty = synth.Pulse, 0.2
	for _, c := range []struct {
		technique, field string
		target           synth.Sound
		value            float64
		said             []string
		want             Verdict
	}{
		{"tremolo", "lfo.hz", tremolo, 5, []string{"The level of yours swells 5 times a second, the target 4."}, Verdict{Right: true}},
		{"tremolo", "lfo.hz", tremolo, 5, []string{"The level of yours swells 3.5 times a second, the target 4."}, Verdict{Contradicts: true}},
		{"tremolo", "lfo.hz", tremolo, 3, []string{"The level of yours swells 3.5 times a second, the target 4."}, Verdict{Right: true}},
		{"tremolo", "lfo.hz", tremolo, 3, []string{"Yours is 12 cents sharp."}, Verdict{Strays: true}},
		{"tremolo", "lfo.hz", tremolo, 3, nil, Verdict{}},
		{"duty", "a.duty", pulse, 0.3, []string{"The pulse of yours is wider: a duty near 30 % against 20 %.", "Yours is duller than the target: its high partials are weaker."}, Verdict{Right: true}},
		{"duty", "a.duty", pulse, 0.3, []string{"Yours is duller than the target: its high partials are weaker.", "The pulse of yours is wider: a duty near 30 % against 20 %."}, Verdict{}},
		{"duty", "a.duty", pulse, 0.3, []string{"The pulse of yours is wider: a duty near 30 % against 20 %.", "The pulse of yours is narrower."}, Verdict{Right: true, Contradicts: true}},
	} {
		yours := c.target
		f, _ := synth.FieldByName(c.field)
		f.Set(&yours, c.value)
		var got []mark.Reason
		for _, text := range c.said {
			got = append(got, mark.Reason{Text: words.Say(text)})
		}
		if v := Judge(&Sweep{Technique: c.technique, Field: c.field, Target: c.target}, yours, got); v != c.want {
			t.Errorf("%s/%s %g: %q: %+v, want %+v", c.technique, c.field, c.value, c.said, v, c.want)
		}
	}
}
