package engine

// A Block is a stretch of what was played, 21 ms at 48 kHz: fewer than 60 come
// in a second. It may cross as its own bytes: its memory is laid out alike in
// every WebAssembly that Go makes.
type Block [8]Played

// Played is one quantum.
type Played struct {
	Frame   int64            // of its first sample
	Item    int64            // which sounds at its end; -1 none
	Seconds float64          // for how long it has
	Samples [Quantum]float32 // before the volume
	Cycle   [Quantum]float32 // beside each the phase that triggers an oscilloscope
}

// rests is after how many silent quanta no more blocks go back, until something
// sounds again: 2.7 s, longer than anybody looks back.
const rests = 1000
