package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// How far apart two settings lie, by hand from the step sizes: one step of 5
// cents, 4 % of the narrower part of a pulse, 1 dB, and so on.
func TestApart(t *testing.T) {
	const decibel = 0.122018 // 10^(1/20) - 1, the step of a level of 1
	for _, c := range []struct {
		name         string
		target, hand string
		want         float64
	}{
		{"20 cents", `"note": 57`, `"a": {"cents": 20}`, 4},
		{"duty", `"a": {"shape": "pulse", "duty": 0.1}`, `"a": {"shape": "pulse", "duty": 0.2}`, math.Ln2 / 0.04},
		{"duty on the other side of a half", `"a": {"shape": "pulse", "duty": 0.1}`, `"a": {"shape": "pulse", "duty": 0.8}`, math.Ln2 / 0.04},
		{"the duty of a triangle", `"a": {"shape": "triangle"}`, `"a": {"shape": "triangle", "duty": 0.1}`, 0},
		{"another shape", `"note": 57`, `"a": {"shape": "sine"}`, 20},
		{"a falling sawtooth", `"note": 57`, `"a": {"shape": "falling sawtooth"}`, 0},
		{"independent differences", `"a": {"shape": "pulse", "duty": 0.1}`, `"a": {"shape": "pulse", "duty": 0.2, "cents": 20}`,
			math.Hypot(4, math.Ln2/0.04)},
		{"the same in both oscillators", `"a": {"shape": "pulse", "duty": 0.1}, "b": {"shape": "pulse", "duty": 0.1, "footage": 4}, "combine": {"how": "mix"}`,
			`"a": {"shape": "pulse", "duty": 0.2}, "b": {"shape": "pulse", "duty": 0.2, "footage": 4}, "combine": {"how": "mix"}`, math.Ln2 / 0.04},
		{"level of one alone", `"note": 57`, `"a": {"level": 0.1}`, 0},
		{"level of B in a mix", `"b": {"footage": 4}, "combine": {"how": "mix"}`, `"b": {"footage": 4, "level": 0.5}, "combine": {"how": "mix"}`, math.Ln2 / decibel},
		{"balance through the middle", `"b": {"footage": 4}, "combine": {"how": "mix", "balance": -0.5}`, `"b": {"footage": 4}, "combine": {"how": "mix", "balance": 0.5}`, 2 * math.Ln2 / decibel},
		{"A and B exchanged", `"a": {"shape": "pulse"}, "b": {"cents": 9}, "combine": {"how": "mix", "balance": 0.3}`,
			`"b": {"shape": "pulse"}, "a": {"cents": 9}, "combine": {"how": "mix", "balance": -0.3}`, 0},
		// 20 cents up or down beat alike; the mean of the two tones is 20 cents off.
		{"detuned the other way", `"b": {"cents": 20}, "combine": {"how": "mix"}`, `"b": {"cents": -20}, "combine": {"how": "mix"}`, 4},
		{"both transposed", `"b": {"cents": 10}, "combine": {"how": "mix"}`, `"a": {"cents": 20}, "b": {"cents": 30}, "combine": {"how": "mix"}`, 4},
		{"the index or the level of the modulator", `"combine": {"how": "fm", "index": 4}, "b": {"level": 0.5}`, `"combine": {"how": "fm", "index": 2}`, 0},
		{"an octave of B as footage or as ratio", `"combine": {"how": "ring", "ratio": 3}`, `"b": {"footage": 4}, "combine": {"how": "ring", "ratio": 1.5}`, 0},
		{"synced below its master", `"combine": {"how": "sync", "ratio": 0.4}`, `"combine": {"how": "sync", "ratio": 0.8}`, 0},
		{"an LFO that moves nothing", `"note": 57`, `"lfo": {"hz": 1, "shape": "square", "fade": 1}`, 0},
		{"a mix of A alone", `"note": 57`, `"b": {"shape": "sine"}, "combine": {"how": "mix", "balance": -1}`, 0},
		{"a mix of B alone", `"a": {"shape": "pulse"}`, `"b": {"shape": "pulse"}, "combine": {"how": "mix", "balance": 1}`, 0},
		{"modulation without depth", `"note": 57`, `"combine": {"how": "am", "depth": 0, "ratio": 3}`, 0},
		{"sync and A alone", `"note": 57`, `"combine": {"how": "sync"}`, 20},
	} {
		got := mark.Apart(parse(t, c.target), parse(t, c.hand))
		near(t, c.name, got, c.want, 0.01*c.want+1e-6)
	}
}

// Away from a target by n steps on one control is n steps apart, give or take
// what a detuned oscillator does to the pitch of the whole.
func TestAwayIsApart(t *testing.T) {
	s := parse(t, `"a": {"shape": "pulse", "duty": 0.2}, "b": {"cents": 12, "footage": 8}, "combine": {"how": "mix", "balance": -0.2},
		"lfo": {"hz": 3, "duty": 0.1, "cents": 20, "level": 0.3, "fade": 0.5}, "envelope": {"a": 7, "b": 7}, "amplitude": {"sustain": 0.5}`)
	for _, f := range synth.Fields() {
		if len(f.Choices) > 0 || math.IsInf(mark.Step(f.Name, s), 0) {
			continue
		}
		switch f.Name {
		case "note", "b.duty", "a.phase", "b.phase", "lfo.phase", "combine.ratio", "combine.depth", "combine.index", "envelope.depth":
			continue // whole numbers only; not heard here
		}
		v, ok := mark.Away(f.Name, s, 3, f.Max)
		if !ok {
			v, ok = mark.Away(f.Name, s, 3, f.Min)
		}
		if !ok {
			t.Errorf("%s: there are no 3 steps either way", f.Name)
			continue
		}
		y := s
		f.Set(&y, v)
		near(t, f.Name, mark.Apart(s, y), 3, 0.6)
	}
	if _, ok := mark.Away("a.duty", s, 1000, 0.5); ok {
		t.Error("a thousand steps of duty")
	}
}

// Thresholds twice and four times as large forgive twice and four times the
// error, and change nothing else.
func TestStrictness(t *testing.T) {
	r := mark.Prepare(parse(t, `"a": {"shape": "pulse", "duty": 0.2}`))
	var marks []float64
	for _, c := range []struct{ duty, times float64 }{{0.22, 1}, {0.2 * math.Pow(1.1, 2), 2}, {0.2 * math.Pow(1.1, 4), 4}} {
		yours := parse(t, `"a": {"shape": "pulse"}`)
		yours.A.Duty = c.duty
		got := r.Mark(yours, c.times)
		marks = append(marks, got.Marks)
		if again := r.Mark(yours, 1); got.Steps != again.Steps || len(got.Reasons) != len(again.Reasons) || len(got.Partials) != len(again.Partials) {
			t.Errorf("duty %v: more than the marks changes with strictness", c.duty)
		}
	}
	near(t, "twice the error", marks[1], marks[0], 1)
	near(t, "four times the error", marks[2], marks[0], 1)
}

// Marks that are made anew are those that were shown, to the last bit: where sounds differ in many
// things these are always added up in the same order.
func TestApartIsTheSameAgain(t *testing.T) {
	a := parse(t, `"combine": {"how": "sync", "ratio": 2.5}`)
	b := parse(t, `"a": {"shape": "pulse", "duty": 0.4}`)
	first := mark.Apart(a, b)
	for range 200 {
		if again := mark.Apart(a, b); again != first {
			t.Fatalf("%v steps apart, and again %v", first, again)
		}
	}
}
