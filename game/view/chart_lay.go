package view

import (
	"math"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// charted is where the parts of a chart are drawn.
type charted struct {
	size  float64 // of the texts
	box   ui.Rect // between the axes
	words []word
	key   []keyed
	dot   float64 // radius
	spots []spot
}

// A word is a text and its left end.
type word struct {
	text    string
	x, base float64
	bold    bool
	ink     game.Ink
}

// A spot is where a dot lies, and whether a line leads there from the one before.
type spot struct {
	x, y           float64
	ringed, joined bool
}

// keyed is a sign of the key and the middle of its dot.
type keyed struct {
	sign    game.Sign
	x, base float64
}

const (
	chartEdge  = 8.0  // CSS pixels of paper round everything
	tickLength = 5.0  // of a tick
	textGap    = 10.0 // least room between two texts of a row
	dotRoom    = 10.0 // between an axis and the first dot, and at the far ends
	keyRoom    = 23.0 // for the dot before a text of the key
	leastBox   = 76.0 // height below which the key is left out
)

// part is where on an axis a value lies, 0 to 1; not ok where it lies outside.
func part(a *game.Axis, v float64) (u float64, ok bool) {
	lo, hi := a.Lo, a.Hi
	if a.Log {
		lo, hi, v = math.Log(lo), math.Log(hi), math.Log(v)
	}
	const near = 1e-9
	u = (v - lo) / (hi - lo)
	return u, u >= -near && u <= 1+near // NaN is outside
}

func (p *charted) atX(u float64) float64 { return p.box.X + dotRoom + u*(p.box.W-2*dotRoom) }
func (p *charted) atY(u float64) float64 { return p.box.Bottom() - u*(p.box.H-dotRoom) }

func (p *charted) at(ch *game.Chart, d game.Dot) (x, y float64, ok bool) {
	u, ok := part(&ch.X, d.X)
	v, too := part(&ch.Y, d.Y)
	return p.atX(u), p.atY(v), ok && too
}

// plotSize is the size of the texts of a chart or table.
func plotSize(r ui.Rect) float64 {
	switch {
	case r.W >= 1100 && r.H >= 500:
		return 18
	case r.W >= 700 && r.H >= 320:
		return 16
	}
	return 14
}

// layChart finds room for everything: the heading over the box, the numbers
// beside and below it, and in the last rows the key and what goes across.
func layChart(ch *game.Chart) charted {
	p := charted{size: plotSize(ch.Rect)}
	in := ch.Rect.Inset(chartEdge)
	row := p.size + 6
	top := p.heading(ch, in, row)
	rows := p.keyRows(ch, in, row)
	roomy := in.Bottom()-float64(rows+1)*row-tickLength-top >= leastBox
	if !roomy {
		p.key, p.words, rows = nil, p.words[:p.headed(ch)], 0
	}
	bottom := in.Bottom() - float64(rows+1)*row - tickLength
	left := 0.0
	for _, t := range ch.Y.Ticks {
		left = max(left, width(t.Text, p.size, false))
	}
	left = min(left, 0.35*in.W)
	p.box = ui.Rect{X: in.X + left + tickLength + 4, Y: top, H: bottom - top}
	p.box.W = in.Right() - p.box.X
	p.numbers(ch, in, row, rows > 0)
	p.dot = p.size/2 - 2
	for i := range ch.Series {
		if n := len(ch.Series[i].Points); n > 1 {
			p.dot = max(2.6, min(p.dot, 0.42*(p.box.W-2*dotRoom)/float64(n-1)))
		}
	}
	for i := range ch.Series {
		joined := false
		for _, d := range ch.Series[i].Points {
			x, y, ok := p.at(ch, d)
			if ok {
				p.spots = append(p.spots, spot{x, y, d.Ringed, joined})
			}
			joined = ok && ch.Series[i].Joined
		}
	}
	return p
}

// heading places the name and what goes up: in one row where they fit.
func (p *charted) heading(ch *game.Chart, in ui.Rect, row float64) (top float64) {
	base := in.Y + row - 6
	name := width(ch.Name, p.size, true)
	two := ch.Name != "" && ch.Y.Label != "" &&
		(ch.Rect.H >= 220 || name+2*textGap+width(ch.Y.Label, p.size, false) > in.W && ch.Rect.H >= 180)
	if ch.Name != "" {
		room := in.W
		if ch.Y.Label != "" && !two {
			room = max(in.W-2*textGap-width(ch.Y.Label, p.size, false), 0.5*in.W)
		}
		text := fit(ch.Name, p.size, true, room)
		p.words = append(p.words, word{text, in.X, base, true, game.Black})
		if ch.Y.Label == "" || two {
			base += row
		}
	}
	if ch.Y.Label != "" {
		x := in.X
		if ch.Name != "" && !two {
			x += width(p.words[0].text, p.size, true) + 2*textGap
		}
		p.words = append(p.words, word{fit(ch.Y.Label, p.size, false, in.Right()-x), x, base, false, game.Faint})
		base += row
	}
	return base - row + 6 + 4
}

// headed is how many words the heading has.
func (p *charted) headed(ch *game.Chart) (n int) {
	for _, s := range [...]string{ch.Name, ch.Y.Label} {
		if s != "" {
			n++
		}
	}
	return n
}

// keyRows places the key and, at the right end of the first row, what goes
// across. It returns how many rows they take.
func (p *charted) keyRows(ch *game.Chart, in ui.Rect, row float64) (rows int) {
	label := width(ch.X.Label, p.size, false)
	if len(ch.Key) == 0 {
		if ch.X.Label == "" || ch.Rect.H < 220 {
			return 0 // it stands beside the numbers
		}
	}
	type place struct {
		x   float64
		row int
	}
	var places []place
	x, n := in.X, 0
	for _, k := range ch.Key {
		w := keyRoom + width(k.Text, p.size, false)
		end := in.Right()
		if n == 0 && label > 0 {
			end -= label + 2*textGap
		}
		if x+w > end && (x > in.X || n == 0 && label > 0) {
			x, n = in.X, n+1
		}
		places = append(places, place{x, n})
		x += w + 1.6*textGap
	}
	rows = n + 1
	base := func(r int) float64 { return in.Bottom() - float64(rows-1-r)*row - 4 }
	for i, k := range ch.Key {
		at := places[i]
		p.key = append(p.key, keyed{k, at.x + 9, base(at.row)})
		p.words = append(p.words, word{fit(k.Text, p.size, false, in.Right()-at.x-keyRoom), at.x + keyRoom, base(at.row), false, game.Black})
	}
	if label > 0 {
		text := fit(ch.X.Label, p.size, false, in.W)
		p.words = append(p.words, word{text, in.Right() - width(text, p.size, false), base(0), false, game.Faint})
	}
	return rows
}

// numbers places the texts of both axes.
func (p *charted) numbers(ch *game.Chart, in ui.Rect, row float64, labelled bool) {
	base := p.box.Bottom() + tickLength + p.size
	end := in.Right()
	if ch.X.Label != "" && !labelled {
		text := fit(ch.X.Label, p.size, false, 0.6*in.W)
		end -= width(text, p.size, false)
		p.words = append(p.words, word{text, end, base, false, game.Faint})
		end -= textGap
	}
	var texts []string
	var from, to []float64
	for _, t := range ch.X.Ticks {
		w := width(t.Text, p.size, false)
		u, ok := part(&ch.X, t.At)
		x := min(max(p.atX(u)-w/2, in.X), end-w)
		if !ok || math.Abs(x+w/2-p.atX(u)) > w/2 { // pushed off its tick
			x = math.NaN()
		}
		texts, from, to = append(texts, t.Text), append(from, x), append(to, x+w)
	}
	for _, i := range apart(&ch.X, from, to, textGap) {
		p.words = append(p.words, word{texts[i], from[i], base, false, game.Black})
	}
	from, to = from[:0], to[:0]
	for _, t := range ch.Y.Ticks { // upwards, so that they rise like those of the other axis
		y := math.NaN()
		if u, ok := part(&ch.Y, t.At); ok {
			y = -p.atY(u)
		}
		from, to = append(from, y-p.size/2), append(to, y+p.size/2)
	}
	for _, i := range apart(&ch.Y, from, to, 2) {
		right := p.box.X - tickLength - 3
		text := fit(ch.Y.Ticks[i].Text, p.size, false, right-in.X)
		y := -(from[i] + to[i]) / 2
		p.words = append(p.words, word{text, right - width(text, p.size, false), y + 0.35*p.size, false, game.Black})
	}
}

// apart chooses the ticks whose texts, each from one place to another, do not
// touch. Of an axis of equal steps it takes every second, third ... where not
// all have room; of a logarithmic one the powers of ten, then what fits between.
func apart(a *game.Axis, from, to []float64, gap float64) (chosen []int) {
	free := func(i int) bool {
		if math.IsNaN(from[i]) {
			return false
		}
		for _, k := range chosen {
			if from[i] < to[k]+gap && from[k] < to[i]+gap {
				return false
			}
		}
		return true
	}
	if a.Log {
		for _, tens := range [...]bool{true, false} {
			for i, t := range a.Ticks {
				e := math.Log10(t.At)
				if (math.Abs(e-math.Round(e)) < 1e-9) == tens && free(i) {
					chosen = append(chosen, i)
				}
			}
		}
		return chosen
	}
	for stride := 1; stride <= len(a.Ticks); stride++ {
		chosen = chosen[:0]
		all := true
		for i := 0; i < len(a.Ticks); i += stride {
			if free(i) {
				chosen = append(chosen, i)
			} else if !math.IsNaN(from[i]) {
				all = false
			}
		}
		if all {
			return chosen
		}
	}
	return chosen
}
