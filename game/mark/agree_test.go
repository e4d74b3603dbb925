package mark_test

import (
	"math"
	"testing"

	"partialcredit/game/mark"
)

// The marks are the same on every platform: within 0.1 of the figures that
// the native build on linux/amd64 gave (go test -run TestMarksAgree -v prints
// them). The same test runs under js/wasm. Real changes of the method change
// the figures: then they are written anew.
func TestMarksAgree(t *testing.T) {
	for _, c := range []struct {
		target, yours string
		want          float64
	}{
		{`"a": {"shape": "pulse", "duty": 0.25}`, `"a": {"shape": "pulse", "duty": 0.3}`, 49.828},
		{`"note": 45, "a": {"shape": "pulse"}, "lfo": {"hz": 1.5, "duty": 0.35}`, `"note": 45, "a": {"shape": "pulse"}, "lfo": {"hz": 2, "duty": 0.35}`, 63.087},
		{`"lfo": {"shape": "sine", "hz": 5.5, "cents": 60}`, `"lfo": {"shape": "sine", "hz": 5.5, "cents": 85}`, 77.660},
		{`"b": {"cents": 14}, "combine": {"how": "mix"}`, `"b": {"cents": 18}, "combine": {"how": "mix"}`, 66.306},
		{`"combine": {"how": "ring", "ratio": 2.4}`, `"combine": {"how": "ring", "ratio": 2.43}`, 13.128},
		{`"a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "index": 3}`, `"a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "index": 3.3}`, 62.429},
		{`"note": 45, "combine": {"how": "sync", "ratio": 2.5}`, `"note": 45, "combine": {"how": "sync", "ratio": 2.6}`, 55.366},
		{`"a": {"shape": "sine"}, "envelope": {"a": 28, "seconds": 0.06}, "note": 36`, `"a": {"shape": "sine"}, "envelope": {"a": 20, "seconds": 0.06}, "note": 36`, 93.026},
	} {
		got := mark.Prepare(parse(t, c.target)).Mark(parse(t, c.yours), 1).Marks
		t.Logf("%s | %s: %.3f", c.target, c.yours, got)
		if !(math.Abs(got-c.want) <= 0.1) {
			t.Errorf("%s | %s: %.3f, want %.3f", c.target, c.yours, got, c.want)
		}
	}
}
