package figure

import (
	"encoding/xml"
	"image"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/srwiley/oksvg"
	"github.com/srwiley/rasterx"

	"partialcredit/synth"
)

// element is what a general reader of XML finds.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

func (e *element) number(t *testing.T, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.attrs[name], 64)
	if err != nil {
		t.Fatalf("%s of <%s>: %v", name, e.name, err)
	}
	return v
}

// parse reads SVG with encoding/xml and refuses what is not of its name space.
func parse(t *testing.T, svg string) []element {
	t.Helper()
	var all []element
	d := xml.NewDecoder(strings.NewReader(svg))
	d.Strict = true
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Space != "http://www.w3.org/2000/svg" {
				t.Fatalf("<%s> is not of the name space of SVG", token.Name.Local)
			}
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			all = append(all, e)
		case xml.CharData:
			if s := strings.TrimSpace(string(token)); s != "" {
				all[len(all)-1].text += s
			}
		}
	}
}

// rendered paints SVG with github.com/srwiley/oksvg, a general-purpose renderer. It knows no text.
func rendered(t *testing.T, svg string) *image.RGBA {
	t.Helper()
	icon, err := oksvg.ReadIconStream(strings.NewReader(svg), oksvg.IgnoreErrorMode)
	if err != nil {
		t.Fatal(err)
	}
	w, h := int(icon.ViewBox.W), int(icon.ViewBox.H)
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	icon.SetTarget(0, 0, icon.ViewBox.W, icon.ViewBox.H)
	icon.Draw(rasterx.NewDasher(w, h, rasterx.NewScannerGV(w, h, img, img.Bounds())), 1)
	return img
}

// ink is how near a pixel is to a colour, 0 to 1, on a transparent ground.
func ink(img *image.RGBA, x, y int, colour uint32) float64 {
	c := img.RGBAAt(x, y)
	if c.A == 0 {
		return 0
	}
	off := 0.0
	for i, v := range [...]uint8{c.R, c.G, c.B} {
		whole := float64(v) * 255 / float64(c.A)
		off = max(off, math.Abs(whole-float64(colour>>(16-8*i)&255)))
	}
	if off > 24 {
		return 0
	}
	return float64(c.A) / 255
}

func sound(t *testing.T, text string) synth.Sound {
	t.Helper()
	s, err := synth.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSVGIsWhatItsStandardAsksFor(t *testing.T) {
	s := OfSound(sound(t, `{"version": 1}`))
	o := Options{Title: "Less <than> & \"more\"\x00\x1b \xff — größer", About: "a > b & c", Words: Words{Yours: "<yours>"}}
	about := 0
	for name, d := range map[string]*Drawing{
		"trace": Trace(o, s, &s), "partials": Partials(o, s, &s), "both": Both(o, s, &s),
		"sweep": Sweep(o, AlongTime(1, Words{}), NoteAt(s)),
	} {
		all := parse(t, d.SVG())
		if all[0].name != "svg" || all[0].attrs["viewBox"] != "0 0 1920 1080" || all[0].attrs["width"] != "1920" || all[0].attrs["role"] != "img" {
			t.Errorf("%s: it begins with %v", name, all[0])
		}
		// Title first and desc second, as assistive techniques look for them (SVG 1.1, 5.4).
		if all[1].name != "title" || all[1].text != "Less <than> & \"more\"\uFFFD\uFFFD \uFFFD — größer" || all[2].name != "desc" || all[2].text != o.About {
			t.Errorf("%s: named %q, %q", name, all[1], all[2])
		}
		for _, e := range all[3:] {
			switch e.name {
			case "path", "circle", "text":
			default:
				t.Errorf("%s: there is a <%s>", name, e.name)
			}
			if strings.Contains(e.text, "<yours>") {
				about++
			}
			for k, v := range e.attrs {
				if strings.Contains(v, "NaN") || strings.Contains(v, "Inf") {
					t.Errorf("%s: %s of a <%s> is %.60q", name, k, e.name, v)
				}
			}
		}
	}
	if about != 3 {
		t.Errorf("yours is named in %d pictures, want 3", about)
	}
}

func TestEmptySoundsHaveAPictureToo(t *testing.T) {
	noise := make([]float32, 5000)
	state := uint32(1)
	for i := range noise {
		state = state*1664525 + 1013904223 // Numerical Recipes' generator, from memory
		noise[i] = float32(int32(state)) / (1 << 31)
	}
	for name, s := range map[string]Signal{
		"nothing": {Rate: 48000, Hz: 440}, "one sample": {Samples: []float32{1}, Rate: 48000, Hz: 440},
		"silence": {Samples: make([]float32, 20000), Rate: 48000, Hz: 440}, "no note": {Samples: noise, Rate: 8000},
		"a low rate": {Samples: noise, Rate: 8000, Hz: 3000},
	} {
		for _, size := range []Size{Slide, {W: 100, H: 100}, {W: 1500, H: 100}, {W: 100, H: 1500}} {
			for _, d := range []*Drawing{
				Both(Options{Size: size}, s, &s), Trace(Options{Size: size}, s, nil),
				Sweep(Options{Size: size}, AlongTime(1, Words{}), NoteAt(s)),
			} {
				if svg := d.SVG(); strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
					t.Errorf("%s, %v: there are numbers that are none", name, size)
				}
			}
		}
	}
}

func TestGrounds(t *testing.T) {
	s := OfSound(sound(t, `{"version": 1, "a": {"shape": "sine"}}`))
	// Colours of the look of the exercise book.
	want := map[Ground]uint32{Paper: 0xFBF8EF, Blackboard: 0x13201B, White: 0xFFFFFF}
	for g := range GroundNames {
		img := rendered(t, Partials(Options{Ground: Ground(g), Size: Size{W: 400, H: 300}}, s, nil).SVG())
		clear, paper := 0, 0
		for y := range 300 {
			for x := range 400 {
				c := img.RGBAAt(x, y)
				if c.A == 0 {
					clear++
				}
				if rgb := uint32(c.R)<<16 | uint32(c.G)<<8 | uint32(c.B); c.A == 255 && rgb == want[Ground(g)] && want[Ground(g)] > 0 {
					paper++
				}
			}
		}
		bare := Ground(g) == Transparent || Ground(g) == Chalk
		if bare && clear < 100000 || !bare && (clear > 0 || paper < 60000) {
			t.Errorf("%s: %d of 120000 pixels are clear, %d are paper", GroundNames[g], clear, paper)
		}
	}
}

func TestSizes(t *testing.T) {
	for in, want := range map[string]string{
		"slide": "", "thumbnail": "", "square": "", "320x200": "", "100x8000": "",
		"": "must be slide", "big": "must be slide", "1x": "must be slide", "99x100": "100 to 8000", "100x8001": "100 to 8000", "-5x5": "100 to 8000",
	} {
		size, err := ParseSize(in)
		if want == "" && (err != nil || size.W < 100) || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v, %v", in, size, err)
		}
	}
}
