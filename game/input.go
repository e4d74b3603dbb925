package game

import (
	"time"

	"partialcredit/game/ui"
)

// An Input is everything that reaches the game in one tick.
type Input struct {
	Now    time.Duration // since the program started
	W, H   float64       // of the screen, in CSS pixels
	Events []ui.Event
	Heard  Heard
	Audio  Audio
}

// Heard is the newest sound that has reached the ear.
type Heard struct {
	Samples, Cycle []float32 // the newest last
	Item           int       // which item of the program sounds; -1 none
}

// Audio is the state of the device that plays.
type Audio int

// The states of the device.
const (
	Waiting Audio = iota // for the first touch, which the browser wants
	Running
	Suspended
	NoAudio
)
