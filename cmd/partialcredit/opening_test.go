//go:build !js

package main_test

import (
	"testing"
	"time"
)

// TestTimeToTheFirstSound logs how soon after opening a press is answered with sound.
func TestTimeToTheFirstSound(t *testing.T) {
	const watch = `addEventListener('keydown', e => { window.pressedAt = e.timeStamp; }, true);`
	l := &learner{Page: Open(t, Visit{Before: []string{at("beats").script(), watch}}), keyboard: true}
	started := l.Started()
	l.Press("t")
	l.Wait("soundTap.counts().firstHeard > 0", 10*time.Second)
	var pressed float64
	l.Eval("pressedAt", &pressed)
	wait := l.SoundCounts().FirstHeard - pressed
	t.Logf("from opening to the first sound possible %v; the first press sounds after %.0f ms more, the start of the audio device included",
		started.Round(time.Millisecond), wait)
	// Far above what it takes anywhere: only a sound that hangs is an error here.
	if wait < 0 || wait > 3000 {
		t.Errorf("the first press sounds after %.0f ms", wait)
	}
}
