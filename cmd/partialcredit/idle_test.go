//go:build !js

package main_test

import (
	"context"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// countFrames counts what is drawn, and keeps how long the main thread takes for a frame that draws.
const countFrames = `
window.draws = 0;
window.frames = [];
for (const name of ['drawElements', 'drawArrays']) {
	const draw = WebGL2RenderingContext.prototype[name];
	WebGL2RenderingContext.prototype[name] = function () { draws++; return draw.apply(this, arguments); };
}
const request = requestAnimationFrame;
window.requestAnimationFrame = f => request.call(window, time => {
	const before = draws, from = performance.now();
	f(time);
	if (draws > before) frames.push(performance.now() - from);
});`

// busy is how long the main thread has worked, in seconds, since any moment.
func (p *Page) busy() float64 {
	p.t.Helper()
	var seconds float64
	p.do("the page's metrics", chromedp.ActionFunc(func(ctx context.Context) error {
		if err := performance.Enable().Do(ctx); err != nil {
			return err
		}
		metrics, err := performance.GetMetrics().Do(ctx)
		for _, m := range metrics {
			if m.Name == "TaskDuration" {
				seconds = m.Value
			}
		}
		return err
	}))
	return seconds
}

// draws is how often something was drawn.
func (p *Page) draws() (n int) {
	p.t.Helper()
	p.Eval("draws", &n)
	return n
}

// calms waits until nothing has been drawn for half a second: what is drawn ahead takes its time.
func (p *Page) calms() {
	p.t.Helper()
	p.Wait(`(() => {
		if (window.calmAt !== draws) { calmAt = draws; window.calmSince = performance.now(); }
		return performance.now() - calmSince > 500;
	})()`, 20*time.Second)
}

// rests checks that nothing is drawn for so long, and returns the share of the time that the main
// thread works.
func (p *Page) rests(when string, length time.Duration) float64 {
	p.t.Helper()
	(&learner{Page: p}).settle() // what was done last is drawn, however busy the machine
	p.Eval("var calmAt = -1", nil)
	p.calms()
	draws, busy, from := p.draws(), p.busy(), time.Now()
	time.Sleep(length)
	share := (p.busy() - busy) / time.Since(from).Seconds()
	if n := p.draws() - draws; n > 0 {
		p.t.Errorf("%s, %d things were drawn within %v, want none", when, n, length)
	}
	// Alone on two cores it is 2 %; other programs make it look more.
	if share > 0.5 {
		p.t.Errorf("%s, the main thread works %.0f %% of the time", when, 100*share)
	}
	return share
}

func TestNothingIsDrawnWhileNothingChanges(t *testing.T) {
	l := resume(t, at("beats"), Visit{Before: []string{countFrames}})
	t.Logf("at rest the main thread works %.1f %% of the time", 100*l.rests("after the start", 2*time.Second))
	draws := l.draws()
	for i := range 10 {
		l.do("moving the mouse", input.DispatchMouseEvent(input.MouseMoved, 300+20*float64(i), 400))
	}
	l.settle()
	if n := l.draws() - draws; n > 0 {
		t.Errorf("moving the mouse alone drew %d things", n)
	}
	l.Press("y")
	l.Wait(`soundTap.counts().sounding > 0`, 10*time.Second)
	l.Press("y")
	l.rests("after a sound", time.Second)
	l.Press("h")
	l.Wait(`document.querySelector('`+widget("next")+`')`, limit)
	l.rests("on a marked page", time.Second)
	l.Press("c")
	l.rests("on the contents", time.Second)
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
		busy, from := l.busy(), time.Now()
		l.Wait("frames.length >= 20", limit)
		share, took := (l.busy()-busy)/time.Since(from).Seconds(), time.Since(from)
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
