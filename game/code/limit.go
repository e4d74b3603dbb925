package code

// Camera is the largest version that is offered to a camera: a design choice, measured in
// testdata/measured/codes.md.
const Camera = 25

// ForCamera reports whether a camera held in front of a screen reads the code. Of a larger one, say
// that it is too large, and offer the link or the file.
func (c Code) ForCamera() bool { return c.Size > 0 && c.Version() <= Camera }
