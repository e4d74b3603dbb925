//go:build !js

package main_test

import (
	"testing"
	"time"
)

func TestInputReachesThePage(t *testing.T) {
	const listen = `
	window.seen = [];
	for (const kind of ['pointerdown', 'pointermove', 'pointerup', 'pointercancel'])
		addEventListener(kind, e => seen.push(kind.slice(7) + ' ' + e.pointerType + ' ' + Math.round(e.clientX) + ',' + Math.round(e.clientY)), true);
	for (const kind of ['keydown', 'keyup'])
		addEventListener(kind, e => seen.push(kind + ' ' + e.key + ' ' + e.code + (e.shiftKey ? ' shift' : '')), true);`
	tests := []struct {
		name   string
		screen Screen
		act    func(*Page)
		want   string
	}{
		{"click", Desktop, func(p *Page) { p.Click(Point{30, 40}) },
			"move mouse 30,40|down mouse 30,40|up mouse 30,40"},
		{"tap", Phone, func(p *Page) { p.Tap(Point{30, 40}) },
			"down touch 30,40|up touch 30,40"},
		{"drag", Phone, func(p *Page) { p.Drag(Point{30, 400}, Point{80, 410}, Point{130, 420}) },
			"down touch 30,400|move touch 80,410|move touch 130,420|up touch 130,420"},
		{"two fingers", Phone, func(p *Page) {
			a := p.Touch(Point{30, 100})
			b := p.Touch(Point{30, 300})
			b.Move(Point{60, 300})
			a.Move(Point{70, 100})
			a.Lift()
			b.Move(Point{90, 300})
			b.Lift()
		}, "down touch 30,100|down touch 30,300|move touch 60,300|move touch 70,100|up touch 70,100|move touch 90,300|up touch 90,300"},
		{"cancelled touch", Phone, func(p *Page) { p.Touch(Point{30, 40}); p.TouchCancel() },
			"down touch 30,40|cancel touch 30,40"},
		{"keys", Desktop, func(p *Page) { p.Press("ArrowRight"); p.Press("Enter"); p.Press(" "); p.Press("t"); p.Press("Home") },
			"keydown ArrowRight ArrowRight|keyup ArrowRight ArrowRight|keydown Enter Enter|keyup Enter Enter|keydown   Space|keyup   Space|keydown t KeyT|keyup t KeyT|keydown Home Home|keyup Home Home"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := Open(t, Visit{Screen: tt.screen, Before: []string{listen}})
			p.Started()
			tt.act(p)
			time.Sleep(100 * time.Millisecond)
			var got string
			p.Eval(`seen.join("|")`, &got)
			if got != tt.want {
				t.Errorf("the page saw\n%s\nwant\n%s", got, tt.want)
			}
		})
	}
}
