package credit

import (
	"fmt"

	"partialcredit/synth"
)

// A Pair is two descriptions in the format of a sound, less their version.
type Pair struct{ Name, A, B string }

// Alike are settings that are the same to the ear (hearing.md 1.7, sound.md 7.4).
var Alike = []Pair{
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
	{"sync at ratios up to 1", `"combine": {"how": "sync", "ratio": 0.5}`, `"combine": {"how": "sync", "ratio": 0.9}`},
	{"B of amplitude modulation without depth", `"combine": {"how": "am", "depth": 0, "ratio": 3}`, `"combine": {"how": "am", "depth": 0, "ratio": 1.3}`},
	{"index and level of the modulator", `"a": {"shape": "sine"}, "b": {"shape": "sine", "level": 0.5}, "combine": {"how": "fm", "ratio": 2, "index": 4}`,
		`"a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "ratio": 2, "index": 2}`},
	{"footage and ratio", `"a": {"shape": "triangle"}, "b": {"shape": "sine", "footage": 4}, "combine": {"how": "ring", "ratio": 1.2}`,
		`"a": {"shape": "triangle"}, "b": {"shape": "sine"}, "combine": {"how": "ring", "ratio": 2.4}`},
	{"an LFO that moves nothing", `"lfo": {"hz": 1}`, `"lfo": {"hz": 9, "shape": "square", "fade": 2}`},
	{"a triangle's duty", `"a": {"shape": "triangle", "duty": 0.2}`, `"a": {"shape": "triangle"}`},
}

// At returns the pair as sounds at a note.
func (p Pair) At(note int) (a, b synth.Sound, err error) {
	if a, err = at(note, p.A); err == nil {
		b, err = at(note, p.B)
	}
	return a, b, err
}

func at(note int, description string) (synth.Sound, error) {
	s, err := synth.Parse(fmt.Appendf(nil, `{"version": 1, "note": %d, %s}`, note, description))
	if err != nil {
		err = fmt.Errorf("%s: %w", description, err)
	}
	return s, err
}
