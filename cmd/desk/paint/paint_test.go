package paint

import (
	"image"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/srwiley/oksvg"
	"github.com/srwiley/rasterx"

	"partialcredit/game/figure"
	"partialcredit/game/plot"
	"partialcredit/synth"
)

// What is painted is what a general-purpose renderer makes of the same picture's SVG; it knows no
// text, so that is left out.
func TestPixelsAreThoseOfTheSVG(t *testing.T) {
	a, b := synth.Default(), synth.Default()
	a.A.Shape, a.A.Duty = synth.Pulse, 0.3
	s, target := figure.OfSound(a), figure.OfSound(b)
	size := figure.Size{W: 960, H: 540}
	for name, d := range map[string]*figure.Drawing{
		"paper":       figure.Both(figure.Options{Size: size}, s, &target),
		"transparent": figure.Both(figure.Options{Size: size, Ground: figure.Chalk}, s, &target),
		"sweep":       figure.Sweep(figure.Options{Size: size}, figure.AlongTime(1, figure.Words{}), figure.NoteAt(s)),
	} {
		var shapes []figure.Shape
		for _, s := range d.Shapes {
			// Where a dash ends on a line of thousands of pieces hangs on the rounding of their lengths,
			// which is coarse there: 1/64 of a pixel. TestDashes looks at them.
			long := s.Dash[0] > 0 && len(s.Points) > 4
			if s.Kind != figure.Label && !long {
				shapes = append(shapes, s)
			}
		}
		d.Shapes = shapes
		got, err := Image(d)
		if err != nil {
			t.Fatal(err)
		}
		icon, err := oksvg.ReadIconStream(strings.NewReader(d.SVG()), oksvg.StrictErrorMode)
		if err != nil {
			t.Fatal(err)
		}
		want := image.NewRGBA(got.Bounds())
		icon.SetTarget(0, 0, 960, 540)
		icon.Draw(rasterx.NewDasher(960, 540, rasterx.NewScannerGV(960, 540, want, want.Bounds())), 1)
		far, sum := 0, 0.0
		for y := range 540 {
			for x := range 960 {
				r, g, b, alpha := got.At(x, y).RGBA()
				p, q, s, beta := want.At(x, y).RGBA()
				off := 0.0
				for _, d := range [...][2]uint32{{r, p}, {g, q}, {b, s}, {alpha, beta}} {
					off = math.Max(off, math.Abs(float64(d[0])-float64(d[1]))/65535)
				}
				if sum += off; off > 0.25 {
					far++
				}
			}
		}
		t.Logf("%s: %d of 518400 pixels differ by more than a quarter, on average %.4f", name, far, sum/518400)
		// Soft edges are worked out differently.
		if far > 150 || sum/518400 > 0.002 {
			t.Errorf("%s: %d pixels differ by more than a quarter, on average %.4f", name, far, sum/518400)
		}
	}
}

func TestDashes(t *testing.T) {
	got := dashes([]plot.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 10, Y: 13}}, [2]float64{7, 4})
	want := [][]plot.Point{{{X: 0}, {X: 7}}, {{X: 10, Y: 1}, {X: 10, Y: 8}}, {{X: 10, Y: 12}, {X: 10, Y: 13}}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Text stands where it should: its middle, its right end and its base line.
func TestTextIsAligned(t *testing.T) {
	for _, c := range []struct {
		align  figure.Align
		turned bool
		want   image.Rectangle
	}{
		{figure.Left, false, image.Rect(100, 78, 161, 100)},
		{figure.Middle, false, image.Rect(70, 78, 130, 100)},
		{figure.Right, false, image.Rect(39, 78, 100, 100)},
		{figure.Middle, true, image.Rect(78, 70, 100, 130)},
	} {
		img, err := Image(&figure.Drawing{W: 200, H: 200, Shapes: []figure.Shape{{
			Kind: figure.Label, Points: []plot.Point{{X: 100, Y: 100}}, Text: "HHH", Size: 30, Alpha: 1, Align: c.align, Turned: c.turned,
		}}})
		if err != nil {
			t.Fatal(err)
		}
		var got image.Rectangle
		for y := range 200 {
			for x := range 200 {
				if img.NRGBAAt(x, y).A > 128 {
					got = got.Union(image.Rect(x, y, x+1, y+1))
				}
			}
		}
		// Capital letters of the Go font are 0.72 of the size tall, and H is 0.68 of it wide (measured).
		near := func(a, b int) bool { return a-b <= 4 && b-a <= 4 }
		if !near(got.Min.X, c.want.Min.X) || !near(got.Max.X, c.want.Max.X) || !near(got.Min.Y, c.want.Min.Y) || !near(got.Max.Y, c.want.Max.Y) {
			t.Errorf("align %d, turned %v: %v, want about %v", c.align, c.turned, got, c.want)
		}
	}
}
