package browser

import (
	"syscall/js"
	"time"
)

// listenPointers takes what fingers, pens and the mouse do on the canvas. The
// rest of the page, a panel with a button for example, keeps its own.
func (p *Page) listenPointers() {
	window := p.global
	p.listen(window, "pointerdown", func(e js.Value) {
		target := e.Get("target")
		if !onCanvas(target) || !p.pointers.press(p.contact(e)) {
			return
		}
		p.keyboard.away = true
		capture(target, e.Get("pointerId"))
		p.focus(p.mirror.rulerUnder(e.Get("pageX").Float(), e.Get("pageY").Float()))
		p.wake()
	})
	p.listen(window, "pointermove", func(e js.Value) {
		if len(p.pointers.down) > 0 && p.pointers.move(p.contact(e)) {
			p.wake()
		}
	})
	p.listen(window, "pointerup", func(e js.Value) {
		if p.pointers.lift(p.contact(e)) {
			p.wake()
		}
	})
	for _, kind := range []string{"pointercancel", "lostpointercapture"} {
		p.listen(window, kind, func(e js.Value) {
			if p.pointers.cancel(p.at(e), e.Get("pointerId").Int()) {
				p.wake()
			}
		})
	}
	p.listen(window, "blur", func(e js.Value) {
		if !e.Get("target").Equal(window) {
			return // an element's, on its way down
		}
		p.keyboard.letGo()
		if p.pointers.cancelAll(p.at(e)) {
			p.wake()
		}
	})

	// A finger that has scrolled the page cannot be stopped when it is lifted, and
	// the canvas would try.
	p.listen(window, "touchend", func(e js.Value) {
		if onCanvas(e.Get("target")) && !e.Get("cancelable").Bool() {
			e.Call("stopImmediatePropagation")
		}
	})

	// The canvas's own listeners would take the focus and draw a frame for every
	// movement. The ends of gestures pass: they are what audio may start from. A
	// page that scrolls is left to the wheel and, but on a ruler, to the finger.
	for _, kind := range []string{"mousedown", "mousemove", "wheel", "touchstart", "touchmove"} {
		p.listen(window, kind, func(e js.Value) {
			if !onCanvas(e.Get("target")) {
				return
			}
			e.Call("stopImmediatePropagation")
			if !p.scrolls() || kind == "mousedown" || kind == "touchstart" && p.onRuler(e) {
				e.Call("preventDefault")
			}
		})
	}
}

// capture has the canvas get everything the pointer does until it is lifted.
func capture(canvas, pointerID js.Value) {
	defer func() { _ = recover() }() // a pointer that is gone already
	canvas.Call("setPointerCapture", pointerID)
}

func (p *Page) contact(e js.Value) contact {
	return contact{
		at:      p.at(e),
		id:      e.Get("pointerId").Int(),
		mouse:   e.Get("pointerType").String() == "mouse",
		button:  e.Get("button").Int(),
		buttons: e.Get("buttons").Int(),
		ctrl:    e.Get("ctrlKey").Bool(),
		x:       e.Get("pageX").Float(), // the canvas begins where the page does, also when it scrolls
		y:       e.Get("pageY").Float(),
	}
}

func (p *Page) at(e js.Value) time.Duration { return p.since(e.Get("timeStamp").Float()) }

// onCanvas reports whether an event's target is the canvas.
func onCanvas(target js.Value) bool {
	return target.Get("nodeName").String() == "CANVAS"
}

// onRuler reports whether one of the fingers of a touch event is on a ruler.
func (p *Page) onRuler(e js.Value) bool {
	touches := e.Get("changedTouches")
	for i := range touches.Length() {
		if t := touches.Index(i); p.mirror.rulerUnder(t.Get("pageX").Float(), t.Get("pageY").Float()) != "" {
			return true
		}
	}
	return false
}
