package scan

import (
	"iter"
	"math"

	"github.com/makiuchi-d/gozxing"
	multi "github.com/makiuchi-d/gozxing/multi/qrcode/detector"
	"github.com/makiuchi-d/gozxing/qrcode/decoder"
	"github.com/makiuchi-d/gozxing/qrcode/detector"
)

var harder = map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true}

// mostCorners is how many sets of three corners are tried: inside a large code other things look like
// one. A design choice.
const mostCorners = 8

// sizes are tried around the one that the corners suggest, in modules on a side. Seen from a slant or
// blurred, a module is measured off by a few per cent, and a large code by several versions.
var sizes = [...]int{0, 4, -4, 8, -8, 12, -12}

// candidates are grids of modules that may be a code, the likeliest first.
func candidates(dark *gozxing.BitMatrix) iter.Seq[*gozxing.BitMatrix] {
	return func(yield func(*gozxing.BitMatrix) bool) {
		var corners []*detector.FinderPatternInfo
		if best, err := detector.NewFinderPatternFinder(dark, nil).Find(harder); err == nil {
			corners = append(corners, best)
		}
		if more, err := multi.NewMultiFinderPatternFinder(dark, nil).FindMulti(harder); err == nil {
			corners = append(corners, more...)
		}
		for _, c := range corners[:min(len(corners), mostCorners)] {
			module := (c.GetTopLeft().GetEstimatedModuleSize() + c.GetTopRight().GetEstimatedModuleSize() + c.GetBottomLeft().GetEstimatedModuleSize()) / 3
			if module < 1 {
				continue
			}
			across := (gozxing.ResultPoint_Distance(c.GetTopLeft(), c.GetTopRight()) + gozxing.ResultPoint_Distance(c.GetTopLeft(), c.GetBottomLeft())) / 2
			likely := 17 + 4*int(math.Round((across/module+7-17)/4))
			for _, more := range sizes {
				if bits := grid(dark, c, likely+more); bits != nil && !yield(bits) {
					return
				}
			}
		}
	}
}

// grid takes so many modules a side from between three corners, nil where that is no size of a code.
func grid(dark *gozxing.BitMatrix, c *detector.FinderPatternInfo, size int) *gozxing.BitMatrix {
	version, err := decoder.Version_GetProvisionalVersionForDimension(size)
	if err != nil {
		return nil
	}
	var fourth *detector.AlignmentPattern
	if len(version.GetAlignmentPatternCenters()) > 0 {
		fourth = alignment(dark, c, size)
	}
	transform := detector.Detector_createTransform(c.GetTopLeft(), c.GetTopRight(), c.GetBottomLeft(), fourth, size)
	bits, err := detector.Detector_sampleGrid(dark, transform, size)
	if err != nil {
		return nil
	}
	return bits
}

// alignment finds the small square near the fourth corner, in wider and wider surroundings of where it
// is if the code is seen from the front; nil where there is none.
func alignment(dark *gozxing.BitMatrix, c *detector.FinderPatternInfo, size int) *detector.AlignmentPattern {
	a, b, d := c.GetTopLeft(), c.GetTopRight(), c.GetBottomLeft()
	module := (gozxing.ResultPoint_Distance(a, b) + gozxing.ResultPoint_Distance(a, d)) / 2 / float64(size-7)
	by := 1 - 3/float64(size-7)
	x, y := a.GetX()+by*(b.GetX()+d.GetX()-2*a.GetX()), a.GetY()+by*(b.GetY()+d.GetY()-2*a.GetY())
	for around := 4.0; around <= 16; around *= 2 {
		x0, x1 := max(0, int(x-around*module)), min(dark.GetWidth()-1, int(x+around*module))
		y0, y1 := max(0, int(y-around*module)), min(dark.GetHeight()-1, int(y+around*module))
		if min(x1-x0, y1-y0) < int(3*module) {
			continue
		}
		if found, err := detector.NewAlignmentPatternFinder(dark, x0, y0, x1-x0, y1-y0, module, nil).Find(); err == nil {
			return found
		}
	}
	return nil
}
