//go:build wasip1

// Engine is the sound of the app as a WebAssembly module of its own, for the
// thread of the audio device: web/worklet.js calls it for every quantum. It is
// built with -buildmode=c-shared and has no main to run.
package main

import (
	"runtime"
	"unsafe"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// rate is what web/audio.js makes the audio context with.
const rate = 48000

var theEngine = engine.New(synth.NewPlayer(rate))

func main() {}

// inbox is where the next message of n numbers, 64-bit floats, is to be put.
//
//go:wasmexport inbox
func inbox(n int32) unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(theEngine.Inbox(int(n)))) }

// take obeys the message in the inbox.
//
//go:wasmexport take
func take() { theEngine.Take() }

// render makes the quantum at out. It returns whether the block is full.
//
//go:wasmexport render
func render(frame float64) bool { return theEngine.Render(int64(frame)) }

// out is where the 32-bit samples for both channels are.
//
//go:wasmexport out
func out() unsafe.Pointer { return unsafe.Pointer(theEngine.Out()) }

// block is where the block is that goes back, blockSize how many bytes it has.
//
//go:wasmexport block
func block() unsafe.Pointer { return unsafe.Pointer(theEngine.Block()) }

//go:wasmexport blockSize
func blockSize() int32 { return int32(unsafe.Sizeof(engine.Block{})) }

// mallocs is how often memory was allocated so far: for tests.
//
//go:wasmexport mallocs
func mallocs() float64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.Mallocs)
}
