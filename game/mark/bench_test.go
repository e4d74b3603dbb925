package mark_test

import (
	"testing"

	"partialcredit/game/mark"
)

// BenchmarkHandIn is the time from a hand-in to its marks and reasons, for
// every exercise of the built-in sheet, from the learner's start. In the
// browser it must stay under 300 ms (the brief):
//
//	GOOS=js GOARCH=wasm go test -exec="$(go env GOROOT)/lib/wasm/go_js_wasm_exec" -run XXX -bench HandIn ./game/mark
func BenchmarkHandIn(b *testing.B) {
	for _, e := range mark.Swept() {
		b.Run(e.ID, func(b *testing.B) {
			r, yours := mark.Prepare(e.Target), e.Start()
			for b.Loop() {
				r.Mark(yours, 1)
			}
		})
	}
}

// BenchmarkPrepareAndHandIn is the same with the preparation of the target,
// which the app does before: both renders included, wanted under 120 ms in
// WebAssembly for sounds of up to 2 s (issue 3).
func BenchmarkPrepareAndHandIn(b *testing.B) {
	for _, e := range mark.Swept() {
		b.Run(e.ID, func(b *testing.B) {
			yours := e.Start()
			for b.Loop() {
				mark.Prepare(e.Target).Mark(yours, 1)
			}
		})
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
