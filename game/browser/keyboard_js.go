package browser

import (
	"syscall/js"

	"partialcredit/game/ui"
)

// A keyboard knows which keys the app has taken and not yet seen lifted, and
// whether a pointer was used since.
type keyboard struct {
	held map[string]bool // by the code of the key's place
	away bool            // a pointer was used last
}

// pressing reports whether a key that presses buttons is down.
func (k *keyboard) pressing() bool {
	return k.held["Space"] || k.held["Enter"] || k.held["NumpadEnter"]
}

// listenKeys takes the app's keys before anything on the page sees them: the
// canvas, which would cancel every key, and the range inputs, which would step
// a second time. All other keys are the browser's, Tab among them.
func (p *Page) listenKeys() {
	p.keyboard.held = map[string]bool{}
	p.listen(p.global, "keydown", p.keyDown)
	p.listen(p.global, "keyup", func(e js.Value) {
		if code := e.Get("code").String(); p.keyboard.held[code] {
			delete(p.keyboard.held, code)
			e.Call("preventDefault") // a button would be pressed when the space bar is lifted
		}
	})
}

// letGo forgets the keys that are down: another window will see them lifted.
func (k *keyboard) letGo() { clear(k.held) }

func (p *Page) keyDown(e js.Value) {
	target := e.Get("target")
	if onCanvas(target) {
		e.Call("stopImmediatePropagation")
	} else if !p.dom.has(target) && !target.Equal(p.document.Get("body")) {
		return
	}
	k := keystroke{
		key:       e.Get("key").String(),
		ctrl:      e.Get("ctrlKey").Bool(),
		meta:      e.Get("metaKey").Bool(),
		alt:       e.Get("altKey").Bool(),
		composing: e.Get("isComposing").Bool() || e.Get("keyCode").Int() == 229,
	}
	if id := p.dom.idOf(target); p.mirror.written(id) {
		p.keyboard.away = p.keyboard.away && k.key != "Tab"
		p.fieldKey(id, k, e)
		return
	}
	if k.key == "Tab" || k.ours() {
		p.keyboard.away = false
	}
	id := p.dom.idOf(p.document.Get("activeElement"))
	if !k.ours() || k.scrolls() && !p.mirror.ruled(id) && p.scrolls() {
		return
	}
	e.Call("preventDefault")
	e.Call("stopImmediatePropagation")
	if e.Get("repeat").Bool() && !repeats(k.key) {
		return
	}
	p.keyboard.held[e.Get("code").String()] = true
	p.noteFocus(id)
	p.queue.push(ui.Event{Kind: ui.KeyDown, At: p.at(e), Key: k.key, Shift: e.Get("shiftKey").Bool(), Widget: id})
	p.wake()
}
