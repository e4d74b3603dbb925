//go:build !js

package main_test

import (
	"fmt"
	"math"
	"testing"
	"time"
)

// Screens that zooming leaves: 200 % of a tablet and two desktops (WCAG 2.2, 1.4.4), and the 320 by 256
// CSS pixels of 1.4.10, whose width must do without scrolling. A phone at 200 % is narrower than that: it
// scrolls both ways. The page is at least as large
// as the layout needs (web/style.css) and scrolls there.
func TestSmallScreensLoseNothing(t *testing.T) {
	for _, tt := range []struct {
		screen        Screen
		width, height float64 // of the page
	}{
		{Screen{320, 256, 1, true}, 320, 568},
		{Screen{590, 410, 2, true}, 590, 410},
		{Screen{720, 450, 2, false}, 720, 450},
		{Screen{640, 260, 2, false}, 640, 320},
	} {
		s := tt.screen
		t.Run(fmt.Sprintf("%dx%d", s.Width, s.Height), func(t *testing.T) {
			l := resume(t, at("beats"), Visit{Screen: s})
			l.keyboard = false
			l.settle()
			var page struct{ Width, Height, Across, Down, Pixels float64 }
			l.Eval(`(() => {
				const r = document.querySelector('canvas').getBoundingClientRect(), root = document.scrollingElement;
				return { width: r.width, height: r.height, pixels: document.querySelector('canvas').width,
					across: root.scrollWidth - root.clientWidth, down: root.scrollHeight - root.clientHeight };
			})()`, &page)
			within := func(a, b float64) bool { return math.Abs(a-b) < 16 } // a scroll bar
			if !within(page.Width, tt.width) || !within(page.Height, tt.height) || math.Abs(page.Pixels-page.Width*s.Ratio) > 1 {
				t.Errorf("the page is %vx%v with %v pixels across, want %vx%v and one for each of the device's", page.Width, page.Height, page.Pixels, tt.width, tt.height)
			}
			if across, down := tt.width > float64(s.Width), tt.height > float64(s.Height); across != (page.Across > 0) || down != (page.Down > 0) {
				t.Errorf("the page scrolls by %v across and %v down, want only what is missing", page.Across, page.Down)
			}
			// The keyboard brings everything into view.
			for _, id := range []string{"control 0", "target", "hand in"} {
				l.tabTo(id)
				l.settle()
				if b := l.box(id); b.X < -1 || b.Y < -1 || b.Right() > float64(s.Width)+1 || b.Bottom() > float64(s.Height)+1 {
					t.Errorf("with the focus, %q lies at %v, out of view", id, b)
				}
			}
			// A finger or the mouse meets what is seen, wherever the page stands.
			poke := l.Click
			if s.Touch {
				poke = l.Tap
			}
			poke(l.Middle(widget("yours")))
			if l.attribute("yours", "aria-pressed") != "true" {
				t.Error("the button for the learner's own sound is not met")
			}
			poke(l.Middle(widget("yours")))
			l.bring("control 0")
			l.moves("control 0", func() { poke(l.onScale("control 0", 0.9)) })
			if page.Down > 0 && s.Touch {
				l.pansByFinger()
			}
		})
	}
}

// bring scrolls a widget into view.
func (l *learner) bring(id string) {
	l.t.Helper()
	l.Eval(`document.querySelector('`+widget(id)+`').scrollIntoView({ block: "center", inline: "center" })`, nil)
	l.settle()
}

// pansByFinger checks that a finger scrolls the page from a picture, and moves a ruler instead where it
// starts on one.
func (l *learner) pansByFinger() {
	l.t.Helper()
	var before, after float64
	l.bring("control 0")
	l.Eval("scrollY", &before)
	from := l.onScale("control 0", 0.5)
	value := l.place("control 0")
	l.Drag(from, Point{from.X + 10, from.Y + 20}, Point{from.X + 25, from.Y + 40}, Point{from.X + 40, from.Y + 40})
	l.settle()
	if l.Eval("scrollY", &after); after != before {
		l.t.Errorf("a drag on a ruler scrolled the page from %v to %v", before, after)
	}
	if l.place("control 0") == value {
		l.t.Error("a drag did not move the ruler")
	}
	l.Eval("scrollTo(0, 0)", nil)
	l.settle()
	l.Drag(Point{90, 180}, Point{90, 150}, Point{90, 120}, Point{90, 90}, Point{90, 60})
	l.Wait("scrollY > 40", 5*time.Second)
}
