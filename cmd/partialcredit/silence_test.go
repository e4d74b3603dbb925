//go:build !js

package main_test

import (
	"fmt"
	"math"
	"testing"
	"time"
)

func TestSilentUntilTheFirstGesture(t *testing.T) {
	l := resume(t, at("shape"), Visit{Autoplay: true}) // else the browser would keep it silent
	l.Wait("soundTap.counts().quanta > 200", 10*time.Second)
	if c := l.SoundCounts(); c.Silent != c.Quanta {
		t.Errorf("%d of %d quanta sounded before anything was touched", c.Quanta-c.Silent, c.Quanta)
	}
	l.Press("y")
	l.Wait("soundTap.counts().sounding > 0", 10*time.Second)
	l.Press("y")
	l.Wait("soundTap.counts().sounding === 0", 10*time.Second)
}

// peak is the highest sample; the channels must be equal.
func (p *Page) peak(length time.Duration) float64 {
	p.t.Helper()
	s := p.Hear(length)
	peak := 0.0
	for i := range s.Left {
		if s.Left[i] != s.Right[i] {
			p.t.Fatalf("sample %d is %v at the left and %v at the right", i, s.Left[i], s.Right[i])
		}
		peak = math.Max(peak, math.Abs(float64(s.Left[i])))
	}
	return peak
}

func TestVolumeStartsLowAndIsKept(t *testing.T) {
	// Nothing is kept on the device yet.
	l := &learner{Page: Open(t, Visit{}), keyboard: true}
	l.Started()
	l.open("sheet 0", "exercise 0") // a demonstration
	l.Press("y")
	l.Wait(`document.querySelector('`+widget("comfortable")+`')`, 5*time.Second)
	if got := l.place("volume"); got > 0.5 {
		t.Errorf("the volume starts at %.0f %% of its ruler", 100*got)
	}
	l.Wait("soundTap.counts().sounding > 20", 10*time.Second)
	first := l.peak(700 * time.Millisecond)
	// A quarter of the most, -6 dBFS: 12 dB below it.
	if first <= 0 || first > 0.125 {
		t.Errorf("at first the peak is %.3f of full scale, want a low one", first)
	}
	l.tabTo("volume")
	l.Press("Home")
	l.Press("PageUp")
	low := l.place("volume")
	l.Press("Escape")
	l.Wait(fmt.Sprintf(`Math.abs(JSON.parse(localStorage.getItem("partialcredit.progress")).volume - %v) < 0.01`, low), 5*time.Second)
	l.Wait("soundTap.counts().sounding > 20", 10*time.Second)
	second := l.peak(700 * time.Millisecond)
	if second <= 0 || second > 0.9*first {
		t.Errorf("with a lower volume the peak went from %.4f to %.4f", first, second)
	}
	l.Reload()
	l.Started()
	l.Press("y")
	l.Wait("soundTap.counts().sounding > 20", 10*time.Second)
	if third := l.peak(700 * time.Millisecond); math.Abs(third-second) > 0.1*second {
		t.Errorf("after loading again the peak is %.4f, before %.4f", third, second)
	}
	var hint bool
	l.Eval(`document.querySelector('`+widget("comfortable")+`') !== null`, &hint)
	if hint {
		t.Error("the hint on the volume comes a second time")
	}
	t.Logf("peaks: %.1f dBFS at first, %.1f dBFS with the volume at %.0f %%", 20*math.Log10(first), 20*math.Log10(second), 100*low)
}

func TestHiddenPageIsSilentAndComesBack(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	l.Press("y")
	l.Wait("soundTap.counts().sounding > 20", 10*time.Second)
	l.Eval(setHidden+"(true)", nil)
	l.waitAudio("suspended")
	time.Sleep(100 * time.Millisecond) // blocks on their way to the recorder
	before := l.SoundCounts().Quanta
	time.Sleep(500 * time.Millisecond)
	if after := l.SoundCounts().Quanta; after != before {
		t.Errorf("the sound went on by %d quanta while the page was hidden", after-before)
	}
	l.Eval(setHidden+"(false)", nil)
	l.waitAudio("running")
	l.ForgetSound()
	l.Wait("soundTap.counts().quanta > 100 && soundTap.counts().sounding > 20", 10*time.Second)
	if l.attribute("yours", "aria-pressed") != "true" {
		t.Error("coming back, the button says that nothing sounds")
	}
}
