package view

import (
	"testing"

	"partialcredit/game"
	"partialcredit/game/code"
	"partialcredit/game/scan"
	"partialcredit/game/ui"
)

// What is drawn of a code is read again by gozxing, an independent decoder, in both themes, on the page
// and on a sheet over it; its modules are whole pixels of the device.
func TestDrawnCodesAreRead(t *testing.T) {
	const text = "https://example.org/#sheet=1.a-link_to-a_sheet-of_exercises-that_is-not_short"
	drawn, err := code.Encode(text, code.Auto)
	if err != nil {
		t.Fatal(err)
	}
	for _, th := range []*theme{&paper, &blackboard} {
		for _, scale := range []float64{1, 1.25, 2, 2.625, 3} {
			for _, panel := range []ui.Rect{{}, {X: 5, Y: 5, W: 300, H: 300}} {
				r := ui.Rect{X: 20.3, Y: 10.7, W: 250, H: 201}
				s := &game.Scene{W: 320, H: 320, Panel: panel, Code: &game.Code{Rect: r, Code: drawn}}
				c := testCanvas(scale)
				c.theme = th
				c.code(s, panel.W == 0)
				if len(c.vertices) > 0 {
					t.Fatalf("the code is drawn on the page for one over it, or the other way")
				}
				c.code(s, panel.W > 0)
				if e := c.extent(); !inside(e, r, 1) || e.W < 0.75*r.H {
					t.Errorf("scale %v: drawn at %v in %v", scale, e, r)
				}
				if got, found := scan.Read(c.flat(t, int(320*scale))); !found || got != text {
					t.Errorf("scale %v: read %q, %v", scale, got, found)
				}
			}
		}
	}
}

func TestNoCodeIsDrawnWhereThereIsNone(t *testing.T) {
	c := testCanvas(2)
	c.code(&game.Scene{}, false)
	c.code(&game.Scene{Code: &game.Code{Rect: ui.Rect{W: 100, H: 100}}}, false)
	if len(c.vertices) > 0 {
		t.Error("a code was drawn out of nothing")
	}
}

// flat paints the rectangles that were drawn, which must lie on whole pixels, on the theme's paper.
func (c *canvas) flat(t *testing.T, side int) scan.Picture {
	t.Helper()
	p := scan.Picture{W: side, H: side, Grey: make([]byte, side*side)}
	for i := range p.Grey {
		p.Grey[i] = byte(255 * c.paper[1])
	}
	for i := 0; i+3 < len(c.vertices); i += 4 {
		a, b := c.vertices[i], c.vertices[i+2]
		x0, y0, x1, y1 := int(a.DstX), int(a.DstY), int(b.DstX), int(b.DstY)
		if float32(x0) != a.DstX || float32(y0) != a.DstY || float32(x1) != b.DstX || float32(y1) != b.DstY {
			t.Fatalf("a rectangle from %v, %v to %v, %v", a.DstX, a.DstY, b.DstX, b.DstY)
		}
		for y := y0; y < y1; y++ {
			for x := x0; x < x1; x++ {
				p.Grey[y*side+x] = byte(255 * a.ColorG)
			}
		}
	}
	return p
}
