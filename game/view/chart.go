package view

import (
	"partialcredit/game"
	"partialcredit/game/ui"
)

// chart draws a plot: its paper, its axes, its levels, then its dots and what
// the levels say where they leave room.
func (c *canvas) chart(ch *game.Chart) {
	p := layChart(ch)
	floor, left := p.box.Bottom(), p.box.X
	c.squared(ch.Rect, left-ch.Rect.X, floor-ch.Rect.Y)
	for _, w := range p.words {
		c.set(w.text, w.x, w.base, p.size, w.bold, false, game.Left, c.inks[w.ink])
	}
	for _, k := range p.key {
		c.dot(k.x, k.base-0.34*p.size, min(p.dot, 4), k.sign.Mark, k.sign.Ringed, c.inks[k.sign.Ink])
	}
	faint := c.inks[game.Faint]
	c.across(left, p.box.Right(), floor, 1.5, faint)
	c.along(left, p.box.Y, floor, 1.5, faint)
	for _, t := range ch.X.Ticks {
		if u, ok := part(&ch.X, t.At); ok {
			c.along(p.atX(u), floor, floor+tickLength, 1.5, faint)
		}
	}
	for _, t := range ch.Y.Ticks {
		if u, ok := part(&ch.Y, t.At); ok {
			c.across(left-tickLength, left, p.atY(u), 1.5, faint)
		}
	}
	for i := range ch.Levels {
		c.level(ch, &p, &ch.Levels[i])
	}
	for i := range ch.Series {
		c.joined(ch, &p, &ch.Series[i])
	}
	for _, l := range p.levelTexts(ch) {
		c.area(l.rect, c.paper)
		c.set(l.text, l.rect.X+patch, l.rect.Bottom()-0.3*p.size, p.size, false, false, game.Left, c.inks[l.ink])
	}
	for i := range ch.Series {
		s := &ch.Series[i]
		for _, d := range s.Points {
			if x, y, ok := p.at(ch, d); ok {
				c.dot(x, y, p.dot, d.Mark, d.Ringed, c.inks[s.Ink])
			}
		}
	}
}

// level draws a line across.
func (c *canvas) level(ch *game.Chart, p *charted, l *game.Level) {
	u, ok := part(&ch.Y, l.At)
	if !ok {
		return
	}
	y := c.scale * p.atY(u)
	c.points = append(c.points[:0], point(c.scale*p.box.X, y), point(c.scale*p.box.Right(), y))
	c.drawn(l.Dashed, c.inks[l.Ink])
}

// joined draws the line through the points of a series; it breaks where one
// lies outside.
func (c *canvas) joined(ch *game.Chart, p *charted, s *game.Series) {
	if !s.Joined {
		return
	}
	c.points = c.points[:0]
	for _, d := range s.Points {
		if x, y, ok := p.at(ch, d); ok {
			c.points = append(c.points, point(c.scale*x, c.scale*y))
			continue
		}
		c.drawn(s.Dashed, c.inks[s.Ink])
		c.points = c.points[:0]
	}
	c.drawn(s.Dashed, c.inks[s.Ink])
}

// drawn draws a line through the collected points: with the pen, or in the
// dashes of the pencil.
func (c *canvas) drawn(dashed bool, t tint) {
	if dashed {
		c.pen(pencilWidth).Dashed(&c.mesh, c.points, dashOn*c.scale, dashOff*c.scale, nil)
	} else {
		c.pen(pencilWidth).Line(&c.mesh, c.points)
	}
	c.put(t)
}

// dot draws a point, its middle at x, y. Crosses and rings have a least size,
// or they could not be told from dots.
func (c *canvas) dot(x, y, radius float64, kind game.DotKind, ringed bool, t tint) {
	switch kind {
	case game.DotFilled:
		c.fill(c.circle(x, y, radius), t)
	case game.DotOpen:
		c.fill(c.circle(x, y, radius), c.paper)
		c.ring(c.circle(x, y, radius), 1.7, t)
	case game.DotCross:
		c.pull(crossBows, x, y, max(4.2, 1.2*radius), 2.2, c.inks[game.Red])
	}
	if ringed {
		c.ring(c.circle(x, y, ringRadius(radius)), 1.6, c.inks[game.Target])
	}
}

func ringRadius(dot float64) float64 { return max(6.5, dot+4.5) }

// A levelText is what a level says, on a patch of clean paper.
type levelText struct {
	rect ui.Rect
	text string
	ink  game.Ink
}

const patch = 4 // CSS pixels of paper beside a text

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
		text := fit(l.Text, p.size, false, p.box.W-4*patch)
		w := width(text, p.size, false) + 2*patch
		best, least := ui.Rect{}, 1<<30
		for k := range rows * places * 2 {
			row, place, way := float64(k/places/2), float64(k/2%places), k%2
			y := p.atY(u) - 3 - h - row*h/2
			if way == 1 {
				y = p.atY(u) + 3 + row*h/2
			}
			r := ui.Rect{X: p.box.Right() - patch - w - place/(places-1)*(p.box.W-w-2*patch), Y: y, W: w, H: h}
			if r.Y < p.box.Y || r.Bottom() > p.box.Bottom()-2 || touchesAny(r, placed) {
				continue
			}
			if cost := 100*p.covered(ch, r) + 20*int(row) + int(place); cost < least {
				best, least = r, cost
			}
		}
		if best.W > 0 {
			placed = append(placed, levelText{best, text, l.Ink})
		}
	}
	return placed
}

// covered counts the dots and lines under a rectangle.
func (p *charted) covered(ch *game.Chart, r ui.Rect) (n int) {
	for i := range ch.Series {
		for k, d := range ch.Series[i].Points {
			x, y, ok := p.at(ch, d)
			radius := p.dot
			if d.Ringed {
				radius = ringRadius(p.dot)
			}
			if ok && r.Inset(-radius).Contains(x, y) {
				n += 3
			}
			if !ok || k == 0 || !ch.Series[i].Joined {
				continue
			}
			if x0, y0, ok := p.at(ch, ch.Series[i].Points[k-1]); ok {
				for j := range 8 {
					if u := float64(j) / 8; r.Contains(x0+u*(x-x0), y0+u*(y-y0)) {
						n++
						break
					}
				}
			}
		}
	}
	for _, l := range ch.Levels {
		if u, ok := part(&ch.Y, l.At); ok && r.Y < p.atY(u) && p.atY(u) < r.Bottom() {
			n += 3
		}
	}
	return n
}

func touchesAny(r ui.Rect, placed []levelText) bool {
	for _, o := range placed {
		if r.X < o.rect.Right() && o.rect.X < r.Right() && r.Y < o.rect.Bottom() && o.rect.Y < r.Bottom() {
			return true
		}
	}
	return false
}
