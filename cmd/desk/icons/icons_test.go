package icons

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"partialcredit/cmd/desk/measure"
)

// TestIconsAreThoseOfTheDrawing paints the icons anew and compares: whoever changes web/icon.svg runs
// `go run ./cmd/desk icons`. Another browser may round a colour differently.
func TestIconsAreThoseOfTheDrawing(t *testing.T) {
	if _, err := measure.FindBrowser(); err != nil {
		t.Fatal(err)
	}
	web := filepath.Join("..", "..", "..", "web")
	svg, err := os.ReadFile(filepath.Join(web, "icon.svg"))
	if err != nil {
		t.Fatal(err)
	}
	made, err := Make(string(svg))
	if err != nil {
		t.Fatal(err)
	}
	for _, icon := range All {
		f, err := os.Open(filepath.Join(web, "icons", icon.Name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		kept, err := png.Decode(f)
		if err != nil {
			t.Fatalf("%s: %v", icon.Name, err)
		}
		if kept.Bounds() != image.Rect(0, 0, icon.Size, icon.Size) {
			t.Fatalf("%s is %v", icon.Name, kept.Bounds())
		}
		if differ := share(kept, made[icon.Name]); differ > 0.001 {
			t.Errorf("%s differs from the drawing in %.1f %% of its pixels: run `go run ./cmd/desk icons`", icon.Name, 100*differ)
		}
		// Round corners show what is behind; a system's own corners must not.
		_, _, _, corner := kept.At(0, 0).RGBA()
		if clear := corner == 0; clear != (icon.Scale == 0) {
			t.Errorf("%s has the corner opacity %d", icon.Name, corner)
		}
	}
}

// share is the part of the pixels that differ by more than 4 of 255.
func share(a, b image.Image) float64 {
	const most = 4 * 257
	far := func(x, y uint32) bool { return x > y+most || y > x+most }
	size, n := a.Bounds().Size(), 0
	for y := range size.Y {
		for x := range size.X {
			r, g, bl, al := a.At(x, y).RGBA()
			r2, g2, b2, al2 := b.At(x, y).RGBA()
			if far(r, r2) || far(g, g2) || far(bl, b2) || far(al, al2) {
				n++
			}
		}
	}
	return float64(n) / float64(size.X*size.Y)
}

// What is drawn on a maskable icon lies within the circle that every mask leaves (W3C Web Application
// Manifest, "Icon masks and safe zone": a radius of two fifths of the width).
func TestMaskLeavesTheDrawing(t *testing.T) {
	f, err := os.Open(filepath.Join("..", "..", "..", "web", "icons", "maskable-512.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	drawn := 0
	for y := range 512 {
		for x := range 512 {
			// Ink and pen lack at least one of the three lights; paper and squares do not.
			r, g, b, _ := picture.At(x, y).RGBA()
			if min(r, g, b) > 0x8000 {
				continue
			}
			drawn++
			dx, dy := float64(x)+0.5-256, float64(y)+0.5-256
			if radius := 0.4 * 512; dx*dx+dy*dy > radius*radius {
				t.Fatalf("the pixel at %d, %d is cut off", x, y)
			}
		}
	}
	if drawn < 5000 {
		t.Errorf("only %d pixels were drawn", drawn)
	}
}
