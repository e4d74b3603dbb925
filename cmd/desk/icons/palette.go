package icons

import (
	"cmp"
	"image"
	"image/color"
	"maps"
	"slices"
)

// colours is how many an icon has at most: nobody sees the difference, and the file is half as large.
const colours = 200

// few paints a picture anew with its most frequent colours.
func few(painted image.Image) *image.Paletted {
	size := painted.Bounds()
	count := map[color.NRGBA]int{}
	at := func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(painted.At(x, y)).(color.NRGBA) }
	for y := range size.Dy() {
		for x := range size.Dx() {
			count[at(x, y)]++
		}
	}
	number := func(c color.NRGBA) int { return int(c.R)<<24 | int(c.G)<<16 | int(c.B)<<8 | int(c.A) }
	found := slices.SortedFunc(maps.Keys(count), func(a, b color.NRGBA) int {
		return cmp.Or(count[b]-count[a], number(a)-number(b))
	})
	var palette color.Palette
	for _, c := range found[:min(colours, len(found))] {
		palette = append(palette, c)
	}
	picture := image.NewPaletted(size, palette)
	for y := range size.Dy() {
		for x := range size.Dx() {
			picture.Set(x, y, at(x, y))
		}
	}
	return picture
}
