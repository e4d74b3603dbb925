// Package scan reads QR codes from pictures.
package scan

import (
	"github.com/makiuchi-d/gozxing"
	multi "github.com/makiuchi-d/gozxing/multi/qrcode"
	"github.com/makiuchi-d/gozxing/qrcode"
)

// A Picture is grey, row by row from the top, 0 black and 255 white.
type Picture struct {
	W, H int
	Grey []byte
}

// GreyOf makes grey of RGBA, whatever its alpha: the sum of the parts weighed 1, 2 and 1.
func GreyOf(rgba []byte, w, h int) Picture {
	p := Picture{w, h, make([]byte, w*h)}
	for i := range p.Grey {
		p.Grey[i] = byte((int(rgba[4*i]) + 2*int(rgba[4*i+1]) + int(rgba[4*i+2])) / 4)
	}
	return p
}

var harder = map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true}

// Read looks for a code in a picture, upright or turned.
func Read(p Picture) (text string, found bool) {
	if p.W < 21 || p.H < 21 || len(p.Grey) != p.W*p.H { // the smallest code has 21 modules on a side
		return "", false
	}
	source, err := gozxing.NewPlanarYUVLuminanceSource(p.Grey, p.W, p.H, 0, 0, p.W, p.H, false)
	if err != nil {
		return "", false
	}
	bitmap, err := gozxing.NewBinaryBitmap(gozxing.NewHybridBinarizer(source))
	if err != nil {
		return "", false
	}
	if result, err := qrcode.NewQRCodeReader().Decode(bitmap, harder); err == nil {
		return result.GetText(), true
	}
	// Inside a large code something may look like a corner of it. This reader tries one after the other.
	if results, err := multi.NewQRCodeMultiReader().DecodeMultiple(bitmap, harder); err == nil && len(results) > 0 {
		return results[0].GetText(), true
	}
	return "", false
}
