package browser

import (
	"strings"
	"syscall/js"

	"partialcredit/game/ui"
)

// A dom is the mirror's part of the page, over the canvas: transparent and open to
// everything but pointers, except for the text fields, which are seen and touched.
type dom struct {
	root, title, body, announce, controls js.Value
	elements                              map[string]js.Value
	shown                                 string // the widget whose focus was told
	busy                                  bool   // edits are being made
}

// idAttribute holds the ID of a widget on its element.
const idAttribute = "data-widget"

const (
	rootStyle    = "position:absolute;inset:0;overflow:hidden;contain:strict;pointer-events:none"
	wordsStyle   = "position:absolute;top:0;left:0;margin:0;white-space:pre-line;opacity:0"
	controlStyle = "position:absolute;box-sizing:border-box;margin:0;padding:0;border:0;overflow:hidden;pointer-events:none;opacity:0"
)

func (p *Page) openMirror() {
	d := &p.dom
	d.elements = map[string]js.Value{}
	d.root = p.create("main", rootStyle)
	d.root.Set("id", "mirror")
	d.root.Set("hidden", true) // until the app has started: a page has one main part
	d.title = p.create("h1", wordsStyle)
	d.body = p.create("p", wordsStyle)
	d.announce = p.create("p", wordsStyle)
	d.announce.Call("setAttribute", "role", "status")
	d.controls = p.create("div", "")
	d.root.Call("append", d.title, d.body, d.announce, d.controls)
	p.document.Get("body").Call("append", d.root)
}

func (p *Page) create(element, style string) js.Value {
	e := p.document.Call("createElement", element)
	e.Get("style").Set("cssText", style)
	return e
}

// apply makes the edits, and leaves the focus where it was or, where that
// widget is gone and the keyboard is in use, on the first one.
func (p *Page) apply(edits []edit) {
	if len(edits) == 0 {
		return
	}
	d := &p.dom
	had := d.idOf(p.document.Get("activeElement"))
	d.busy = true
	for i := range edits {
		p.applyOne(&edits[i])
	}
	d.busy = false
	if had == "" {
		return
	}
	if e, ok := d.elements[had]; !ok || e.Get("disabled").Bool() {
		had = ""
		if !p.keyboard.away {
			had = p.mirror.first()
		}
	}
	p.focus(had)
}

func (p *Page) applyOne(x *edit) {
	d := &p.dom
	e := d.elements[x.id]
	switch x.do {
	case insert:
		e = p.createControl(x.name)
		e.Call("setAttribute", idAttribute, x.id)
		d.elements[x.id] = e
		d.controls.Call("insertBefore", e, d.element(x.value))
	case move:
		d.controls.Call("insertBefore", e, d.element(x.value))
	case remove:
		e.Call("remove")
		delete(d.elements, x.id)
	case setAttr:
		e.Call("setAttribute", x.name, x.value)
	case removeAttr:
		e.Call("removeAttribute", x.name)
	case setValue:
		p.setElementValue(e, x.value)
	case setText:
		e.Set("textContent", x.value)
	case place:
		s := e.Get("style")
		s.Set("left", number(x.rect.X)+"px")
		s.Set("top", number(x.rect.Y)+"px")
		s.Set("width", number(x.rect.W)+"px")
		s.Set("height", number(x.rect.H)+"px")
	case setTitle:
		d.title.Set("textContent", x.value)
	case setBody:
		d.body.Set("textContent", x.value)
	case setAnnounce:
		d.announce.Set("textContent", x.value)
	}
}

// element is that of a widget; null where there is none.
func (d *dom) element(id string) js.Value {
	if e, ok := d.elements[id]; ok {
		return e
	}
	return js.Null()
}

// has reports whether a node belongs to the mirror.
func (d *dom) has(node js.Value) bool { return d.root.Call("contains", node).Bool() }

// idOf is the ID of the widget whose element that is; empty where it is none.
func (d *dom) idOf(element js.Value) string {
	if !element.Truthy() || !d.has(element) {
		return ""
	}
	id := element.Call("getAttribute", idAttribute)
	if id.IsNull() {
		return ""
	}
	return strings.Clone(id.String())
}

// focus gives the focus to a widget; takes it from all where id is empty.
func (p *Page) focus(id string) {
	d := &p.dom
	active := p.document.Get("activeElement")
	e := d.element(id)
	switch {
	case e.Truthy() && !e.Equal(active):
		e.Call("focus", map[string]any{"preventScroll": p.keyboard.away, "focusVisible": !p.keyboard.away})
	case !e.Truthy() && d.has(active):
		active.Call("blur")
	}
	p.noteFocus(p.visible(id))
}

// visible is id where its focus should be seen: on a text field always, on others
// not after a finger or the mouse has set it.
func (p *Page) visible(id string) string {
	if p.keyboard.away && !p.mirror.written(id) {
		return ""
	}
	return id
}

// noteFocus tells which widget shows the focus, when it is another one.
func (p *Page) noteFocus(id string) {
	if p.dom.shown == id {
		return
	}
	p.dom.shown = id
	p.queue.push(ui.Event{Kind: ui.Focus, At: p.Now(), Widget: id})
	p.wake()
}

// listenMirror takes what the browser and assistive devices do with the mirror.
// No pointer reaches it and the app takes the keys, so a click and a new value
// come from an assistive device.
func (p *Page) listenMirror() {
	d := &p.dom
	p.listen(d.root, "focusin", func(e js.Value) {
		if !d.busy {
			p.noteFocus(p.visible(d.idOf(e.Get("target"))))
		}
	})
	p.listen(d.root, "focusout", func(e js.Value) {
		if !d.busy && !e.Get("relatedTarget").Truthy() {
			p.noteFocus("")
		}
	})
	p.listen(d.root, "click", func(e js.Value) {
		if id := d.idOf(e.Get("target")); id != "" && !p.keyboard.pressing() && !p.mirror.written(id) {
			p.queue.push(ui.Event{Kind: ui.Press, At: p.at(e), Widget: id})
			p.wake()
		}
	})
	p.listen(d.root, "input", func(e js.Value) {
		id := d.idOf(e.Get("target"))
		if p.mirror.written(id) {
			p.takeText(e)
			return
		}
		v, ok := p.mirror.answer(id, e.Get("target").Get("valueAsNumber").Float())
		if ok {
			p.queue.push(ui.Event{Kind: ui.SetValue, At: p.at(e), Widget: id, Value: v})
			p.wake()
		}
	})
	p.listenFields()
}
