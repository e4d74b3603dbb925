//go:build !js

package main_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"math"

	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"partialcredit/game/ui"
)

// Picture is what the page shows of a rectangle, in the device's pixels.
func (p *Page) Picture(r ui.Rect) image.Image {
	p.t.Helper()
	var data []byte
	clip := &cdpage.Viewport{X: math.Floor(r.X), Y: math.Floor(r.Y), Width: math.Ceil(r.W), Height: math.Ceil(r.H), Scale: 1}
	p.do("a screenshot", chromedp.ActionFunc(func(ctx context.Context) (err error) {
		data, err = cdpage.CaptureScreenshot().WithClip(clip).Do(ctx)
		return err
	}))
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		p.t.Fatal(err)
	}
	return m
}

// differing is the share of pixels that differ clearly: by more than a fifth of the way from black to
// white in some channel. Edges that are smoothed another way differ less.
func differing(a, b image.Image) float64 {
	if a.Bounds() != b.Bounds() {
		return 1
	}
	n, all := 0, 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			c, d := color.RGBAModel.Convert(a.At(x, y)).(color.RGBA), color.RGBAModel.Convert(b.At(x, y)).(color.RGBA)
			if apart(c.R, d.R) > 51 || apart(c.G, d.G) > 51 || apart(c.B, d.B) > 51 {
				n++
			}
			all++
		}
	}
	return float64(n) / float64(all)
}

func apart(a, b uint8) int { return max(int(a)-int(b), int(b)-int(a)) }

// around is a rectangle and so much about it.
func around(r ui.Rect, by float64) ui.Rect { return r.Inset(-by) }
