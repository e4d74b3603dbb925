//go:build !js

package main_test

import (
	"context"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"
)

// countFrames counts frames and what is drawn in them, and keeps how long the main thread takes for one
// that draws.
const countFrames = `
window.draws = 0;
window.frames = [];
window.given = 0; // frames
window.still = 0; // of them, since one that drew or that came soon after another
let frameAt = 0;
for (const name of ['drawElements', 'drawArrays']) {
	const draw = WebGL2RenderingContext.prototype[name];
	WebGL2RenderingContext.prototype[name] = function () { draws++; return draw.apply(this, arguments); };
}
const request = requestAnimationFrame;
window.requestAnimationFrame = f => request.call(window, time => {
	const before = draws, from = performance.now();
	given++;
	still = time - frameAt > 100 ? still + 1 : 0;
	frameAt = time;
	f(time);
	if (draws === before) return;
	still = 0;
	frames.push(performance.now() - from);
});`

// work is how long processors have worked, in seconds, since any moment: for the main thread of the
// page, and for all that the browser does, the threads of sound and pictures included.
func (p *Page) work() (mainThread, browser float64) {
	p.t.Helper()
	var processes []*systeminfo.ProcessInfo
	p.do("the page's metrics", chromedp.ActionFunc(func(ctx context.Context) error {
		// The thread's own time: what other programs take does not count.
		if err := performance.Enable().WithTimeDomain(performance.EnableTimeDomainThreadTicks).Do(ctx); err != nil {
			return err
		}
		metrics, err := performance.GetMetrics().Do(ctx)
		for _, m := range metrics {
			if m.Name == "TaskDuration" {
				mainThread = m.Value
			}
		}
		if err != nil {
			return err
		}
		processes, err = systeminfo.GetProcessInfo().Do(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser))
		return err
	}))
	for _, process := range processes {
		browser += process.CPUTime
	}
	return mainThread, browser
}

// draws is how often something was drawn.
func (p *Page) draws() (n int) {
	p.t.Helper()
	p.Eval("draws", &n)
	return n
}

// calms waits until some frames have come one by one that draw nothing: what is made ahead takes its
// time, and the library draws its last picture four times.
func (p *Page) calms() {
	p.t.Helper()
	p.Eval("still = 0", nil)
	p.Wait("still >= 4", limit)
}

// rests checks that nothing is drawn for so long and that hardly a frame is asked for, and tells which
// shares of the time the main thread and all of the browser work. What a page leaves to be done may come
// late, so that there are three tries.
func (p *Page) rests(when string, length time.Duration) {
	p.t.Helper()
	p.calms()
	for try := 1; ; try++ {
		draws, given, from := p.draws(), p.given(), time.Now()
		thread, browser := p.work()
		time.Sleep(length)
		thread2, browser2 := p.work()
		took := time.Since(from).Seconds()
		thread, browser = (thread2-thread)/took, (browser2-browser)/took
		frames := float64(p.given()-given) / time.Since(from).Seconds()
		p.t.Logf("%s the main thread works %.1f %% of the time, all of the browser %.1f %%; %.1f frames a second", when, 100*thread, 100*browser, frames)
		if n := p.draws() - draws; n > 0 {
			p.t.Errorf("%s, %d things were drawn within %v, want none", when, n, length)
		}
		if thread <= mostAtRest && frames <= mostFrames {
			return
		}
		if try == 3 {
			p.t.Errorf("%s, want at most %.0f %% and %v frames a second", when, 100*mostAtRest, mostFrames)
			return
		}
	}
}

const (
	mostFrames = 7.0  // a second at rest: a beat of game/view every 250 ms, and a late one
	mostAtRest = 0.06 // of the main thread's time: a design choice; it was 2 to 3 % while other programs took both cores
)

// given is how many frames the browser has given.
func (p *Page) given() (n int) {
	p.t.Helper()
	p.Eval("given", &n)
	return n
}

// TestNothingIsDrawnWhileNothingChanges visits every kind of page. SOAK_IDLE says how long it looks at
// each.
func TestNothingIsDrawnWhileNothingChanges(t *testing.T) {
	length := soak(t, "SOAK_IDLE", time.Second)
	k := at("beats")
	k.History = []KeptMarks{{20000, "beats", 40}, {20001, "beats", 70}, {20001, "tune", 90}}
	k.Limits = map[string][]KeptLimit{"limit-detune": {{20000, 9, 1.2, true}, {20001, 6, 1.1, true}}}
	l := resume(t, k, Visit{Before: []string{countFrames}})
	rests := func(when string) { l.rests(when, length) }
	rests("after the start")
	draws := l.draws()
	for i := range 10 {
		l.do("moving the mouse", input.DispatchMouseEvent(input.MouseMoved, 300+20*float64(i), 400))
	}
	l.settle()
	if n := l.draws() - draws; n > 0 {
		t.Errorf("moving the mouse alone drew %d things", n)
	}
	l.sounds(func() { l.Press("y") }) // a gesture, which a click by an assistive device is not to the browser
	l.Press("y")
	rests("after a sound")
	l.chooses("hand in", "next")
	rests("on a marked page")
	l.chooses("contents", "go on")
	rests("on a sheet")
	l.chooses("exercise 1", "listen")
	l.sounds(func() { l.chooses("listen", "listen") })
	l.Wait(`document.querySelector('`+widget("listen")+`').textContent.includes("again")`, limit)
	rests("at a question that was heard")
	l.choosesAnswer()
	rests("with an answer")
	l.chooses("contents", "go on")
	l.chooses("exercise 0", "sweep 0")
	l.demonstrates()
	rests("after a demonstration")
	l.chooses("contents", "go on")
	l.chooses("course", "bench")
	rests("on the contents")
	l.chooses("bench", "slow")
	rests("on the bench")
	l.tinkers(0)
	rests("on the bench after slow motion and a sweep")
	l.chooses("course", "progress")
	l.chooses("progress", "view 0")
	rests("with the marks drawn")
	l.chooses("view 1", "export")
	rests("with the confusions drawn")
	l.chooses("view 2", "export")
	rests("with the limits drawn")
	if l.draws() == draws {
		t.Error("nothing was ever drawn: the counter does not work")
	}
}

func TestPicturesMoveWhileItSounds(t *testing.T) {
	l := resume(t, at("beats"), Visit{Screen: Phone, Before: []string{countFrames}})
	l.press("yours")
	for _, throttle := range []float64{1, 4} {
		l.Throttle(throttle)
		l.Wait(`soundTap.counts().sounding > 0`, 10*time.Second)
		l.Eval("frames.length = 0", nil)
		from := time.Now()
		busy, _ := l.work()
		l.Wait("frames.length >= 20", limit)
		busy2, _ := l.work()
		took := time.Since(from)
		share := (busy2 - busy) / took.Seconds()
		var frames []float64
		l.Eval("frames", &frames)
		slices.Sort(frames)
		at := func(q float64) float64 { return frames[int(q*float64(len(frames)-1))] }
		t.Logf("phone, main thread slowed %v times: %.0f frames a second, median %.1f ms of the main thread a frame, nine in ten within %.1f ms, longest %.1f ms; the main thread works %.0f %% of the time",
			throttle, float64(len(frames))/took.Seconds(), at(0.5), at(0.9), at(1), 100*share)
	}
	l.Throttle(1)
	l.press("yours")
}
