// Package speaker plays programs on the device, and knows which of its samples
// the ear hears at this moment. There are two ways: an engine in the thread of
// the audio device and, where that cannot be had, Oto. It alone imports Oto, and
// shows nothing of it.
package speaker

import (
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// Rate is the sample rate of everything that is played, in hertz. The browser
// converts where the device has another.
const Rate = 48000

// A Speaker plays programs.
//
//  1. What reaches the ear are the samples that a [synth.Player] gives for the
//     programs, times the volume: the same in both channels, none left out and
//     none twice.
//  2. Play says what should sound from now on. The program that is playing
//     already changes nothing.
//  3. The volume is 0 to 1, linear; anything else is brought there, NaN to 0.
//     It moves by at most 1 in 20 ms, and is 0 until it is first set.
//  4. Heard fills the window with what has reached the ear, before the volume
//     is applied: in order, the newest last, zeros in front where there is
//     nothing. It never gives what has not reached the ear yet, and never goes
//     back.
//  5. While the state is not Running nothing advances; afterwards it goes on
//     with the sample after the last. Only where the device breaks down and
//     another way or another device takes over, the program begins anew.
//  6. Item and Seconds belong to the last sample of the window, give or take
//     128 samples; Item is -1 in silence and while nothing was heard.
//  7. No method waits, and Heard allocates nothing. They belong to one
//     goroutine.
//  8. In the state Failed, and only there, Err is a sentence for the learner.
type Speaker interface {
	Play(p synth.Program)
	SetVolume(v float64)
	Heard(w *Window)
	State() State
	Err() error
}

// A Window is a stretch of sound that has reached the ear. Its reader makes the
// slices, of equal length.
type Window struct {
	Samples []float32 // the newest last
	Cycle   []float32 // beside each sample the phase that triggers an oscilloscope
	Item    int       // which item of the program sounds at the end; -1 none
	Seconds float64   // for how long it has
}

// clear makes w what it is before anything was heard.
func (w *Window) clear() {
	clear(w.Samples)
	clear(w.Cycle)
	w.Item, w.Seconds = -1, 0
}

// A State says whether there is sound to be had.
type State int

// The states.
const (
	Waiting   State = iota // for the first gesture, without which browsers are silent
	Running                //
	Suspended              // the page is hidden, or the system has taken the device
	Failed                 // there will be no sound
)

// A Device is what the page knows of its audio device.
type Device interface {
	Now() time.Duration    // since any moment
	AudioState() string    // "none", "suspended", "running", "interrupted" or "closed" (W3C Web Audio)
	AudioTime() float64    // seconds of sound that the device has had computed
	AudioLatency() float64 // seconds from the end of our part of the way to the ear

	// OnPull has f called whenever the device is about to take samples from Oto, as far as the page can
	// tell. What f wakes has run when the device takes them.
	OnPull(f func())
}

// A Line leads to an engine in the thread of the audio device, and back. None
// of its methods waits.
type Line interface {
	// EngineState is "loading", then "ready" or, for good, "failed".
	EngineState() string

	// Send takes a message, see package engine, to the engine. One that takes its place gets the last
	// message of each kind.
	Send(message []float64)

	// Receive takes the next block that has come back, in order; ok is false where there is none. What a
	// page that stands still for over a second does not take may be lost.
	Receive(b *engine.Block) (ok bool)
}

// A Page has both.
type Page interface {
	Device
	Line
}
