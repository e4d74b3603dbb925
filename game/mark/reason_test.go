package mark

import (
	"testing"

	"partialcredit/synth"
)

// Nothing is said where nothing differs that could be heard: for the target
// itself, and for settings that sound like it.
func TestNoReasons(t *testing.T) {
	for _, e := range Swept() {
		seconds := listening(e.Target)
		hearing := func(change func(s *synth.Sound)) *heard {
			s := e.Target
			change(&s)
			return hear(&kit, perform(s, seconds), Rate, fundamental(s))
		}
		target := hearing(func(*synth.Sound) {})
		for name, change := range map[string]func(s *synth.Sound){
			"the same":         func(*synth.Sound) {},
			"duty the other":   func(s *synth.Sound) { s.A.Duty = 1 - s.A.Duty },
			"a little fainter": func(s *synth.Sound) { s.A.Level, s.B.Level = 0.98*s.A.Level, 0.98*s.B.Level },
			"a cent sharp":     func(s *synth.Sound) { s.A.Cents++; s.B.Cents++ },
		} {
			if e.Target.LFO.Duty > 0 && name == "duty the other" && e.Target.A.Duty != 0.5 {
				continue // the LFO then starts the other way: measured alike, not the same
			}
			if r := reasons(target, hearing(change)); len(r) > 0 {
				t.Errorf("%s, %s: %s", e.ID, name, texts(r))
			}
		}
	}
}

// The sentences that the words were built for, as they stand.
func TestSentences(t *testing.T) {
	plain := synth.Default()
	plain.A.Shape = synth.Pulse
	for _, c := range []struct {
		name          string
		target, yours func(s *synth.Sound)
		want          string
	}{
		{"duty", func(s *synth.Sound) { s.A.Duty = 0.25 }, func(s *synth.Sound) { s.A.Duty = 1.0 / 3 },
			"Every fourth partial is missing from the target: a quarter duty; yours misses every third: its pulse is wider."},
		{"footage", func(s *synth.Sound) { s.A.Footage = 8 }, func(s *synth.Sound) { s.A.Footage = 16 },
			"Yours is an octave lower than the target: its footage is twice as long."},
		{"pitch", func(*synth.Sound) {}, func(s *synth.Sound) { s.A.Cents = -12 },
			"Yours is 12 cents flat."},
		{"vibrato", func(s *synth.Sound) { s.LFO = synth.LFO{Shape: synth.LFOSine, Hz: 5, Cents: 20} }, func(s *synth.Sound) { s.LFO = synth.LFO{Shape: synth.LFOSine, Hz: 5, Cents: 40} },
			"The vibrato of yours is wider: 40 cents against 20."},
		{"shape", func(s *synth.Sound) { s.A.Shape = synth.Sawtooth }, func(s *synth.Sound) { s.A.Shape = synth.Triangle },
			"Yours has odd partials that fall by 12 dB an octave: a triangle; the target has every partial, falling by 6 dB an octave: a sawtooth."},
		{"sync", func(s *synth.Sound) { s.Combine.How, s.Combine.Ratio = synth.Sync, 2.5 }, func(s *synth.Sound) { s.Combine.How, s.Combine.Ratio = synth.Sync, 3.5 },
			"The peak of yours lies near partial 3.5, the target's near 2.5: its sync ratio is higher."},
	} {
		target, yours := plain, plain
		c.target(&target)
		c.yours(&yours)
		r := reasons(hear(&kit, perform(target, 2), Rate, 220), hear(&kit, perform(yours, 2), Rate, 220))
		if len(r) == 0 || r[0].Text.String() != c.want {
			t.Errorf("%s: %s\nwant %s", c.name, texts(r), c.want)
		}
	}
}
