package game

import (
	"time"

	"partialcredit/game/ui"
)

// An Input is everything that reaches the game in one tick.
type Input struct {
	Now    time.Duration // since the program started
	Date   time.Time     // by the clock and in the place of the device
	Random uint64        // another number every tick
	W, H   float64       // of the screen, in CSS pixels
	Events []ui.Event
	Heard  Heard
	Audio  Audio
	Update bool // a new version of the program has arrived

	Address  string // of the page, without a fragment: what links begin with
	CanShare bool   // the system has something to share with
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

// today is the number of the day since 1970-01-01 where the device is.
func (g *Game) today() int {
	d := g.in.Date
	return int(time.Date(d.Year(), d.Month(), d.Day(), 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60))
}

// date is the day of a number.
func date(day int) time.Time { return time.Unix(int64(day)*24*60*60, 0).UTC() }
