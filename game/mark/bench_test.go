package mark_test

import (
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
)

// BenchmarkHandIn is the time from a hand-in to its marks and reasons, for
// every exercise of the built-in sheet, from the learner's start. In the
// browser it must stay under 300 ms (the brief):
//
//	GOOS=js GOARCH=wasm go test -exec="$(go env GOROOT)/lib/wasm/go_js_wasm_exec" -run XXX -bench HandIn ./game/mark
func BenchmarkHandIn(b *testing.B) {
	for _, e := range sheet.Builtin().Exercises {
		b.Run(e.ID, func(b *testing.B) {
			r, yours := mark.Prepare(e.Target), e.Start()
			for b.Loop() {
				r.Mark(yours, 1)
			}
		})
	}
}

// BenchmarkPrepare is what opening an exercise costs.
func BenchmarkPrepare(b *testing.B) {
	target := sheet.Builtin().Exercises[0].Target
	for b.Loop() {
		mark.Prepare(target)
	}
}

// BenchmarkPartials is what one frame's lines cost.
func BenchmarkPartials(b *testing.B) {
	x := make([]float32, 8192)
	for i := range x {
		x[i] = float32(i%200)/100 - 1
	}
	for b.Loop() {
		mark.Partials(x, 48000, 240)
	}
}
