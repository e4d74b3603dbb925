//go:build !js

package main_test

import (
	"image/color"
	"testing"
	"time"

	"partialcredit/game/ui"
)

func TestThemes(t *testing.T) {
	k := at("shape")
	k.Page = "contents"
	l := resume(t, k, Visit{})
	const light, dark = "paper", "blackboard"
	want := func(when, theme string) {
		t.Helper()
		var got color.RGBA
		for deadline := time.Now().Add(5 * time.Second); time.Now().Before(deadline); {
			l.settle()
			m := l.Picture(ui.Rect{X: 1434, Y: 894, W: 4, H: 4}) // the page's lower right corner is bare
			got = color.RGBAModel.Convert(m.At(m.Bounds().Min.X, m.Bounds().Min.Y)).(color.RGBA)
			if got == (map[string]color.RGBA{light: {0xFB, 0xF8, 0xEF, 255}, dark: {0x13, 0x20, 0x1B, 255}}[theme]) {
				return
			}
		}
		t.Errorf("%s the background is %v, want %s", when, got, theme)
	}
	l.Media("prefers-color-scheme", "light")
	want("on a light device", light)
	l.Media("prefers-color-scheme", "dark")
	want("on a dark device", dark)
	l.press("theme")
	l.WaitText(widget("theme"), "Paper", 5*time.Second)
	want("with paper chosen on a dark device", light)
	l.Media("prefers-color-scheme", "light")
	l.press("theme")
	l.WaitText(widget("theme"), "Blackboard", 5*time.Second)
	want("with the blackboard chosen on a light device", dark)
	l.Wait(`JSON.parse(localStorage.getItem("partialcredit.progress")).theme === "blackboard"`, 5*time.Second)
	l.Reload()
	l.Started()
	want("after loading again", dark)
	l.press("theme")
	l.WaitText(widget("theme"), "As the device", 5*time.Second)
	want("as a light device", light)
	l.Media("prefers-color-scheme", "dark")
	want("as a dark device again", dark)
}
