//go:build !js

package main_test

import (
	"fmt"
	"image/color"
	"math"
	"testing"
	"time"

	"partialcredit/game/ui"
)

// Every size is shown at a ratio, after another size at the same ratio.
func TestCrispAtEverySizeAndRatio(t *testing.T) {
	for _, tt := range []struct {
		ratio float64
		touch bool
		sizes [][2]int64
	}{
		{1, false, [][2]int64{{1440, 900}, {2560, 1440}}},
		{1.5, true, [][2]int64{{568, 320}, {1180, 820}}},
		{2, true, [][2]int64{{390, 844}, {844, 391}}},
		{3, true, [][2]int64{{320, 568}, {568, 320}}},
	} {
		t.Run(fmt.Sprint(tt.ratio), func(t *testing.T) {
			t.Parallel()
			var l *learner
			for i, size := range tt.sizes {
				s := Screen{size[0], size[1], tt.ratio, tt.touch}
				if i == 0 {
					l = resume(t, at("two-at-once"), Visit{Screen: s})
				} else {
					l.SetScreen(s)
				}
				l.isCrisp(s)
				l.holdsStill(s)
			}
		})
	}
}

// isCrisp checks that the canvas has a pixel for each of the device's.
func (l *learner) isCrisp(s Screen) {
	l.t.Helper()
	w, h := float64(s.Width)*s.Ratio, float64(s.Height)*s.Ratio
	const canvas = `document.querySelector("canvas")`
	l.Wait(fmt.Sprintf(`innerWidth === %d && %s.clientWidth === %d && Math.abs(%s.width - %v) < 1 && Math.abs(%s.height - %v) < 1`,
		s.Width, canvas, s.Width, canvas, w, canvas, h), 10*time.Second)
	l.settle()
	// The squared paper at the upper left of the trace, where nothing else is drawn, has the pure colours
	// of the paper and of its lines, which are 0.8 px wide or the nearest whole number of the device's
	// pixels: a picture that was stretched has other colours or other widths.
	paper := at("two-at-once").scene(s).Trace.Rect
	paper = ui.Rect{X: math.Ceil(paper.X) + 2, Y: math.Ceil(paper.Y) + 2, W: paper.W / 2, H: 0.07 * paper.H}
	picture := l.Picture(paper)
	seen, others, all := map[color.RGBA]bool{}, 0, 0
	b := picture.Bounds()
	most, widths := 0, map[int]int{} // of the row with the most paper: the others lie in a line across
	for y := b.Min.Y; y < b.Max.Y; y++ {
		bare, run, row := 0, 0, map[int]int{}
		for x := b.Min.X; x < b.Max.X; x++ {
			c, pure := nearest(picture.At(x, y))
			seen[c] = true
			if c != bookPaper {
				run++
			} else {
				if bare++; run > 0 && bare > 1 { // not cut off at the left
					row[run]++
				}
				run = 0
			}
			if all++; !pure {
				others++
			}
		}
		if bare > most {
			most, widths = bare, row
		}
	}
	if hair := int(max(1, math.Round(0.8*s.Ratio))); len(widths) != 1 || widths[hair] < 3 {
		l.t.Errorf("%dx%d at %v: the lines of the paper are so many pixels wide, so often: %v; want only %d", s.Width, s.Height, s.Ratio, widths, hair)
	}
	if others > 0 || len(seen) < 2 {
		l.t.Errorf("%dx%d at %v: %d of %d pixels of squared paper have blurred colours; %d pure colours", s.Width, s.Height, s.Ratio, others, all, len(seen))
	}
}

var bookPaper = color.RGBA{0xFB, 0xF8, 0xEF, 255}

// nearest is the colour of squared paper that is nearest, and whether it is the same but for rounding.
func nearest(c color.Color) (near color.RGBA, same bool) {
	got := color.RGBAModel.Convert(c).(color.RGBA)
	least := 1 << 10
	for _, p := range []color.RGBA{bookPaper, {0xD5, 0xE4, 0xE8, 255}, {0xB9, 0xD2, 0xD9, 255}} {
		if d := max(apart(got.R, p.R), apart(got.G, p.G), apart(got.B, p.B)); d < least {
			least, near = d, p
		}
	}
	return near, least <= 2
}

// holdsStill checks that all there is lies within the screen and nothing scrolls.
func (l *learner) holdsStill(s Screen) {
	l.t.Helper()
	var got struct {
		Scrolls float64
		Out     []string
		Small   []string
	}
	l.Eval(`(() => {
		scrollTo(0, 100);
		const out = [], small = [];
		for (const e of document.querySelectorAll('[data-widget]')) {
			const r = e.getBoundingClientRect();
			if (r.left < 0 || r.top < 0 || r.right > innerWidth || r.bottom > innerHeight) out.push(e.dataset.widget);
			if (r.width < 43.9 || r.height < 43.9) small.push(e.dataset.widget);
		}
		const root = document.scrollingElement;
		return { scrolls: Math.max(scrollY, scrollX, root.scrollHeight - root.clientHeight, root.scrollWidth - root.clientWidth), out, small };
	})()`, &got)
	if got.Scrolls != 0 || len(got.Out) > 0 {
		l.t.Errorf("%dx%d: scrolls by %v, outside the screen: %q", s.Width, s.Height, got.Scrolls, got.Out)
	}
	if len(got.Small) > 0 {
		l.t.Errorf("%dx%d: smaller than a finger: %q", s.Width, s.Height, got.Small)
	}
}
