//go:build !js

package main_test

import (
	"math"
	"testing"
	"time"
)

// makeTone plays 440 Hz on the left only through a context made as the Go side makes its own.
const makeTone = `(() => {
	window.made = new AudioContext({ sampleRate: 48000 });
	const tone = new OscillatorNode(made, { frequency: 440 }), sides = new ChannelMergerNode(made, { numberOfInputs: 2 });
	tone.connect(sides, 0, 0);
	sides.connect(made.destination);
	tone.start();
	window.states = [];
	made.addEventListener('statechange', () => states.push(made.state));
})()`

// setHidden pretends that the page went to the background or came back.
const setHidden = `(hidden => {
	Object.defineProperty(document, 'hidden', { configurable: true, get: () => hidden });
	document.dispatchEvent(new Event('visibilitychange'));
})`

func (p *Page) waitAudio(state string) {
	p.t.Helper()
	p.Wait(`partialCredit.audio.state() === "`+state+`"`, 10*time.Second)
}

func TestAudioWakesAndSleeps(t *testing.T) {
	wakes := []struct {
		name   string
		screen Screen
		wake   func(*Page)
	}{
		{"mouse", Desktop, func(p *Page) { p.Click(Point{200, 200}) }},
		{"touch", Phone, func(p *Page) { p.Tap(Point{200, 200}) }},
		{"keyboard", Desktop, func(p *Page) { p.Press("t") }},
	}
	for _, tt := range wakes {
		t.Run(tt.name, func(t *testing.T) {
			p := Open(t, Visit{Screen: tt.screen})
			p.Started()
			p.waitAudio("suspended") // the app's own
			p.Eval(makeTone, nil)
			p.waitAudio("suspended")
			p.Eval(setHidden+"(true)", nil)
			p.Eval(setHidden+"(false)", nil)
			time.Sleep(200 * time.Millisecond)
			p.waitAudio("suspended")

			tt.wake(p)
			p.waitAudio("running")
			p.Eval(setHidden+"(true)", nil)
			p.waitAudio("suspended")
			time.Sleep(200 * time.Millisecond)
			var states string
			p.Eval(`states.join(" ")`, &states)
			if want := "running suspended"; states != want {
				t.Errorf("the states until hidden were %q, want %q: going to sleep must not wake it", states, want)
			}
			p.Eval(setHidden+"(false)", nil)
			p.waitAudio("running")
			p.Eval("made.suspend()", nil) // as a system does that gives the device to another program
			p.waitAudio("running")
			var latency float64
			p.Eval("partialCredit.audio.latency()", &latency)
			if latency <= 0 || latency > 0.5 {
				t.Errorf("latency %.3f s", latency)
			}
			t.Logf("the browser says %.0f ms from samples to ear", 1000*latency)
		})
	}
}

func TestAudioContextIsAskedForLowLatency(t *testing.T) {
	p := Open(t, Visit{Before: []string{`
		const Native = window.AudioContext;
		window.AudioContext = class extends Native { constructor(o) { super(o); window.asked = o; } };
		Object.defineProperty(navigator, 'audioSession', { value: { type: 'auto' } });`}})
	p.Started()
	var asked struct {
		LatencyHint string
		SampleRate  float64
	}
	p.Eval("asked", &asked)
	if asked.LatencyHint != "interactive" || asked.SampleRate != 48000 {
		t.Errorf("the browser was asked for %+v", asked)
	}
	var session string
	p.Eval("navigator.audioSession.type", &session)
	if session != "playback" {
		t.Errorf("the audio session is %q, want playback", session)
	}
}

// The recorder of this harness must itself be believable.
func TestRecorderHearsWhatIsPlayed(t *testing.T) {
	p := Open(t, Visit{Autoplay: true})
	p.Started()
	p.Eval(makeTone, nil)
	p.waitAudio("running")
	s := p.Hear(time.Second)
	if s.Rate != 48000 || len(s.Left) != 48000 || len(s.Right) != 48000 {
		t.Fatalf("heard %d and %d frames at %v Hz, want one second at 48000 Hz", len(s.Left), len(s.Right), s.Rate)
	}
	crossings, peak, right := 0, 0.0, 0.0
	for i, v := range s.Left {
		if i > 0 && s.Left[i-1] < 0 && v >= 0 {
			crossings++
		}
		peak = math.Max(peak, math.Abs(float64(v)))
		right = math.Max(right, math.Abs(float64(s.Right[i])))
	}
	if crossings < 439 || crossings > 441 || math.Abs(peak-1) > 0.01 {
		t.Errorf("left: %d periods in a second with peak %.3f, want 440 and 1", crossings, peak)
	}
	if right != 0 {
		t.Errorf("right: peak %.3f, want silence", right)
	}
	if c := p.SoundCounts(); c.Silent > 0 || c.Quanta < 370 {
		t.Errorf("%+v: want about 375 quanta and none silent", c)
	}
}

func TestGesturesWhileTheAudioWakes(t *testing.T) {
	// The console errors of a page fail its test.
	p := Open(t, Visit{Before: []string{`
		const resume = AudioContext.prototype.resume;
		AudioContext.prototype.resume = function () {
			return new Promise(done => setTimeout(done, 500)).then(() => resume.call(this));
		};`}})
	p.Started()
	for range 3 {
		p.Press("y")
	}
	p.waitAudio("running")
	time.Sleep(700 * time.Millisecond) // the answers to the later gestures
	p.waitAudio("running")
}
