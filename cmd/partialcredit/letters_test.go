//go:build !js

package main_test

import (
	"fmt"
	"image"
	"math"
	"strings"

	"partialcredit/game/ui"
)

// foreign is a name of which the built-in fonts have nothing but the spaces.
const foreign = "小林 Ольга مريم 🍎"

// browsers is a word as the browser itself letters it.
type browsers struct {
	W, H   int
	Pixels []uint8 // RGBA, not premultiplied
}

func (p *Page) lettered(word string, em float64) (b browsers) {
	p.t.Helper()
	var numbers []int
	p.Eval(fmt.Sprintf(`(() => {
		const c = document.createElement("canvas"), x = c.getContext("2d"), font = '%vpx system-ui, "DejaVu Sans", sans-serif';
		x.font = font;
		const m = x.measureText(%q), left = Math.ceil(m.actualBoundingBoxLeft), up = Math.ceil(m.actualBoundingBoxAscent);
		c.width = left + Math.ceil(m.actualBoundingBoxRight);
		c.height = up + Math.ceil(m.actualBoundingBoxDescent);
		x.font = font;
		x.fillStyle = "white";
		x.fillText(%q, left, up);
		return [c.width, c.height, ...x.getImageData(0, 0, c.width, c.height).data];
	})()`, em, word, word), &numbers)
	b.W, b.H = numbers[0], numbers[1]
	for _, n := range numbers[2:] {
		b.Pixels = append(b.Pixels, uint8(n))
	}
	return b
}

// showsName finds every word of the name on the canvas where the page shows it, as the browser itself letters it.
func (l *learner) showsName(band ui.Rect, em float64) {
	l.t.Helper()
	picture := l.Picture(band)
	for _, word := range strings.Fields(foreign) {
		own := l.lettered(word, em)
		like, colour := own.found(picture)
		l.t.Logf("%s: %.3f like the browser's own, %.0f of 255 coloured there and %.0f here", word, like, own.colour(), colour)
		if like < 0.85 {
			l.t.Errorf("%s is not drawn as the browser letters it: likeness %.2f", word, like)
		}
		if word != "🍎" {
			continue
		}
		if want := own.colour(); want < 60 {
			l.t.Errorf("no emoji here has colours, so nothing was checked: install a font that has them, for example Debian's fonts-noto-color-emoji")
		} else if colour < 0.8*want {
			l.t.Errorf("the emoji is grey: %.0f of 255 coloured, want %.0f", colour, want)
		}
	}
}

// found looks for the word everywhere in a picture: how like it is what is most like it (the coefficient of
// correlation of how light it is), and how coloured that is.
func (b browsers) found(picture image.Image) (like, colour float64) {
	r := picture.Bounds()
	light, hue := make([]float64, r.Dx()*r.Dy()), make([]float64, r.Dx()*r.Dy())
	for i := range light {
		red, green, blue, _ := picture.At(r.Min.X+i%r.Dx(), r.Min.Y+i/r.Dx()).RGBA()
		light[i] = float64(red+green+blue) / 3 / 257
		hue[i] = float64(max(red, green, blue)-min(red, green, blue)) / 257
	}
	want := make([]float64, b.W*b.H)
	for i := range want {
		p := b.Pixels[4*i:]
		want[i] = (float64(p[0]) + float64(p[1]) + float64(p[2])) / 3 * float64(p[3]) / 255
	}
	sum, squares := moments(want)
	n := float64(len(want))
	for y := range r.Dy() - b.H {
		for x := range r.Dx() - b.W {
			var s, ss, both, coloured float64
			for i, v := range want {
				at := (y+i/b.W)*r.Dx() + x + i%b.W
				s, ss, both, coloured = s+light[at], ss+light[at]*light[at], both+v*light[at], coloured+hue[at]
			}
			if c := (both - s*sum/n) / math.Sqrt((ss-s*s/n)*(squares-sum*sum/n)); c > like {
				like, colour = c, coloured/n
			}
		}
	}
	return like, colour
}

func moments(values []float64) (sum, squares float64) {
	for _, v := range values {
		sum, squares = sum+v, squares+v*v
	}
	return sum, squares
}

// colour is how far the pixels are from grey on average, of 255.
func (b browsers) colour() (sum float64) {
	for i := 0; i < len(b.Pixels); i += 4 {
		p := b.Pixels[i:]
		sum += float64(max(p[0], p[1], p[2])-min(p[0], p[1], p[2])) * float64(p[3]) / 255
	}
	return sum / float64(b.W*b.H)
}
