package view

import (
	"partialcredit/game"
	"partialcredit/game/ui"
)

// A levelText is what a level says, on a patch of clean paper.
type levelText struct {
	level *game.Level
	rect  ui.Rect
	text  string
	far   bool // from its line, a sample of which stands before it
}

const (
	patch  = 4.0  // CSS pixels of paper beside a text
	sample = 25.0 // of a line, with the gap after it
)

func (c *canvas) levelText(p *charted, l levelText) {
	c.area(l.rect, c.paper)
	x, ink := l.rect.X+patch, c.inks[l.level.Ink]
	if l.far {
		y := c.scale * (l.rect.Y + l.rect.H/2)
		c.points = append(c.points[:0], point(c.scale*x, y), point(c.scale*(x+sample-6), y))
		c.drawn(l.level.Dashed, ink)
		x += sample
	}
	c.set(l.text, x, l.rect.Bottom()-0.3*p.size, p.size, false, false, game.Left, ink)
}

// levelTexts places what the levels say beside their lines: where it covers no
// dot if it can, never over another of them nor outside the box.
func (p *charted) levelTexts(ch *game.Chart) (placed []levelText) {
	const rows, places = 13, 17 // to try, away from the line and along it
	h := p.size + 4
	for i := range ch.Levels {
		l := &ch.Levels[i]
		u, ok := part(&ch.Y, l.At)
		if !ok || l.Text == "" {
			continue
		}
		line := p.atY(u)
		text := fit(l.Text, p.size, false, p.box.W-4*patch-sample)
		wide := width(text, p.size, false) + 2*patch
		best, least := levelText{}, 1<<30
		for k := range rows * places * 2 {
			row, place := float64(k/places/2), float64(k/2%places)
			y := line - 3 - h - row*h/2
			if k%2 == 1 {
				y = line + 3 + row*h/2
			}
			between := p.between(ch, i, y+h/2)
			w, far := wide, row > 0 || between
			if far {
				w += sample
			}
			r := ui.Rect{X: p.box.Right() - patch - w - place/(places-1)*(p.box.W-w-2*patch), Y: y, W: w, H: h}
			if r.Y < p.box.Y || r.Bottom() > p.box.Bottom()-2 || touchesAny(r, placed) {
				continue
			}
			cost := 20*int(row) + int(place)
			if between {
				cost += 250
			}
			if cost >= least {
				continue
			}
			if cost += 100 * p.covered(ch, r); cost < least {
				best, least = levelText{l, r, text, far}, cost
			}
		}
		if best.level != nil {
			placed = append(placed, best)
		}
	}
	return placed
}

// between reports whether the line of another level lies between that of one
// and a height.
func (p *charted) between(ch *game.Chart, level int, y float64) bool {
	u, _ := part(&ch.Y, ch.Levels[level].At)
	own := p.atY(u)
	for i := range ch.Levels {
		if v, ok := part(&ch.Y, ch.Levels[i].At); ok && i != level && (p.atY(v)-own)*(p.atY(v)-y) < 0 {
			return true
		}
	}
	return false
}

// covered says how much of the dots and lines a rectangle covers.
func (p *charted) covered(ch *game.Chart, r ui.Rect) (n int) {
	const dots, lines = 3, 1 // a dot covered is worse than a line
	for i, s := range p.spots {
		radius := p.dot
		if s.ringed {
			radius = ringRadius(p.dot)
		}
		if r.Inset(-radius).Contains(s.x, s.y) {
			n += dots
		}
		if s.joined && crosses(r, p.spots[i-1], s) {
			n += lines
		}
	}
	for _, l := range ch.Levels {
		if u, ok := part(&ch.Y, l.At); ok && r.Y < p.atY(u) && p.atY(u) < r.Bottom() {
			n += dots
		}
	}
	return n
}

// crosses reports whether the line between two spots passes through a
// rectangle, as far as a few points of it tell.
func crosses(r ui.Rect, a, b spot) bool {
	if max(a.x, b.x) < r.X || min(a.x, b.x) > r.Right() || max(a.y, b.y) < r.Y || min(a.y, b.y) > r.Bottom() {
		return false
	}
	const steps = 8
	for j := range steps {
		if u := float64(j) / steps; r.Contains(a.x+u*(b.x-a.x), a.y+u*(b.y-a.y)) {
			return true
		}
	}
	return false
}

func touchesAny(r ui.Rect, placed []levelText) bool {
	for _, o := range placed {
		if r.X < o.rect.Right() && o.rect.X < r.Right() && r.Y < o.rect.Bottom() && o.rect.Y < r.Bottom() {
			return true
		}
	}
	return false
}
