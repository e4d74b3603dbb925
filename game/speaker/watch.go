package speaker

import (
	"time"

	"partialcredit/game/words"
)

// A watch tells the states of a device apart.
type watch struct {
	ran    bool
	silent time.Duration // for how long the device has run without pulling
	last   time.Duration // the last look
	err    error
}

// patience is how long a running device may pull nothing before it counts as
// failed, and most is how much of it one look may add: a program that stood
// still itself says nothing about the device. Judgement.
const (
	patience = 3 * time.Second
	most     = 100 * time.Millisecond
)

var (
	errClosed = words.Say("This browser has shut down the sound of this page. Reload the page to hear something again.")
	errNoPull = words.Say("This browser takes no sound from this page. Reload the page, or open it in another browser that is up to date.")
)

// pulled notes that the device has taken samples.
func (w *watch) pulled() { w.ran, w.silent, w.err = true, 0, nil }

// state makes of the device's own state that of the speaker.
func (w *watch) state(now time.Duration, device string) State {
	passed := min(now-w.last, most)
	w.last = now
	switch {
	case device == "closed":
		w.err = errClosed
		return Failed
	case device != "running":
		w.silent, w.err = 0, nil
		if w.ran {
			return Suspended
		}
		return Waiting
	}
	w.ran = true
	if w.silent += passed; w.silent >= patience {
		w.err = errNoPull
		return Failed
	}
	return Running
}
