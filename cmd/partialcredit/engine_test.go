//go:build !js

package main_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"path"
	"strings"
	"testing"
	"time"

	"partialcredit/cmd/desk/site"
)

// withoutEngine keeps the engine from the page, so that Oto must play.
const withoutEngine = `
const fetch0 = window.fetch;
window.fetch = (address, ...more) => String(address).includes('engine.') ? Promise.reject(new Error('kept away')) : fetch0(address, ...more);`

// catchNodes keeps the audio nodes that the page makes, and the contexts.
const catchNodes = `
window.nodes = [];
window.contexts = [];
const Node0 = window.AudioWorkletNode;
window.AudioWorkletNode = class extends Node0 { constructor(...a) { super(...a); if (!a[1].startsWith('test')) nodes.push(this); } };
const Context0 = window.AudioContext;
window.AudioContext = class extends Context0 { constructor(...a) { super(...a); contexts.push(this); } };`

// playsWith checks who plays.
func (p *Page) playsWith(who string) {
	p.t.Helper()
	state := map[string]string{"the engine": "ready", "Oto": "failed"}[who]
	p.Wait(`partialCredit.engine.state() === "`+state+`"`, 10*time.Second)
	if state == "failed" {
		var why string
		p.Eval("partialCredit.engine.failure()", &why)
		p.t.Logf("the engine does not play: %s", why)
	}
}

// soundsAnew waits until something sounds that was not there before.
func (l *learner) soundsAnew() {
	l.t.Helper()
	l.Wait("soundTap.counts().rate > 0", 10*time.Second)
	l.ForgetSound()
	l.Wait("soundTap.counts().quanta > 100 && soundTap.counts().sounding > 50", 20*time.Second)
}

// playing opens a page that can play as soon as it is touched.
func playing(t *testing.T, v Visit) *learner {
	l := resume(t, at("beats"), v)
	l.Press("y")
	return l
}

func TestEngineThatCannotBeHadLeavesItToOto(t *testing.T) {
	l := playing(t, Visit{Before: []string{withoutEngine, catchNodes}})
	l.soundsAnew()
	l.playsWith("Oto")
	// Oto cannot change to another context, so it is left alone with one whose clock stands still.
	l.Eval("Object.defineProperty(contexts[0], 'currentTime', { get: () => 1 })", nil)
	time.Sleep(2500 * time.Millisecond)
	var n int
	if l.Eval("contexts.length", &n); n != 1 {
		t.Errorf("%d contexts were made, want 1", n)
	}
}

// A worklet needs a secure page: so it is on a plain http address of the local network.
func TestSoundWithoutWorklets(t *testing.T) {
	l := playing(t, Visit{Before: []string{`
		delete BaseAudioContext.prototype.audioWorklet;
		const make = BaseAudioContext.prototype.createScriptProcessor;
		BaseAudioContext.prototype.createScriptProcessor = function (...a) {
			const node = make.apply(this, a), to = this.createAnalyser();
			node.connect(to);
			window.peak = () => { const x = new Float32Array(2048); to.getFloatTimeDomainData(x); return Math.max(...x); };
			return node;
		};`}})
	l.Wait("window.peak && peak() > 0.001", 10*time.Second)
	l.playsWith("Oto")
}

// Some browsers do not hand a compiled module to another thread.
func TestEngineFromItsBytes(t *testing.T) {
	l := playing(t, Visit{Before: []string{catchNodes, `
		const Node1 = window.AudioWorkletNode;
		window.AudioWorkletNode = class extends Node1 {
			constructor(...a) {
				if (a[2].processorOptions && a[2].processorOptions.module) throw new DOMException('no modules', 'DataCloneError');
				super(...a);
				if (a[1] === 'engine') window.given = Object.keys(a[2].processorOptions).join();
			}
		};`}})
	l.soundsAnew()
	l.playsWith("the engine")
	var given string
	l.Eval("given", &given)
	if given != "bytes" {
		t.Errorf("the engine was given its %s", given)
	}
}

// Two engines break down and another goes on each time; after the third Oto does.
func TestEngineThatBreaksDown(t *testing.T) {
	l := playing(t, Visit{Before: []string{catchNodes}})
	l.soundsAnew()
	for i, who := range []string{"the engine", "the engine", "Oto"} {
		l.Wait(fmt.Sprintf("nodes.length === %d", i+1), 10*time.Second)
		l.Eval("nodes.at(-1).onprocessorerror(new Event('processorerror'))", nil)
		l.soundsAnew()
		l.playsWith(who)
	}
	if l.attribute("yours", "aria-pressed") != "true" {
		t.Error("the button says that nothing sounds")
	}
}

func TestEngineThatNeverBegins(t *testing.T) {
	l := playing(t, Visit{Before: []string{catchNodes, `
		const Node1 = window.AudioWorkletNode;
		window.AudioWorkletNode = class extends Node1 {
			constructor(...a) {
				super(...a);
				if (a[1] === 'engine' && nodes.length === 1) Object.defineProperty(this.port, 'onmessage', { set() {} });
			}
		};`}})
	l.Wait("nodes.length === 2", 10*time.Second)
	l.soundsAnew()
	l.playsWith("the engine")
}

// After an interruption a context may say that it runs while its clock stands still.
func TestContextThatStandsStillIsMadeAnew(t *testing.T) {
	l := playing(t, Visit{Before: []string{catchNodes}})
	l.soundsAnew()
	l.Eval("Object.defineProperty(contexts[0], 'currentTime', { get: () => 1 })", nil)
	l.Wait("contexts.length === 2 && contexts[0].state === 'closed'", 10*time.Second)
	l.soundsAnew()
	l.playsWith("the engine")
	time.Sleep(2500 * time.Millisecond)
	var n int
	if l.Eval("contexts.length", &n); n != 2 {
		t.Errorf("%d contexts were made, want 2", n)
	}
}

// Views of the engine's memory turn empty when it grows.
func TestEngineMemoryMayGrow(t *testing.T) {
	l := playing(t, Visit{})
	l.soundsAnew()
	l.Eval("partialCredit.engine.send(new Float64Array(2000000).fill(7))", nil)
	l.soundsAnew()
	l.playsWith("the engine")
}

func TestEngineThatComesLate(t *testing.T) {
	for _, tt := range []struct {
		name string
		wait time.Duration // from the running app on; 0 for ever
		who  string
	}{{"late", time.Second, "the engine"}, {"never", 0, "Oto"}} {
		t.Run(tt.name, func(t *testing.T) {
			let := make(chan struct{})
			whole := site.Handler(site.Fixed(theSite(t)))
			server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				if name := path.Base(r.URL.Path); strings.HasPrefix(name, "engine.") && strings.HasSuffix(name, ".wasm") {
					select {
					case <-let:
					case <-r.Context().Done():
						return
					}
				}
				whole.ServeHTTP(w, r)
			}))
			t.Cleanup(server.Close)
			l := playing(t, Visit{Address: server.URL + "/"})
			time.Sleep(tt.wait)
			var state string
			if l.Eval("partialCredit.engine.state()", &state); state != "loading" {
				t.Errorf("the engine is %s before it is there", state)
			}
			if tt.wait > 0 {
				close(let)
			} else {
				t.Cleanup(func() { close(let) })
			}
			l.soundsAnew()
			l.playsWith(tt.who)
		})
	}
}

// TestEngineAllocatesNothing calls the engine's WebAssembly as web/worklet.js does. Without allocation
// there is no collection in the audio thread.
func TestEngineAllocatesNothing(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	l.Eval(`window.sent = []; {
		const send = partialCredit.engine.send;
		partialCredit.engine.send = m => { sent[m[0]] = m.slice(); send(m); };
	}`, nil)
	l.Press("y")
	l.Wait("sent[1] && sent[1].length > 2", 5*time.Second)
	var got struct{ Mallocs, Plays, Grown, Microseconds float64 }
	l.Eval(`(async () => {
		const module = await WebAssembly.compileStreaming(fetch(document.querySelector('[data-engine]').dataset.engine));
		const system = {};
		for (const { name } of WebAssembly.Module.imports(module)) system[name] = () => 0;
		let go = null;
		system.clock_time_get = (id, precision, to) => { new DataView(go.memory.buffer).setUint32(to, 1, true); return 0; };
		go = (await WebAssembly.instantiate(module, { wasi_snapshot_preview1: system })).exports;
		go._initialize();
		const send = m => { new Float64Array(go.memory.buffer, go.inbox(m.length), m.length).set(m); go.take(); };
		const program = sent[1];
		send([0, 0.5]);
		for (let i = 0; i < 3; i++) send(program); // until there is room for one that sounds and one to follow
		for (let i = 0; i < 2000; i++) go.render(128 * i);
		const size = go.memory.buffer.byteLength;
		let before = go.mallocs(), from = performance.now();
		for (let i = 0; i < 10000; i++) go.render(128 * i);
		const took = performance.now() - from, mallocs = go.mallocs() - before;
		before = go.mallocs();
		for (let i = 0; i < 1000; i++) { program[3] = i / 1000; send(program); go.render(128 * i); }
		return { mallocs, plays: go.mallocs() - before, grown: go.memory.buffer.byteLength - size, microseconds: took / 10 };
	})()`, &got)
	t.Logf("in 10000 quanta %v allocations, in 1000 programs %v; a quantum takes %.1f µs of 2667", got.Mallocs, got.Plays, got.Microseconds)
	if got.Mallocs != 0 || got.Plays != 0 || got.Grown != 0 {
		t.Errorf("%v and %v allocations, and %v bytes more of memory, want none", got.Mallocs, got.Plays, got.Grown)
	}
}
