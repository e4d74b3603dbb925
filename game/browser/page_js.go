package browser

import (
	"syscall/js"
	"time"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// A Page is the page around the app. Its methods belong to one goroutine; none
// of them waits.
type Page struct {
	global, document, performance js.Value

	start  float64 // performance.now, in milliseconds
	hidden bool
	wake   func()

	dark, contrast, reduced bool // what the system prefers

	queue    queue
	pointers pointers
	keyboard keyboard
	mirror   mirror
	dom      dom
	shelf    shelf
	audio    audio
	line     line
	offline  offline
	scanner  scanner
	recorder recorder
}

// Open starts to listen to the page. Call it once, before the canvas is used.
func Open() *Page {
	g := js.Global()
	p := &Page{global: g, document: g.Get("document"), performance: g.Get("performance"), wake: func() {}}
	p.start = p.performance.Call("now").Float()
	p.pointers.q = &p.queue
	p.shelf = shelf{get: p.storageGet, set: p.storageSet}
	p.openAudio()
	p.openLine()
	p.openOffline()
	p.openMirror()
	p.watch()
	p.listenPointers()
	p.listenKeys()
	p.listenMirror()
	return p
}

// Started tells the page that the app can draw: the loading panel goes away,
// and the engine had better be there soon.
func (p *Page) Started() {
	p.line.source.Call("wanted")
	p.showHeap()
	p.dom.root.Set("hidden", false)
	p.global.Get("partialCredit").Call("started")
	p.settleCanvas()
}

// settleCanvas leaves the canvas to the eye: the mirror is for everything else.
func (p *Page) settleCanvas() {
	canvas := p.document.Call("querySelector", "canvas")
	if !canvas.Truthy() {
		return
	}
	canvas.Call("setAttribute", "aria-hidden", "true")
	canvas.Set("tabIndex", -1)
	canvas.Get("style").Set("outline", "none")
	canvas.Call("blur")
}

// Frames has the browser give frames to draw, or none until it is told again
// (web/canvas.js).
func (p *Page) Frames(on bool) { p.global.Get("partialCredit").Call("frames", on) }

// OnEvent has f called, inside the browser's event, when there are new events
// or when the page is shown, hidden or given other colours. It must not wait.
func (p *Page) OnEvent(f func()) { p.wake = f }

// Events gives what people did since the last call, oldest first. It holds
// until the next call.
func (p *Page) Events() []ui.Event { return p.queue.drain() }

// Urgent reports whether events wait that came between two pictures. Moves of
// pointers do not: browsers tell of them just before the next picture.
func (p *Page) Urgent() bool { return p.queue.urgent() }

// Now is the time since the page was opened here.
func (p *Page) Now() time.Duration { return p.since(p.performance.Call("now").Float()) }

// Hidden reports whether nobody can see the page.
func (p *Page) Hidden() bool { return p.hidden }

// Dark reports whether the system prefers dark colours.
func (p *Page) Dark() bool { return p.dark }

// Contrast reports whether the system asks for strong contrast, or puts its own
// colours in the place of every page's.
func (p *Page) Contrast() bool { return p.contrast }

// Reduced reports whether the system prefers that little moves.
func (p *Page) Reduced() bool { return p.reduced }

// Mirror makes the page say to assistive devices what the scene shows. Call it
// when the scene has changed; where nothing differs it touches nothing.
func (p *Page) Mirror(s *game.Scene) { p.apply(p.mirror.update(s)) }

// Load gives what was saved under key on this device; nil where nothing was, or
// where the browser keeps nothing.
func (p *Page) Load(key string) []byte { return p.shelf.load(key) }

// Save keeps data, which is text, under key on this device. What goes wrong
// comes as a sentence for the learner, and comes once.
func (p *Page) Save(key string, data []byte) error { return p.shelf.save(key, data) }

// since turns a time of the page, in milliseconds, into one of the program.
func (p *Page) since(ms float64) time.Duration {
	return time.Duration(max(0, ms-p.start) * float64(time.Millisecond))
}

// listen has f called with every event of that type that reaches target, before
// anything on the page sees it.
func (p *Page) listen(target js.Value, kind string, f func(e js.Value)) {
	target.Call("addEventListener", kind, js.FuncOf(func(_ js.Value, args []js.Value) any {
		f(args[0])
		return nil
	}), map[string]any{"capture": true, "passive": false})
}

// watch keeps the state of the page.
func (p *Page) watch() {
	p.hidden = p.document.Get("hidden").Bool()
	p.listen(p.document, "visibilitychange", func(js.Value) {
		p.hidden = p.document.Get("hidden").Bool()
		if p.hidden {
			p.pointers.cancelAll(p.Now())
		}
		p.wake()
	})
	p.prefers("(prefers-color-scheme: dark)", &p.dark)
	p.prefers("(prefers-contrast: more), (forced-colors: active)", &p.contrast)
	p.prefers("(prefers-reduced-motion: reduce)", &p.reduced)
}

// prefers keeps in to whether a query of the system's preferences holds (W3C
// Media Queries 5).
func (p *Page) prefers(query string, to *bool) {
	q := p.global.Call("matchMedia", query)
	*to = q.Get("matches").Bool()
	if q.Get("addEventListener").Truthy() { // Safari before 14 has it not
		p.listen(q, "change", func(js.Value) {
			*to = q.Get("matches").Bool()
			p.wake()
		})
	}
}

// scrolls reports whether the page is larger than the window (web/style.css).
func (p *Page) scrolls() bool {
	root := p.document.Get("documentElement")
	return root.Get("scrollHeight").Int() > root.Get("clientHeight").Int() || root.Get("scrollWidth").Int() > root.Get("clientWidth").Int()
}
