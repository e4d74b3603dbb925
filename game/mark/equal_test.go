package mark_test

import (
	"fmt"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

func parse(t *testing.T, description string) synth.Sound {
	t.Helper()
	s, err := synth.Parse([]byte(`{"version": 1, ` + description + `}`))
	if err != nil {
		t.Fatalf("%s: %v", description, err)
	}
	return s
}

// Sounds that are the same to the ear get at least 98 (the brief). The distance
// is symmetric, so one way round will do. Sources of the identities: hearing.md 1.7.
func TestWhatSoundsTheSameGetsTheMarks(t *testing.T) {
	for _, c := range []struct{ name, a, b string }{
		{"itself", `"a": {"shape": "pulse", "duty": 0.3}`, `"a": {"shape": "pulse", "duty": 0.3}`},
		{"duty d and 1-d", `"a": {"shape": "pulse", "duty": 0.3}`, `"a": {"shape": "pulse", "duty": 0.7}`},
		{"narrow duty d and 1-d", `"a": {"shape": "pulse", "duty": 0.05}`, `"a": {"shape": "pulse", "duty": 0.95}`},
		{"moving duty d and 1-d", `"a": {"shape": "pulse", "duty": 0.35}, "lfo": {"hz": 2, "duty": 0.2}`,
			`"a": {"shape": "pulse", "duty": 0.65}, "lfo": {"hz": 2, "duty": 0.2}`},
		{"rising and falling", `"a": {"shape": "sawtooth"}`, `"a": {"shape": "falling sawtooth"}`},
		{"rising and falling, detuned", `"b": {"cents": 9}, "combine": {"how": "mix"}`,
			`"a": {"shape": "falling sawtooth"}, "b": {"shape": "falling sawtooth", "cents": 9}, "combine": {"how": "mix"}`},
		{"one of a detuned pair falling", `"b": {"cents": 20}, "combine": {"how": "mix"}`,
			`"a": {"shape": "falling sawtooth"}, "b": {"cents": 20}, "combine": {"how": "mix"}`},
		{"start phase", `"a": {"shape": "pulse", "duty": 0.2}`, `"a": {"shape": "pulse", "duty": 0.2, "phase": 0.4}`},
		{"start phase of a detuned pair", `"b": {"cents": 9}, "combine": {"how": "mix"}`,
			`"a": {"phase": 0.3}, "b": {"cents": 9, "phase": 0.8}, "combine": {"how": "mix"}`},
		{"start phase under sync", `"combine": {"how": "sync", "ratio": 2.5}`,
			`"a": {"phase": 0.3}, "b": {"phase": 0.8}, "combine": {"how": "sync", "ratio": 2.5}`},
		{"start phase under ring modulation", `"combine": {"how": "ring", "ratio": 2.4}`,
			`"a": {"phase": 0.3}, "b": {"phase": 0.8}, "combine": {"how": "ring", "ratio": 2.4}`},
		{"phase of the LFO to duty", `"a": {"shape": "pulse"}, "lfo": {"hz": 1.3, "duty": 0.3}`,
			`"a": {"shape": "pulse"}, "lfo": {"hz": 1.3, "duty": 0.3, "phase": 0.6}`},
		{"phase of the LFO to pitch", `"lfo": {"hz": 5, "cents": 40}`, `"lfo": {"hz": 5, "cents": 40, "phase": 0.6}`},
		{"phase of the LFO to level", `"lfo": {"hz": 5, "level": 0.6}`, `"lfo": {"hz": 5, "level": 0.6, "phase": 0.6}`},
		{"overall level", `"a": {"shape": "pulse"}`, `"a": {"shape": "pulse", "level": 0.2}`},
		{"overall level of a mix", `"b": {"cents": 9}, "combine": {"how": "mix"}`,
			`"a": {"level": 0.3}, "b": {"cents": 9, "level": 0.3}, "combine": {"how": "mix"}`},
		{"A and B exchanged", `"a": {"shape": "triangle", "footage": 4}, "b": {"shape": "pulse", "duty": 0.3, "cents": 9}, "combine": {"how": "mix", "balance": 0.3}`,
			`"b": {"shape": "triangle", "footage": 4}, "a": {"shape": "pulse", "duty": 0.3, "cents": 9}, "combine": {"how": "mix", "balance": -0.3}`},
		{"B alone and A alone", `"a": {"shape": "pulse"}`, `"b": {"shape": "pulse"}, "combine": {"how": "mix", "balance": 1}`},
	} {
		for _, note := range []int{36, 57, 81} {
			in := func(d string) synth.Sound { return parse(t, fmt.Sprintf(`"note": %d, %s`, note, d)) }
			a, b := in(c.a), in(c.b)
			got := mark.Prepare(a).Mark(b, 1).Marks
			t.Logf("%-34s note %d: %.2f", c.name, note, got)
			if !(got >= 98) {
				t.Errorf("%s, note %d: %.2f", c.name, note, got)
			}
		}
	}
}
