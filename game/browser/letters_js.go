package browser

import (
	"image"
	"math"
	"strconv"
	"syscall/js"
)

// Letters draws text with the fonts of the system, for the view, in a canvas that is never shown.
type Letters struct {
	canvas, context js.Value
	font            string // that the context has
	w, h            int
	pixels          []byte
}

// Letters makes one. It is not ok where the browser does not tell what is on a canvas, so that
// nobody is recognised by their fonts: Firefox with resistFingerprinting gives noise.
func (p *Page) Letters() (l *Letters, ok bool) {
	l = &Letters{canvas: p.document.Call("createElement", "canvas")}
	l.context = l.canvas.Call("getContext", "2d", map[string]any{"willReadFrequently": true})
	if !l.context.Truthy() {
		return nil, false
	}
	l.resize(4, 4)
	l.read(4, 4)
	for _, v := range l.pixels {
		if v != 0 {
			return nil, false
		}
	}
	return l, true
}

// Advance is the width of a text in ems.
func (l *Letters) Advance(text string, bold, leftwards bool) float64 {
	const em = 100 // large, so that no font is fitted to pixels
	return l.measure(text, em, bold, leftwards).Get("width").Float() / em
}

// Draw letters a text, in white where the font has no colours of its own. Signs that reach far from
// their line are cut off.
func (l *Letters) Draw(text string, em float64, bold, leftwards bool, slant, shift float64) *image.RGBA {
	m := l.measure(text, em, bold, leftwards)
	reach := func(name string, most float64) float64 {
		return min(m.Get("actualBoundingBox"+name).Float(), most)
	}
	up, down := reach("Ascent", 1.6*em), reach("Descent", em)
	wide := m.Get("width").Float() + 2*em
	left, right := -reach("Left", wide)+shift-slant*down, reach("Right", wide)+shift+slant*up
	r := image.Rect(int(math.Floor(left))-1, int(math.Floor(-up))-1, int(math.Ceil(right))+1, int(math.Ceil(down))+1)
	if r.Dx() > l.w || r.Dy() > l.h {
		l.resize(max(r.Dx(), l.w), max(r.Dy(), l.h))
		l.measure(text, em, bold, leftwards) // a new size forgets the font
	}
	l.context.Call("setTransform", 1, 0, 0, 1, 0, 0)
	l.context.Call("clearRect", 0, 0, r.Dx(), r.Dy())
	l.context.Call("setTransform", 1, 0, -slant, 1, shift-float64(r.Min.X), -r.Min.Y)
	l.context.Call("fillText", text, 0, 0)
	l.read(r.Dx(), r.Dy())
	premultiply(l.pixels)
	return &image.RGBA{Pix: l.pixels, Stride: 4 * r.Dx(), Rect: r}
}

// measure sets the font and measures a text.
func (l *Letters) measure(text string, em float64, bold, leftwards bool) js.Value {
	font := strconv.FormatFloat(em, 'f', -1, 64) + `px system-ui, "DejaVu Sans", sans-serif` // as web/style.css
	if bold {
		font = "bold " + font
	}
	if font != l.font {
		l.font = font
		l.context.Set("font", font)
	}
	direction := "ltr"
	if leftwards {
		direction = "rtl"
	}
	l.context.Set("direction", direction)
	return l.context.Call("measureText", text)
}

// resize makes the canvas larger, which forgets all that was set.
func (l *Letters) resize(w, h int) {
	l.w, l.h, l.font = w, h, ""
	l.canvas.Set("width", w)
	l.canvas.Set("height", h)
	l.context.Set("fillStyle", "white")
	l.context.Set("textAlign", "left")
	l.context.Set("textRendering", "geometricPrecision") // widths in proportion to the size
}

// read takes the pixels of the corner of the canvas.
func (l *Letters) read(w, h int) {
	if n := 4 * w * h; cap(l.pixels) < n {
		l.pixels = make([]byte, n)
	} else {
		l.pixels = l.pixels[:n]
	}
	js.CopyBytesToGo(l.pixels, l.context.Call("getImageData", 0, 0, w, h).Get("data"))
}
