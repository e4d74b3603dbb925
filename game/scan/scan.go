// Package scan reads QR codes from pictures. Gozxing finds their corners and decodes what lies between;
// this package tries it at several scales and for several sizes of code, where gozxing would give up.
package scan

import (
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode/decoder"
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

// half is the picture at half its size: each pixel is the mean of four, with half their noise.
func (p Picture) half() Picture {
	q := Picture{W: p.W / 2, H: p.H / 2}
	q.Grey = make([]byte, q.W*q.H)
	for i := range q.Grey {
		at := 2*(i/q.W)*p.W + 2*(i%q.W)
		q.Grey[i] = byte((int(p.Grey[at]) + int(p.Grey[at+1]) + int(p.Grey[at+p.W]) + int(p.Grey[at+p.W+1]) + 2) / 4)
	}
	return q
}

const (
	smallest = 21  // pixels on a side of a picture that may hold a code: a module each
	halving  = 400 // pixels on the shorter side above which half the size is tried first: a design choice
)

// Read looks for a code in a picture, upright or turned. Large modules are found at small scales, where
// the noise within them is gone; that is quick, too, so it comes first.
func Read(p Picture) (text string, found bool) {
	if min(p.W, p.H) < smallest || len(p.Grey) != p.W*p.H {
		return "", false
	}
	if min(p.W, p.H) > halving {
		if text, found = Read(p.half()); found {
			return text, true
		}
	}
	dark, err := p.dark()
	if err != nil {
		return "", false
	}
	decode := decoder.NewDecoder()
	for bits := range candidates(dark) {
		if result, err := decode.Decode(bits, nil); err == nil {
			return result.GetText(), true
		}
	}
	return "", false
}

// dark says of each pixel whether it is darker than what lies around it.
func (p Picture) dark() (*gozxing.BitMatrix, error) {
	source, err := gozxing.NewPlanarYUVLuminanceSource(p.Grey, p.W, p.H, 0, 0, p.W, p.H, false)
	if err != nil {
		return nil, err
	}
	return gozxing.NewHybridBinarizer(source).GetBlackMatrix()
}
