//go:build !js

package main_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"partialcredit/synth"
	"partialcredit/synth/wav"
)

// browserWithInput has an input into which a flat pulse is played once, and allows it.
var browserWithInput = sync.OnceValues(func() (context.Context, error) {
	folder, err := os.MkdirTemp("", "partialcredit-input-")
	if err != nil {
		return nil, err
	}
	later(func() { os.RemoveAll(folder) })
	note := synth.Default()
	note.A.Shape, note.A.Duty, note.A.Cents, note.Seconds = synth.Pulse, 0.2, -12, 1.5
	const rate = 48000
	s := &wav.Sound{Rate: rate, Channels: 1, Samples: append(make([]float32, rate/2), synth.Render(note, rate)...)}
	s.Samples = append(s.Samples, make([]float32, rate/2)...)
	name := filepath.Join(folder, "input.wav")
	file, err := os.Create(name)
	if err != nil {
		return nil, err
	}
	if err := wav.Write(file, s, wav.PCM16); err != nil {
		return nil, err
	}
	if err := file.Close(); err != nil {
		return nil, err
	}
	return startBrowser("document-user-activation-required",
		chromedp.Flag("use-fake-device-for-media-stream", true),
		chromedp.Flag("use-fake-ui-for-media-stream", true),
		chromedp.Flag("use-file-for-fake-audio-capture", name+"%noloop"))
})

// watchInput keeps what was asked of the browser's input and what came.
const watchInput = `{
	const ask = MediaDevices.prototype.getUserMedia;
	MediaDevices.prototype.getUserMedia = function (what) {
		window.askedFor = JSON.stringify(what);
		return ask.call(this, what).then(stream => { window.inputTrack = stream.getTracks()[0]; return stream; });
	};
}`

// What comes in is recorded, its note found, heard and matched; the device goes off.
func TestARecordingIsMadeAndMatched(t *testing.T) {
	l := &learner{Page: Open(t, Visit{In: browserWithInput, Before: []string{watchInput, watchMarks}})}
	l.Started()
	l.press("recording")
	l.shows("record")
	l.Screenshot("take.png")
	l.press("record")
	l.Wait(`document.querySelector('`+widget("stop recording")+`') && !document.querySelector('`+widget("stop recording")+`').disabled && document.querySelector('`+widget("stop recording")+`').ariaDisabled !== "true"`, 10*time.Second)
	time.Sleep(1500 * time.Millisecond)
	l.Screenshot("take-recording.png")
	var asked, state string
	l.Eval("askedFor + inputTrack.readyState", &asked)
	for _, want := range []string{`"echoCancellation":false`, `"noiseSuppression":false`, `"autoGainControl":false`, `"video":false`, "live"} {
		if !strings.Contains(asked, want) {
			t.Errorf("the browser was asked for %s", asked)
		}
	}
	time.Sleep(1500 * time.Millisecond)
	l.press("stop recording")
	l.shows("beside")
	if got := l.heading(); !strings.HasPrefix(got, "A3 -12 cents") {
		t.Errorf("found %q", got)
	}
	if l.Eval("inputTrack.readyState", &state); state != "ended" {
		t.Errorf("afterwards the input is %s", state)
	}
	l.press("yours")
	l.Wait(`document.querySelector('`+widget("comfortable")+`')`, 5*time.Second)
	l.press("comfortable")
	if peak := l.peak(time.Second); peak < 0.01 || peak > 0.25 { // the volume at first: a quarter of the most
		t.Errorf("the recording is played with a peak of %v", peak)
	}
	l.Screenshot("take-found.png")
	l.press("beside")
	l.shows("mark take")
	l.Wait("soundTap.counts().sounding === 0", 5*time.Second)
	l.Screenshot("take-beside.png")
	l.Press("h")
	l.Wait("markedAfter", limit)
	var took float64
	l.Eval("markedAfter", &took)
	t.Logf("%.0f ms from the key to the marks, the page standing 100 ms before", took)
	l.shows("set on")
	l.Screenshot("take-marked.png")
}

// What keeps the input from being had has a name each.
func TestAnInputThatCannotBeHad(t *testing.T) {
	p := Open(t, Visit{})
	for _, tt := range []struct{ before, want string }{
		{`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", "NotFoundError"))`, "failed none"},
		{`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", "NotAllowedError"))`, "failed denied"},
		{`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", "NotReadableError"))`, "failed busy"},
		{`navigator.mediaDevices.getUserMedia = () => new Promise(() => {}); setTimeout(() => {
			Object.defineProperty(document, "hidden", { get: () => true, configurable: true }); document.dispatchEvent(new Event("visibilitychange")); delete document.hidden; }, 50)`, "failed hidden"},
		{`Object.defineProperty(Navigator.prototype, "mediaDevices", { get() { return undefined; } })`, "failed insecure"},
	} {
		p.Eval(tt.before+"; undefined", nil)
		var got string
		p.Eval(`new Promise(done => partialCredit.record.start(10, () => {}, () => done("recorded"), what => done("failed " + what)))`, &got)
		if got != tt.want {
			t.Errorf("%s: %s, want %s", tt.before, got, tt.want)
		}
	}
}
