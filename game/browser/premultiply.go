package browser

// premultiply turns pixels as a canvas tells them (HTML, ImageData: not premultiplied) into those that
// are drawn.
func premultiply(pixels []byte) {
	for i := 0; i+3 < len(pixels); i += 4 {
		alpha := uint32(pixels[i+3])
		for k := i; k < i+3; k++ {
			pixels[k] = byte((uint32(pixels[k])*alpha + 127) / 255)
		}
	}
}
