package view

import "partialcredit/game"

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
		c.levelText(&p, l)
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
