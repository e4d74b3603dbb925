//go:build !js

package main_test

import (
	"image"
	"image/color"
	"math"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"

	"partialcredit/game/ui"
)

// prefer sets several preferences at once, as name and value by turns.
func (p *Page) prefer(pairs ...string) {
	p.t.Helper()
	var features []*emulation.MediaFeature
	for i := 0; i+1 < len(pairs); i += 2 {
		features = append(features, &emulation.MediaFeature{Name: pairs[i], Value: pairs[i+1]})
	}
	p.do("setting preferences", emulation.SetEmulatedMedia().WithFeatures(features))
}

// TestContrastFollowsTheSystem changes the preference while the app runs.
func TestContrastFollowsTheSystem(t *testing.T) {
	k := at("shape")
	k.Page = "contents"
	l := resume(t, k, Visit{})
	corner := ui.Rect{X: 1434, Y: 894, W: 4, H: 4} // bare paper
	for _, tt := range []struct {
		when  string
		pairs []string
		want  color.RGBA
	}{
		{"more contrast", []string{"prefers-contrast", "more"}, color.RGBA{255, 255, 255, 255}},
		{"no preference", nil, color.RGBA{0xFB, 0xF8, 0xEF, 255}},
		{"more contrast, dark", []string{"prefers-contrast", "more", "prefers-color-scheme", "dark"}, color.RGBA{0, 0, 0, 255}},
		{"forced colours, light", []string{"forced-colors", "active", "prefers-color-scheme", "light"}, color.RGBA{255, 255, 255, 255}},
		{"forced colours, dark", []string{"forced-colors", "active", "prefers-color-scheme", "dark"}, color.RGBA{0, 0, 0, 255}},
	} {
		l.prefer(tt.pairs...)
		var got color.RGBA
		for deadline := time.Now().Add(5 * time.Second); got != tt.want && time.Now().Before(deadline); {
			l.settle()
			m := l.Picture(corner)
			got = color.RGBAModel.Convert(m.At(m.Bounds().Min.X, m.Bounds().Min.Y)).(color.RGBA)
		}
		if got != tt.want {
			t.Errorf("%s: the ground is %v, want %v", tt.when, got, tt.want)
		}
	}
}

// watchPictures keeps when each frame was begun that drew a picture anew. The library shows its last
// picture in up to four more frames, with one call to draw each.
const watchPictures = `
window.pictures = [];
window.calls = []; // to draw, frame by frame
window.gaps = () => pictures.slice(1).map((t, i) => t - pictures[i]);
{
	let drew = 0;
	for (const name of ['drawElements', 'drawArrays']) {
		const draw = WebGL2RenderingContext.prototype[name];
		WebGL2RenderingContext.prototype[name] = function () { drew++; return draw.apply(this, arguments); };
	}
	const request = requestAnimationFrame;
	window.requestAnimationFrame = f => request.call(window, time => {
		drew = 0;
		const from = performance.now();
		f(time);
		calls.push(drew);
		if (drew > 2) pictures.push(from);
	});
}`

// TestReducedMotion times the pictures while a modulated sound plays.
func TestReducedMotion(t *testing.T) {
	l := resume(t, at("tremolo"), Visit{Screen: Phone, Before: []string{countFrames, watchPictures}})
	l.calms() // what is drawn ahead is no picture
	l.press("yours")
	l.Wait(`soundTap.counts().sounding > 0`, 10*time.Second)
	l.settle()
	l.Eval("pictures.length = 0", nil)
	l.Wait("gaps().filter(g => g < 300).length > 2", limit) // it moves

	l.prefer("prefers-reduced-motion", "reduce")
	l.settle()
	l.Eval("pictures.length = 0", nil)
	l.Wait("pictures.length > 3", limit)
	var least float64
	l.Eval("Math.min(...gaps())", &least)
	var calls []int
	l.Eval("calls.slice(-120)", &calls)
	t.Logf("calls to draw in the last frames: %v", calls)
	if least < 450 { // the app waits 500 ms; its clock and this one are not read at once
		t.Errorf("where little is to move, two pictures follow each other after %.0f ms", least)
	}
	// What a person does is seen at once, and the last picture is not left out.
	l.Eval("calls.length = 0", nil)
	l.press("yours")
	l.Wait("calls.some(n => n > 0)", 5*time.Second)
}

// flashArea is the least area that counts for a general flash: a quarter of any 341 by 256 pixels of a
// 1024 by 768 screen (WCAG 2.2, definition of "general flash and red flash thresholds").
const flashArea = 341 * 256 / 4

// TestNothingFlashes plays a tremolo of 3 Hz and compares every two of the pictures seen meanwhile: by
// WCAG's definition a flash takes an area whose relative luminance changes by a tenth or more. No two
// pictures differ so over that much, all changing pixels of the screen counted wherever they lie; so
// nothing can flash, at whatever rate.
func TestNothingFlashes(t *testing.T) {
	k := at("tremolo")
	k.Settings = []float64{3}
	l := resume(t, k, Visit{Screen: Screen{1024, 768, 1, false}})
	all := ui.Rect{W: 1024, H: 768}
	l.keyboard = true
	l.press("yours")
	l.Wait(`soundTap.counts().sounding > 0`, 10*time.Second)
	var seen [][]float64
	for range 14 {
		seen = append(seen, luminances(l.Picture(all)))
	}
	most := 0
	for i := range seen {
		for j := range i {
			most = max(most, changed(seen[i], seen[j]))
		}
	}
	t.Logf("between two of %d pictures at most %d pixels change by a tenth of the greatest luminance; a flash takes %d", len(seen), most, flashArea)
	if most >= flashArea {
		t.Errorf("%d pixels change: that may flash", most)
	}
	if most < 500 {
		t.Errorf("only %d pixels change: the picture does not move, or is not seen", most)
	}
	l.press("yours")
	l.settle()
	before := luminances(l.Picture(all))
	l.prefer("prefers-color-scheme", "dark") // the whole page changes: the measure must notice
	time.Sleep(500 * time.Millisecond)
	if n := changed(before, luminances(l.Picture(all))); n < flashArea {
		t.Errorf("from paper to blackboard only %d pixels change: the measure is blind", n)
	}
}

// luminances are the relative luminances of the pixels (WCAG 2.2).
func luminances(m image.Image) (all []float64) {
	linear := func(c uint32) float64 {
		v := float64(c) / 0xFFFF
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	known := map[color.Color]float64{}
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := m.At(x, y)
			v, ok := known[c]
			if !ok {
				r, g, b, _ := c.RGBA()
				v = 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
				known[c] = v
			}
			all = append(all, v)
		}
	}
	return all
}

// changed counts the pixels whose luminance differs by a tenth or more.
func changed(a, b []float64) (n int) {
	for i := range a {
		if math.Abs(a[i]-b[i]) >= 0.1 {
			n++
		}
	}
	return n
}
