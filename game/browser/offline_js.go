package browser

import "syscall/js"

// An offline is what web/offline.js tells of newer versions of the app.
type offline struct {
	source js.Value
	ready  bool
}

func (p *Page) openOffline() {
	p.offline.source = p.global.Get("partialCredit").Get("offline")
	p.offline.source.Call("onReady", js.FuncOf(func(js.Value, []js.Value) any {
		p.offline.ready = true
		p.wake()
		return nil
	}))
}

// UpdateReady reports whether a newer version of the app lies on the device and
// waits. Once true, it stays so.
func (p *Page) UpdateReady() bool { return p.offline.ready }

// Update goes over to the newer version: the page loads anew a moment later.
// Save first, and call it only when the learner asks for it.
func (p *Page) Update() { p.offline.source.Call("update") }
