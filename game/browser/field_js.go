package browser

import (
	"strings"
	"syscall/js"

	"partialcredit/game/ui"
)

// createControl makes the element of a widget, of the kind that the mirror names.
func (p *Page) createControl(kind string) js.Value {
	switch kind {
	case "button":
		e := p.create("button", controlStyle)
		e.Set("type", "button")
		return e
	case "range":
		e := p.create("input", controlStyle)
		e.Set("type", "range")
		return e
	}
	tag := "input"
	if kind == "textarea" {
		tag = "textarea"
	}
	e := p.document.Call("createElement", tag)
	if kind == "text" {
		e.Set("type", "text")
		e.Call("setAttribute", "enterkeyhint", "done")
	}
	e.Set("className", "field") // web/style.css
	e.Set("dir", "auto")
	e.Set("autocomplete", "off")
	e.Set("spellcheck", true)
	return e
}

// setElementValue leaves the cursor where it was. What is there already is not set
// again, which would move it in some browsers; to move it where the focus is not
// would draw the focus in others.
func (p *Page) setElementValue(e js.Value, value string) {
	if e.Get("className").String() != "field" {
		e.Set("value", value)
		return
	}
	if e.Get("value").String() == value {
		return
	}
	from, to, way := e.Get("selectionStart"), e.Get("selectionEnd"), e.Get("selectionDirection")
	e.Set("value", value)
	if e.Equal(p.document.Get("activeElement")) {
		e.Call("setSelectionRange", from, to, way) // which the browser brings into the text
	}
}

// takeText tells the game what is in a text field now.
func (p *Page) takeText(e js.Value) {
	id := p.dom.idOf(e.Get("target"))
	text := strings.Clone(e.Get("target").Get("value").String())
	if p.mirror.typed(id, text) {
		p.queue.push(ui.Event{Kind: ui.Typed, At: p.at(e), Widget: id, Text: text})
		p.wake()
	}
}

// listenFields takes what only text fields tell.
func (p *Page) listenFields() {
	d := &p.dom
	p.listen(d.root, "compositionstart", func(e js.Value) { p.mirror.compose(d.idOf(e.Get("target"))) })
	p.listen(d.root, "compositionend", func(e js.Value) {
		p.mirror.compose("")
		p.takeText(e) // what the game makes of it has waited
	})
	p.listen(d.root, "pointerdown", func(js.Value) { p.keyboard.away = true }) // only a field is met by one
	p.listen(d.root, "focusout", func(e js.Value) {
		if p.mirror.composing == d.idOf(e.Get("target")) {
			p.mirror.compose("")
		}
		// A keyboard on the screen may have had the browser move the page to show the field.
		if p.mirror.written(d.idOf(e.Get("target"))) && !p.scrolls() {
			p.global.Call("scrollTo", 0, 0)
		}
	})
}

// fieldKey acts on a key in a text field. All but the two that leave it are the
// field's own.
func (p *Page) fieldKey(id string, k keystroke, e js.Value) {
	if k.leaves(p.mirror.oneLine(id)) {
		e.Call("preventDefault")
		e.Get("target").Call("blur")
	}
}

// Dress has the text fields wear the colours of the book.
func (p *Page) Dress(ground, ink, faint string, dark bool) {
	s := p.dom.root.Get("style")
	for name, colour := range map[string]string{"--field": ground, "--field-ink": ink, "--field-hint": faint} {
		s.Call("setProperty", name, colour)
	}
	scheme := "light"
	if dark {
		scheme = "dark"
	}
	s.Set("colorScheme", scheme)
}
