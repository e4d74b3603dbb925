package view

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// inkAt is the colour that was drawn at a place over the paper, texts left out:
// the slow way to draw a triangle.
func (c *canvas) inkAt(x, y float64) tint {
	px, py := float32(x*c.scale), float32(y*c.scale)
	out := c.paper
	for i := 0; i+2 < len(c.indices); i += 3 {
		p, q, r := c.vertices[c.indices[i]], c.vertices[c.indices[i+1]], c.vertices[c.indices[i+2]]
		if p.SrcX != whiteAt {
			continue
		}
		whole := (q.DstX-p.DstX)*(r.DstY-p.DstY) - (r.DstX-p.DstX)*(q.DstY-p.DstY)
		v := ((px-p.DstX)*(r.DstY-p.DstY) - (r.DstX-p.DstX)*(py-p.DstY)) / whole
		w := ((q.DstX-p.DstX)*(py-p.DstY) - (px-p.DstX)*(q.DstY-p.DstY)) / whole
		if !(v >= 0 && w >= 0 && v+w < 1) { // one of two triangles that share an edge
			continue
		}
		mix := func(a, b, c float32) float32 { return a*(1-v-w) + b*v + c*w }
		ink := tint{mix(p.ColorR, q.ColorR, r.ColorR), mix(p.ColorG, q.ColorG, r.ColorG), mix(p.ColorB, q.ColorB, r.ColorB), mix(p.ColorA, q.ColorA, r.ColorA)}
		for k := range out {
			out[k] = ink[k] + out[k]*(1-ink[3])
		}
	}
	return out
}

func near(a, b tint) bool {
	for k := range a {
		if math.Abs(float64(a[k]-b[k])) > 0.02 {
			return false
		}
	}
	return true
}

func percents(v float64) string { return fmt.Sprintf("%g %%", v) }

// aChart has a dot of each kind: at both ends of both axes and, on the log
// axis, at the geometric mean.
func aChart(r ui.Rect) game.Chart {
	c := game.Chart{
		Rect: r, Name: "How far from a square?", X: game.LinearAxis(0, 100, 11, func(v float64) string { return fmt.Sprint(v) }),
		Y: game.RatioAxis(1, 100, 7, percents),
		Series: []game.Series{{Joined: true, Ink: game.Yours, Points: []game.Dot{
			{X: 0, Y: 1}, {X: 50, Y: 10, Mark: game.DotOpen}, {X: 75, Y: 10, Mark: game.DotCross}, {X: 100, Y: 100, Ringed: true},
			{X: 50, Y: 101}, // outside: not drawn
		}}},
		Levels: []game.Level{
			{At: 3, Text: "about 3 %, within a factor 1.3", Ink: game.Red}, {At: 2.9, Text: "published: 2.9 %", Ink: game.Target, Dashed: true},
			{At: 200, Text: "outside", Ink: game.Red},
		},
		Key: []game.Sign{{Text: "right", Ink: game.Yours}, {Text: "wrong", Mark: game.DotCross}, {Text: "turned", Mark: game.NoDot, Ringed: true}},
	}
	c.X.Label, c.Y.Label = "trial", "deviation of the duty"
	return c
}

func TestDotsLandWhereTheyShould(t *testing.T) {
	for _, r := range []ui.Rect{{X: 10, Y: 20, W: 280, H: 160}, {X: 5.5, Y: 7, W: 900, H: 500}} {
		for _, scale := range []float64{1, 2} {
			ch := aChart(r)
			ch.Levels[1].At = 40
			dots := &ch.Series[0].Points
			*dots = append(*dots, game.Dot{X: math.NaN(), Y: 5})
			c := testCanvas(scale)
			c.chart(&ch)
			p := layChart(&ch)
			x := func(share float64) float64 { return p.box.X + dotRoom + share*(p.box.W-2*dotRoom) }
			y := func(share float64) float64 { return p.box.Bottom() - share*(p.box.H-dotRoom) }
			blue, red, pencil := c.inks[game.Yours], c.inks[game.Red], c.inks[game.Target]
			beside := p.dot / 2 / math.Sqrt2
			for name, at := range map[string]struct {
				x, y float64
				want tint
			}{
				"filled":            {x(0), y(0), blue},
				"filled, off":       {x(0) + beside, y(0) - beside, blue},
				"open, inside":      {x(0.5) - beside, y(0.5) + beside, c.paper},
				"open, its line":    {x(0.5), y(0.5) - p.dot, blue},
				"cross":             {x(0.75) + 0.02, y(0.5) + 0.02, red},
				"ringed, its dot":   {x(1), y(1), blue},
				"ringed, its ring":  {x(1) + ringRadius(p.dot), y(1) + 0.01, pencil},
				"ringed, its ring2": {x(1), y(1) + ringRadius(p.dot), pencil},
				"level":             {x(0.97), y(math.Log10(3) / 2), red},
			} {
				if got := c.inkAt(at.x, at.y); !near(got, at.want) {
					t.Errorf("%v at scale %v, %s: %v, not %v", r, scale, name, got, at.want)
				}
			}
			between := c.inkAt(x(1)+(p.dot+ringRadius(p.dot)-0.5)/2, y(1)+1)
			if near(between, blue) || near(between, pencil) {
				t.Errorf("%v at scale %v: the ring touches its dot", r, scale)
			}
			if got := c.inkAt(x(1)+p.dot+2, y(1)+p.dot+12); near(got, blue) {
				t.Errorf("%v at scale %v: a dot outside was drawn", r, scale)
			}
		}
	}
}

// texts are the rectangles that the texts of a chart take.
func (p *charted) texts(ch *game.Chart) (out []ui.Rect, words []string) {
	for _, w := range p.words {
		out = append(out, ui.Rect{X: w.x, Y: w.base - 0.72*p.size, W: width(w.text, p.size, w.bold), H: 0.9 * p.size})
		words = append(words, w.text)
	}
	for _, l := range p.levelTexts(ch) {
		out = append(out, l.rect)
		words = append(words, l.text)
	}
	return out, words
}

func TestTextsOfChartsKeepApartAndInside(t *testing.T) {
	long := strings.Repeat("a very long word ", 9)
	for w := 280.0; w < 2600; w *= 1.37 {
		for h := 160.0; h < 1500; h *= 1.5 {
			for variant := range 4 {
				ch := aChart(ui.Rect{X: 12, Y: 30, W: w, H: h})
				switch variant {
				case 1:
					ch.Name, ch.Key, ch.Levels[0].At = "", nil, 99
				case 2:
					ch.Name, ch.Y.Label, ch.X.Label, ch.Levels[0].Text, ch.Key[1].Text = long, long, "the day of the test", long, "wrong, which happens to everybody"
					ch.Key[2].Text = long
				case 3:
					ch.Y = game.RatioAxis(0.001, 2000, 20, func(v float64) string { return percents(v) + " of it" })
					ch.X.Label = ""
				}
				c := testCanvas(1)
				c.chart(&ch)
				if e := c.extent(); !inside(e, ch.Rect, 1) {
					t.Fatalf("%v by %v, variant %d: drawn %v in %v", w, h, variant, e, ch.Rect)
				}
				p := layChart(&ch)
				if p.size < 14 || p.box.H < 50 || p.box.W < 100 {
					t.Fatalf("%v by %v, variant %d: size %v, box %v", w, h, variant, p.size, p.box)
				}
				rects, words := p.texts(&ch)
				if n := len(p.levelTexts(&ch)); n != 2 && variant < 2 {
					t.Fatalf("%v by %v, variant %d: %d levels say what they are", w, h, variant, n)
				}
				for i, a := range rects {
					for k, b := range rects[:i] {
						if a.X < b.Right() && b.X < a.Right() && a.Y < b.Bottom() && b.Y < a.Bottom() {
							t.Fatalf("%v by %v, variant %d: %q %v touches %q %v", w, h, variant, words[i], a, words[k], b)
						}
					}
				}
			}
		}
	}
}

// On the axes of the smallest chart there are numbers yet, and those of equal
// steps stay equal.
func TestNumbersOfAxes(t *testing.T) {
	ch := aChart(ui.Rect{W: 280, H: 160})
	p := layChart(&ch)
	seen := map[string]bool{}
	for _, w := range p.words {
		seen[w.text] = true
	}
	for _, want := range []string{"0", "20", "40", "60", "80", "1 %", "10 %", "100 %"} {
		if !seen[want] {
			t.Errorf("%q is not among %v", want, p.words)
		}
	}
	for _, no := range []string{"10", "30", "50"} {
		if seen[no] {
			t.Errorf("%q stands between numbers in steps of 20", no)
		}
	}
}
