//go:build !js

package main_test

import (
	"math"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
)

func (p Point) plus(x, y float64) Point { return Point{p.X + x, p.Y + y} }

func TestTwoFingersMoveTwoRulers(t *testing.T) {
	l := resume(t, at("octaves"), Visit{Screen: Phone})
	footage, balance := l.place("control 0"), l.place("control 1")
	one, two := l.onScale("control 0", footage), l.onScale("control 1", balance)
	step := l.box("control 1").W / 10
	a, b := l.Touch(one), l.Touch(two)
	for i := 1.0; i <= 3; i++ {
		a.Move(one.plus(i*step, 0))
		b.Move(two.plus(-i*step, 0))
	}
	gotA, gotB := l.place("control 0"), l.place("control 1")
	if gotA <= footage || gotB >= balance {
		t.Errorf("with a finger on each, the rulers went from %.2f to %.2f and from %.2f to %.2f, want the first up, the second down", footage, gotA, balance, gotB)
	}
	b.Lift()
	a.Move(one.plus(5*step, 0))
	if moved, rests := l.place("control 0"), l.place("control 1"); moved <= gotA || rests != gotB {
		t.Errorf("after one finger was lifted the rulers went from %.2f to %.2f and from %.2f to %.2f, want only the first to move", gotA, moved, gotB, rests)
	}
	a.Lift()
}

// moveFinger moves a finger that the page should not believe in any more.
const moveFinger = `((id, x, y) => document.querySelector('canvas').dispatchEvent(
	new PointerEvent('pointermove', { bubbles: true, pointerId: id, pointerType: 'touch', buttons: 1, clientX: x, clientY: y })))`

func TestTouchOnRulersAndButtons(t *testing.T) {
	const watch = `addEventListener('pointerdown', e => { window.lastPointer = e.pointerId }, true);`
	l := resume(t, at("beats"), Visit{Screen: Phone, Before: []string{watch}})
	start := l.place("control 0")
	handle := l.onScale("control 0", start)
	width := l.box("control 0").W - 28

	l.step(t, "coarse and fine", func() {
		const way = 60.0
		f := l.Touch(handle)
		f.Move(handle.plus(way, 0))
		coarse := l.place("control 0") - start
		if math.Abs(coarse*width-way) > 4 {
			l.t.Errorf("a finger that moves %v px along the ruler moves the handle by %.1f px", way, coarse*width)
		}
		f.Move(handle.plus(way, -100))
		if got := l.place("control 0") - start; math.Abs(got-coarse) > 0.01 {
			l.t.Errorf("moving straight away from the ruler moves the handle by %.1f px", (got-coarse)*width)
		}
		f.Move(handle.plus(2*way, -100))
		fine := l.place("control 0") - start - coarse
		if fine <= 0 || fine > coarse/3 {
			l.t.Errorf("the same way off the ruler moves the handle by %.1f px, on it by %.1f px; want a part of that", fine*width, coarse*width)
		}
		f.Lift()
	})

	l.step(t, "double tap", func() {
		// On a busy machine the second tap may come too late to be one.
		far := l.onScale("control 0", 0.1)
		for range 5 {
			time.Sleep(500 * time.Millisecond) // no tap pairs with the last try's
			l.Tap(far)
			l.Tap(far)
			if l.place("control 0") == start {
				return
			}
		}
		l.t.Errorf("after double taps the ruler stands at %.3f, want its start %.3f", l.place("control 0"), start)
	})

	l.step(t, "cancelled on a ruler", func() {
		here := l.place("control 0")
		f := l.Touch(l.onScale("control 0", here))
		f.Move(f.at.plus(40, 0))
		cancelled := l.place("control 0")
		if cancelled == here {
			l.t.Fatal("the finger moved nothing")
		}
		l.TouchCancel()
		l.Eval(moveFinger+`(lastPointer, 300, `+num(f.at.Y)+`)`, nil)
		l.Tap(Point{5, 5})
		if got := l.place("control 0"); got != cancelled {
			l.t.Errorf("after the touch was cancelled the ruler went from %.3f to %.3f", cancelled, got)
		}
		g := l.Touch(l.onScale("control 0", cancelled))
		g.Move(g.at.plus(-40, 0))
		if got := l.place("control 0"); got >= cancelled {
			l.t.Errorf("a new finger does not move the ruler: %.3f", got)
		}
		g.Lift()
	})

	l.step(t, "cancelled on a button", func() {
		l.Touch(l.Middle(widget("target")))
		l.settle()
		l.TouchCancel()
		if l.attribute("target", "aria-pressed") == "true" {
			l.t.Error("a cancelled touch pressed the button")
		}
		l.Tap(l.Middle(widget("target")))
		if l.attribute("target", "aria-pressed") != "true" {
			l.t.Error("a tap does not press the button")
		}
	})
}

func TestMouseOnRulersAndButtons(t *testing.T) {
	l := resume(t, at("beats"), Visit{})
	start := l.place("control 0")
	handle := l.onScale("control 0", start)
	l.MouseDrag(handle, handle.plus(30, 0), handle.plus(90, 0))
	moved := l.place("control 0")
	if way := (moved - start) * (l.box("control 0").W - 28); math.Abs(way-90) > 4 {
		t.Errorf("the mouse moved 90 px and the handle %.1f px", way)
	}
	l.do("moving the mouse", input.DispatchMouseEvent(input.MouseMoved, handle.X, handle.Y))
	if got := l.place("control 0"); got != moved {
		t.Errorf("the mouse without a button down moved the ruler from %.3f to %.3f", moved, got)
	}
	button := l.Middle(widget("yours"))
	for _, kind := range []input.MouseType{input.MousePressed, input.MouseReleased} {
		l.do("the right button", input.DispatchMouseEvent(kind, button.X, button.Y).WithButton(input.Right).WithClickCount(1))
	}
	l.MouseDrag(button, button.plus(0, -200))
	if l.attribute("yours", "aria-pressed") == "true" {
		t.Error("the right button, or a press that left the button, pressed it")
	}
	l.Click(button)
	if l.attribute("yours", "aria-pressed") != "true" {
		t.Error("a click does not press the button")
	}
}
