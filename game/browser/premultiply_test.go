package browser

import (
	"image/color"
	"testing"
)

// The pixels are those that image/color makes of them.
func TestPremultiply(t *testing.T) {
	for alpha := range 256 {
		for v := range 256 {
			got := []byte{byte(v), 255, 0, byte(alpha), 9}
			premultiply(got)
			r, g, b, a := color.NRGBA{byte(v), 255, 0, byte(alpha)}.RGBA()
			for i, want := range []uint32{r, g, b, a} {
				if d := int(got[i]) - int((want*255+32767)/65535); d < -1 || d > 1 {
					t.Fatalf("%d of 255 at an alpha of %d: %v", v, alpha, got)
				}
			}
			if got[4] != 9 {
				t.Fatal("half a pixel was changed")
			}
		}
	}
}
