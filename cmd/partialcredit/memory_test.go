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

// least is the least of each; what a reading catches in passing is in one of them only.
func (m Memory) least(o Memory) Memory {
	if m == (Memory{}) {
		return o
	}
	return Memory{min(m.App, o.App), min(m.Engine, o.Engine), min(m.Heap, o.Heap), min(m.Mallocs, o.Mallocs),
		min(m.JS, o.JS), min(m.Values, o.Values), min(m.Nodes, o.Nodes), min(m.Listeners, o.Listeners)}
}

// TestPlayDoesNotGrowMemory plays for SOAK_PLAY, round by round, and compares the least that is held in
// the last quarter with the least of the second, when everything has been seen. Issue 4 wants it for 30
// minutes; then it was level (2026-11-25: 57 rounds, the app 87.0 and 87.6 MB, in use 42.7 and 43.1 MB,
// JavaScript 1.91 and 1.94 MB). The bounds are design choices. What is in use in Go's heap and in
// JavaScript's is collected before it is read. Go's linear memory never shrinks and holds what was not
// yet collected when it was fullest; some pages come after several rounds only: a short run bounds
// neither closely.
func TestPlayDoesNotGrowMemory(t *testing.T) {
	length := soak(t, "SOAK_PLAY", 20*time.Second)
	appGrows, heapGrows := 8e6, 2e6
	if length < 10*time.Minute {
		appGrows, heapGrows = 32e6, 20e6
	}
	const detune = 4 // the sheet
	l := resume(t, at("beats"), Visit{Before: []string{watchMemory}})
	l.playsWith("the engine")
	l.sounds(func() { l.Press("y") }) // browsers want one gesture that no assistive device makes
	l.chooses("contents", "go on")
	var before, after Memory
	rounds, from := 0, time.Now()
	for ; time.Since(from) < length || after == (Memory{}); rounds++ {
		l.round(detune, rounds)
		m := l.memory()
		switch past := time.Since(from); {
		case past >= length/4 && (past <= length/2 || before == (Memory{})):
			before = before.least(m)
		case past >= length/4*3:
			after = after.least(m)
		}
		if rounds%5 == 0 {
			t.Logf("%v, %d rounds: %v", time.Since(from).Round(time.Second), rounds+1, m)
		}
	}
	t.Logf("second quarter, at least: %v", before)
	t.Logf("last quarter, at least, of %d rounds in %v: %v", rounds, time.Since(from).Round(time.Second), after)
	for _, c := range []struct {
		what              string
		before, now, more float64
	}{
		{"bytes of the app's memory", before.App, after.App, appGrows},
		{"bytes in use in the app", before.Heap, after.Heap, heapGrows},
		{"bytes of the engine's memory", before.Engine, after.Engine, 0},
		{"allocations of the engine", before.Mallocs, after.Mallocs, 10}, // two for a message longer than all before
		{"bytes of JavaScript", before.JS, after.JS, 300_000},
		{"values of JavaScript in Go", before.Values, after.Values, 50},
		{"nodes of the page", before.Nodes, after.Nodes, 30},
		{"listeners of the page", before.Listeners, after.Listeners, 5},
	} {
		if c.before <= 0 {
			t.Errorf("the %s were not measured", c.what)
		}
		if c.now > c.before+c.more {
			t.Errorf("%.0f %s, in the second quarter %.0f: at most %.0f more are allowed", c.now, c.what, c.before, c.more)
		}
	}
}
