package figure

import (
	"math"

	"partialcredit/game/plot"
)

// Sizes in units, which are CSS pixels of the app.
const (
	squareSide = 10.0
	inkWidth   = 2.2
	pencil     = 1.6
	textSize   = 15.0
	titleSize  = 26.0
	onDash     = 7.0
	offDash    = 4.0
)

// page is a drawing in the making.
type page struct {
	*Drawing
	words  Words
	c      palette
	u      float64 // pixels a unit
	square float64 // pixels, a whole number
	text   float64 // size of text
	body   Box     // what is left for the picture, in whole squares
	pencil bool    // what is alone is the target
	inset  bool
}

// newPage lays out the sheet: squares, and the title. name is the picture's where it has no title.
func newPage(o Options, name string) *page {
	size := o.Size.whole()
	p := &page{
		Drawing: &Drawing{W: size.W, H: size.H, Name: o.Title, About: o.About},
		words:   o.Words.whole(), c: o.Ground.palette(), pencil: o.Pencil, inset: o.Inset,
		square: max(4, math.Round(squareSide*size.Unit)), text: max(11, textSize*size.Unit),
	}
	p.u = p.square / squareSide
	if p.Name == "" {
		p.Name = name
	}
	pad := 2 * p.square
	if o.Inset {
		pad = p.square / 2
	}
	w, h := float64(p.W), float64(p.H)
	top := pad
	title := titleSize * p.u
	if o.Title != "" {
		for title > p.text && width(o.Title, title) > w-2*pad {
			title--
		}
		top += 1.5 * title
	}
	p.body.W = math.Floor((w-2*pad)/p.square) * p.square
	p.body.H = math.Floor((h-top-pad)/p.square) * p.square
	p.body.X = math.Floor((w - p.body.W) / 2)
	p.body.Y = math.Floor(h - pad - p.body.H)
	p.squares()
	if o.Title != "" {
		p.label(p.body.X, pad+0.85*title, o.Title, Shape{Colour: p.c.black, Size: title, Bold: true})
	}
	return p
}

// squares covers the sheet with paper.
func (p *page) squares() {
	if p.c.bare {
		return
	}
	w, h := float64(p.W), float64(p.H)
	p.boxes(p.c.ground, 1, Box{0, 0, w, h})
	thin := max(1, math.Round(0.5*p.u))
	var fine, fifth []Box
	rule := func(from, to float64, line func(at float64) Box) {
		n := -int(from / p.square)
		for at := from + float64(n)*p.square; at < to; at += p.square {
			if n%5 == 0 {
				fifth = append(fifth, line(at))
			} else {
				fine = append(fine, line(at))
			}
			n++
		}
	}
	half := math.Floor(thin / 2)
	rule(p.body.X, w, func(x float64) Box { return Box{x - half, 0, thin, h} })
	rule(p.body.Y, h, func(y float64) Box { return Box{0, y - half, w, thin} })
	p.boxes(p.c.square, 1, fine...)
	p.boxes(p.c.fifth, 1, fifth...)
}

func (p *page) add(s Shape) {
	if s.Alpha == 0 {
		s.Alpha = 1
	}
	p.Shapes = append(p.Shapes, s)
}

func (p *page) boxes(colour uint32, alpha float64, boxes ...Box) {
	if len(boxes) > 0 {
		p.add(Shape{Kind: Boxes, Boxes: boxes, Colour: colour, Alpha: alpha})
	}
}

func (p *page) line(colour uint32, units float64, points ...plot.Point) {
	p.add(Shape{Kind: Line, Points: points, Colour: colour, Width: units * p.u})
}

func (p *page) dashed(colour uint32, units float64, points ...plot.Point) {
	p.add(Shape{Kind: Line, Points: points, Colour: colour, Width: units * p.u, Dash: [2]float64{onDash * p.u, offDash * p.u}})
}

func (p *page) dot(colour uint32, x, y, r float64) {
	p.add(Shape{Kind: Dot, Points: []plot.Point{{X: x, Y: y}}, R: r, Colour: colour})
}

func (p *page) ring(colour uint32, x, y, r float64) {
	p.add(Shape{Kind: Ring, Points: []plot.Point{{X: x, Y: y}}, R: r, Width: 1.7 * p.u, Colour: colour})
}

// label writes text; how says its colour, and its size and the like where they are not the usual.
func (p *page) label(x, y float64, text string, how Shape) {
	how.Kind, how.Points, how.Text = Label, []plot.Point{{X: x, Y: y}}, text
	if how.Size == 0 {
		how.Size = p.text
	}
	p.add(how)
}

// width is about how wide a text is in the Go font; its figures are 0.56 of the size.
func width(text string, size float64) float64 {
	n := 0.0
	for range text {
		n++
	}
	return 0.56 * size * n
}

// heading writes what a part of the picture is, and who is who where there are two sounds. It returns
// what is left below.
func (p *page) heading(b Box, name string, both bool) Box {
	if name == "" && !both || p.inset {
		return b
	}
	base := b.Y + 0.9*p.text
	p.label(b.X, base, name, Shape{Colour: p.c.faint, Bold: true})
	if both {
		p.key(b, base)
	}
	down := math.Ceil(1.3*p.text/p.square) * p.square
	return Box{b.X, b.Y + down, b.W, b.H - down}
}

// key tells the two sounds apart, at the right.
func (p *page) key(b Box, base float64) {
	x, y := b.X+b.W, base-0.35*p.text
	long := 3.2 * p.square
	for i, name := range [...]string{p.words.Target, p.words.Yours} {
		x -= width(name, p.text)
		p.label(x, base, name, Shape{Colour: p.c.black})
		x -= 0.7*p.square + long
		ends := []plot.Point{{X: x, Y: y}, {X: x + long, Y: y}}
		if i == 0 {
			p.dashed(p.c.target, pencil, ends...)
			p.ring(p.c.target, x+long/2, y, 5*p.u)
		} else {
			p.line(p.c.yours, inkWidth, ends...)
			p.dot(p.c.yours, x+long/2, y, 5*p.u)
		}
		x -= 1.6 * p.square
	}
}
