//go:build !js

package main_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// watchMemory keeps the memories of both WebAssembly programs: the app's from the page, the engine's
// from within the audio thread, where another processor asks for it.
const watchMemory = `
{
	let Made;
	Object.defineProperty(window, 'Go', { get: () => Made, set: Go => {
		Made = class extends Go { constructor() { super(); window.theGo = this; } };
	} });
	// What Go refers to in the browser: its slots less the free ones.
	window.goValues = () => theGo._values.length - theGo._idPool.length;
}
for (const name of ['instantiate', 'instantiateStreaming']) {
	const make = WebAssembly[name];
	WebAssembly[name] = async (...a) => {
		const made = await make.apply(WebAssembly, a);
		if (made.instance && made.instance.exports.mem) window.appMemory = made.instance.exports.mem;
		return made;
	};
}
{
	const source = URL.createObjectURL(new Blob([` + "`" + `
		const Instance0 = WebAssembly.Instance;
		let engine = null;
		WebAssembly.Instance = function (...a) {
			const made = new Instance0(...a);
			if (made.exports.render) engine = made.exports;
			return made;
		};
		registerProcessor('test-memory', class extends AudioWorkletProcessor {
			constructor() {
				super();
				this.port.onmessage = () => this.port.postMessage(engine ? [engine.memory.buffer.byteLength, engine.mallocs()] : [0, 0]);
			}
			process() { return true; }
		});` + "`" + `], { type: 'text/javascript' }));
	const add = AudioWorklet.prototype.addModule;
	AudioWorklet.prototype.addModule = async function (...a) {
		if (!this.watched) {
			this.watched = true;
			await add.call(this, source);
		}
		return add.apply(this, a);
	};
	let asked = null;
	window.engineMemory = () => new Promise(done => {
		if (!asked) asked = new AudioWorkletNode(soundTap.context(), 'test-memory');
		asked.port.onmessage = e => done(e.data);
		asked.port.postMessage(0);
	});
}`

// Memory is what the app holds, in bytes, after the browser's own collection.
type Memory struct {
	App, Engine float64 // linear memories: they never shrink
	Heap        float64 // of the app in its memory, what is in use
	Mallocs     float64 // of the engine, since its start
	JS          float64 // the page's JavaScript
	Values      float64 // of JavaScript, that Go refers to
	Nodes       float64 // of the page, also those that nothing shows any more
	Listeners   float64
}

func (m Memory) String() string {
	return fmt.Sprintf("app %.1f MB with %.2f MB in use, engine %.1f MB after %.0f allocations, JavaScript %.2f MB, %.0f values of it in Go, %.0f nodes, %.0f listeners",
		m.App/1e6, m.Heap/1e6, m.Engine/1e6, m.Mallocs, m.JS/1e6, m.Values, m.Nodes, m.Listeners)
}

// memory collects the page's garbage and says what is left.
func (l *learner) memory() (m Memory) {
	l.t.Helper()
	var engine [2]float64
	l.Eval("engineMemory()", &engine)
	l.Eval("soundTap.forget()", nil)        // the recorder keeps a count of every length of pause
	l.Eval("partialCredit.heap()", &m.Heap) // Go lets go of what JavaScript can then collect
	l.Eval("goValues()", &m.Values)
	l.Eval("appMemory.buffer.byteLength", &m.App)
	m.Engine, m.Mallocs = engine[0], engine[1]
	l.do("the page's memory", heapprofiler.CollectGarbage(), performance.Enable(), chromedp.ActionFunc(func(ctx context.Context) error {
		metrics, err := performance.GetMetrics().Do(ctx)
		for _, v := range metrics {
			switch v.Name {
			case "JSHeapUsedSize":
				m.JS = v.Value
			case "Nodes":
				m.Nodes = v.Value
			case "JSEventListeners":
				m.Listeners = v.Value
			}
		}
		return err
	}))
	return m
}

// TestPlayDoesNotGrowMemory plays for SOAK_PLAY, round by round, and compares the end with the most of
// the second quarter, when everything has been seen. Issue 4 wants it for 30 minutes. The bounds are
// design choices. What is in use in Go's heap and in JavaScript's is collected before it is read. Go's
// linear memory never shrinks and holds what was not yet collected when it was fullest: 30 MB came in
// the first rounds on a busy machine, so only a long run bounds it.
func TestPlayDoesNotGrowMemory(t *testing.T) {
	length := soak(t, "SOAK_PLAY", 20*time.Second)
	appGrows := 8.0 * (1 << 20)
	if length < 10*time.Minute {
		appGrows = 32 << 20
	}
	const detune = 4 // the sheet
	l := resume(t, at("beats"), Visit{Before: []string{watchMemory}})
	l.playsWith("the engine")
	l.sounds(func() { l.Press("y") }) // browsers want one gesture that no assistive device makes
	l.chooses("contents", "go on")
	var most, m Memory
	rounds, compared, from := 0, 0, time.Now()
	for ; time.Since(from) < length || compared < 1 || rounds < 4; rounds++ {
		l.round(detune, rounds)
		m = l.memory()
		if past := time.Since(from); past <= length/2 && past >= length/4 || compared == 0 && past > length/4 {
			compared++
			most = Memory{max(most.App, m.App), max(most.Engine, m.Engine), max(most.Heap, m.Heap), max(most.Mallocs, m.Mallocs),
				max(most.JS, m.JS), max(most.Values, m.Values), max(most.Nodes, m.Nodes), max(most.Listeners, m.Listeners)}
		}
		if rounds%5 == 0 {
			t.Logf("%v, %d rounds: %v", time.Since(from).Round(time.Second), rounds+1, m)
		}
	}
	t.Logf("second quarter, at most: %v", most)
	t.Logf("end, after %d rounds in %v: %v", rounds, time.Since(from).Round(time.Second), m)
	for _, c := range []struct {
		what              string
		before, now, more float64
	}{
		{"bytes of the app's memory", most.App, m.App, appGrows},
		{"bytes in use in the app", most.Heap, m.Heap, 2_000_000},
		{"bytes of the engine's memory", most.Engine, m.Engine, 0},
		{"allocations of the engine", most.Mallocs, m.Mallocs, 0},
		{"bytes of JavaScript", most.JS, m.JS, 500_000},
		{"values of JavaScript in Go", most.Values, m.Values, 100},
		{"nodes of the page", most.Nodes, m.Nodes, 50},
		{"listeners of the page", most.Listeners, m.Listeners, 10},
	} {
		if c.now > c.before+c.more {
			t.Errorf("%.0f %s, in the second quarter at most %.0f: at most %.0f more are allowed", c.now, c.what, c.before, c.more)
		}
	}
	if m.App == 0 || m.Heap == 0 || m.Engine == 0 || m.JS == 0 || m.Nodes == 0 || m.Mallocs == 0 {
		t.Error("something was not measured at all")
	}
}
