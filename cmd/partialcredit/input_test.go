//go:build !js

package main_test

import (
	"slices"
	"strconv"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
)

// Point is a place on the page in CSS pixels.
type Point struct{ X, Y float64 }

// hold is how long keys, buttons and fingers stay down: longer than a tick of the app (1/60 s), so
// that input which is polled notices too.
const hold = 50 * time.Millisecond

// Click presses and releases the left mouse button at a point.
func (p *Page) Click(at Point) {
	p.t.Helper()
	p.MouseDrag(at)
}

// MouseDrag presses the left mouse button at the first point, moves through the others, and releases
// it at the last.
func (p *Page) MouseDrag(through ...Point) {
	p.t.Helper()
	mouse := func(kind input.MouseType, at Point, buttons int64) {
		p.t.Helper()
		event := input.DispatchMouseEvent(kind, at.X, at.Y).WithButtons(buttons).WithPointerType("mouse")
		if kind != input.MouseMoved || buttons != 0 {
			event = event.WithButton(input.Left)
		}
		if kind != input.MouseMoved {
			event = event.WithClickCount(1)
		}
		p.do("a mouse event", event)
	}
	first, last := through[0], through[len(through)-1]
	mouse(input.MouseMoved, first, 0)
	mouse(input.MousePressed, first, 1)
	for _, at := range through[1:] {
		time.Sleep(hold / 2)
		mouse(input.MouseMoved, at, 1)
	}
	time.Sleep(hold)
	mouse(input.MouseReleased, last, 0)
}

// Finger is one finger on the glass.
type Finger struct {
	page *Page
	id   float64
	at   Point
}

// Touch puts a finger down. Other fingers may be down already.
func (p *Page) Touch(at Point) *Finger {
	p.t.Helper()
	f := &Finger{page: p, id: 1, at: at}
	for _, other := range p.fingers {
		f.id = max(f.id, other.id+1)
	}
	p.fingers = append(p.fingers, f)
	p.touch(input.TouchStart, p.fingers)
	return f
}

// Move moves the finger.
func (f *Finger) Move(to Point) {
	f.page.t.Helper()
	f.at = to
	f.page.touch(input.TouchMove, f.page.fingers)
}

// Lift takes the finger away.
func (f *Finger) Lift() {
	f.page.t.Helper()
	p := f.page
	p.fingers = slices.DeleteFunc(p.fingers, func(other *Finger) bool { return other == f })
	// An empty list would lift all fingers; one that names a finger lifts that one, though the
	// protocol's documentation says otherwise (seen with Chromium 156; TestInputReachesThePage).
	p.touch(input.TouchEnd, []*Finger{f})
}

// TouchCancel takes all fingers away as the system does when it claims the touch for itself.
func (p *Page) TouchCancel() {
	p.t.Helper()
	p.fingers = nil
	p.touch(input.TouchCancel, nil)
}

// Tap touches a point for a moment.
func (p *Page) Tap(at Point) {
	p.t.Helper()
	f := p.Touch(at)
	time.Sleep(hold)
	f.Lift()
}

// Drag puts a finger down at the first point, moves it through the others and lifts it.
func (p *Page) Drag(through ...Point) {
	p.t.Helper()
	f := p.Touch(through[0])
	for _, at := range through[1:] {
		time.Sleep(hold / 2)
		f.Move(at)
	}
	time.Sleep(hold)
	f.Lift()
}

func (p *Page) touch(kind input.TouchType, fingers []*Finger) {
	p.t.Helper()
	points := []*input.TouchPoint{}
	for _, f := range fingers {
		points = append(points, &input.TouchPoint{X: f.at.X, Y: f.at.Y, ID: f.id, RadiusX: 8, RadiusY: 8, Force: 0.5})
	}
	p.do("a touch event", input.DispatchTouchEvent(kind, points))
}

// Press presses and releases a key, named as in KeyboardEvent.key: "ArrowRight", "Enter", "Tab", " ",
// "t". Modifiers are held meanwhile.
func (p *Page) Press(key string, modifiers ...input.Modifier) {
	p.t.Helper()
	p.KeyDown(key, modifiers...)
	time.Sleep(hold)
	p.KeyUp(key, modifiers...)
}

// KeyDown presses a key and leaves it down.
func (p *Page) KeyDown(key string, modifiers ...input.Modifier) {
	p.t.Helper()
	k := p.key(key)
	kind := input.KeyRawDown
	if k.Text != "" {
		kind = input.KeyDown // only this kind carries text
	}
	p.do("pressing "+key, keyEvent(kind, k, modifiers).WithText(k.Text).WithUnmodifiedText(k.Unmodified))
}

// KeyUp releases a key.
func (p *Page) KeyUp(key string, modifiers ...input.Modifier) {
	p.t.Helper()
	p.do("releasing "+key, keyEvent(input.KeyUp, p.key(key), modifiers))
}

func (p *Page) key(name string) *kb.Key {
	p.t.Helper()
	for r, k := range kb.Keys {
		// Enter stands under two characters; the page cannot tell them apart.
		if k.Key == name && r != '\n' {
			return k
		}
	}
	p.t.Fatalf("there is no key %q", name)
	return nil
}

func keyEvent(kind input.KeyType, k *kb.Key, modifiers []input.Modifier) *input.DispatchKeyEventParams {
	var all input.Modifier
	for _, m := range modifiers {
		all |= m
	}
	return input.DispatchKeyEvent(kind).WithKey(k.Key).WithCode(k.Code).WithModifiers(all).
		WithWindowsVirtualKeyCode(k.Windows).WithNativeVirtualKeyCode(k.Native)
}

// Focused returns a short description of the element that has the focus: its tag and id.
func (p *Page) Focused() string {
	p.t.Helper()
	var name string
	p.Eval(`document.activeElement ? document.activeElement.tagName + (document.activeElement.id ? "#" + document.activeElement.id : "") : ""`, &name)
	return name
}

// Middle returns the middle of the first element that matches a selector.
func (p *Page) Middle(selector string) Point {
	p.t.Helper()
	var at Point
	p.Eval(`(() => { const r = document.querySelector(`+strconv.Quote(selector)+`).getBoundingClientRect();
		return { X: r.x + r.width / 2, Y: r.y + r.height / 2 }; })()`, &at)
	return at
}
