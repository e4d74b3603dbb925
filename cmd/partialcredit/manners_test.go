//go:build !js

package main_test

import (
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
)

func TestTabLeavesTheCanvas(t *testing.T) {
	p := Open(t, Visit{})
	p.Started()
	p.Eval(`(() => {
		const add = (id, where) => { const b = document.createElement('button'); b.id = id; b.style.position = 'fixed'; where(b); };
		add('before', b => document.body.prepend(b));
		add('after', b => document.body.append(b));
		document.querySelector('canvas').focus();
	})()`, nil)
	if got := p.Focused(); got != "CANVAS" {
		t.Fatalf("the focus is on %s at first, want CANVAS", got)
	}
	p.Press("Tab")
	if got := p.Focused(); got == "CANVAS" {
		t.Error("Tab did not leave the canvas")
	}
	p.Eval(`document.querySelector('canvas').focus()`, nil)
	p.Press("Tab", input.ModifierShift)
	if got := p.Focused(); got == "CANVAS" {
		t.Error("Shift+Tab did not leave the canvas")
	}
}

func TestPageHoldsStill(t *testing.T) {
	t.Parallel()
	for _, s := range []Screen{{320, 568, 1, true}, Phone, Tablet, {2560, 1440, 1, false}} {
		p := Open(t, Visit{Screen: s})
		p.Started()
		var got struct {
			Viewports           []string
			Scrolls, TabIndex   int
			Touch, Over, Select string
			Background          string
			Width, Height       int64
		}
		p.Eval(`(() => {
			const style = getComputedStyle(document.body), canvas = document.querySelector('canvas'), root = document.scrollingElement;
			return {
				viewports: [...document.querySelectorAll('meta[name=viewport]')].map(m => m.content),
				scrolls: Math.max(root.scrollHeight - root.clientHeight, root.scrollWidth - root.clientWidth),
				tabIndex: canvas.tabIndex, touch: getComputedStyle(canvas).touchAction,
				over: style.overscrollBehaviorY, select: style.userSelect, background: style.backgroundColor,
				width: canvas.clientWidth, height: canvas.clientHeight,
			};
		})()`, &got)
		if want := []string{"width=device-width, initial-scale=1, viewport-fit=cover, interactive-widget=resizes-visual"}; !slices.Equal(got.Viewports, want) {
			t.Errorf("viewports %q, want %q", got.Viewports, want)
		}
		if got.Scrolls != 0 || got.TabIndex != -1 || got.Touch != "none" || got.Over != "none" || got.Select != "none" {
			t.Errorf("%+v: want no scrolling, tab index -1, and none for touch, overscroll and selection", got)
		}
		if got.Background != "rgb(251, 248, 239)" {
			t.Errorf("background %s, want the paper", got.Background)
		}
		if got.Width != s.Width || got.Height != s.Height {
			t.Errorf("the canvas is %dx%d on a screen of %dx%d", got.Width, got.Height, s.Width, s.Height)
		}
	}
}

// catchQuery keeps the page's query for its resolution: changing the ratio from outside does not make
// headless Chromium send the query's event, as moving to another screen does.
const catchQuery = `
const ask = window.matchMedia;
window.matchMedia = function (text) {
	const query = ask.call(window, text);
	if (text.includes('resolution')) window.asked = query;
	return query;
};`

func TestOtherPixelRatioReloads(t *testing.T) {
	tests := []struct {
		name   string
		change func(*Page)
	}{
		{"zoom", func(p *Page) { p.SetScreen(Screen{Width: 960, Height: 600, Ratio: 1.5}) }},
		{"other screen", func(p *Page) {
			p.SetScreen(Screen{Width: 1440, Height: 900, Ratio: 1.5})
			p.Eval(`asked.dispatchEvent(new Event("change"))`, nil)
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			p := Open(t, Visit{Before: []string{catchQuery}})
			p.Started()
			tt.change(p)
			p.Wait(`performance.getEntriesByType("navigation")[0].type === "reload"`, 10*time.Second)
			p.Started()
			p.Wait(`document.querySelector("canvas").width === 1.5 * document.querySelector("canvas").clientWidth`, 5*time.Second)
		})
	}
}

func TestReloadsNeverLoop(t *testing.T) {
	t.Parallel()
	// The ratio differs after every load, as if a browser could not make up its mind.
	p := Open(t, Visit{Before: []string{`
		let ratio = 1;
		Object.defineProperty(window, 'devicePixelRatio', { configurable: true, get: () => ratio });
		localStorage.loads = Number(localStorage.loads || 0) + 1;
		addEventListener('load', () => { ratio = 2; dispatchEvent(new Event('resize')); });`}})
	p.Wait(`Number(localStorage.loads) >= 4`, limit)
	// A fifth load would come this soon after the fourth, with the page's patience of 400 ms.
	p.Wait(`performance.getEntriesByType("navigation")[0].loadEventEnd > 0 && performance.now() - performance.getEntriesByType("navigation")[0].loadEventEnd > 2000`, limit)
	var loads string
	p.Eval(`localStorage.loads`, &loads)
	if loads != "4" {
		t.Errorf("the page was loaded %s times, want 4: once and three times again", loads)
	}
}

func TestResizingAloneDoesNotReload(t *testing.T) {
	t.Parallel()
	p := Open(t, Visit{})
	p.Started()
	p.SetScreen(Screen{Width: 1180, Height: 820, Ratio: 1})
	time.Sleep(time.Second)
	var kind string
	p.Eval(`performance.getEntriesByType("navigation")[0].type`, &kind)
	if kind != "navigate" {
		t.Errorf("the page was loaded again (%s)", kind)
	}
}

func TestLoadingPageFollowsTheSystemTheme(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct{ theme, want string }{{"light", "rgb(251, 248, 239)"}, {"dark", "rgb(19, 32, 27)"}} {
		// Without WebAssembly the panel stays.
		p := Open(t, Visit{Screen: Tablet, Before: []string{`delete globalThis.WebAssembly`}})
		p.Media("prefers-color-scheme", tt.theme)
		var got string
		p.Eval(`getComputedStyle(document.body).backgroundColor`, &got)
		if got != tt.want {
			t.Errorf("%s: background %s, want %s", tt.theme, got, tt.want)
		}
		p.Screenshot("theme-" + tt.theme + ".png")
	}
}
