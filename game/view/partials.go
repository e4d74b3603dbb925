package view

import "partialcredit/game"

// partials draws the lines of both sounds and the marks over them: yours as
// stems with filled dots, the target as open circles.
func (c *canvas) partials(k *spectrum, a axis) {
	dot := 5.0
	if gap := k.spacing(a); gap < 12 {
		dot = max(2.2, gap*0.42)
	}
	for _, l := range k.yours {
		if y, ok := a.height(l.db); ok && a.shows(l.hz) {
			x, stem := c.scale*a.At(l.hz), min(3.5, 0.75*dot)
			c.points = append(c.points[:0], point(x, c.scale*y), point(x, c.scale*(a.floor-stem/2)))
			c.pen(stem).Line(&c.mesh, c.points)
			c.mesh.Fill(c.circle(a.At(l.hz), y, dot))
		}
	}
	c.put(c.inks[game.Yours])
	for _, l := range k.target {
		if y, ok := a.height(l.db); ok && a.shows(l.hz) {
			c.pen(1.7).Ring(&c.mesh, c.circle(a.At(l.hz), y, 1.4*dot))
		}
	}
	c.put(c.inks[game.Target])
	for _, m := range k.marked {
		if !a.shows(m.hz) {
			continue
		}
		y, _ := a.height(k.loudest(m.hz))
		kind := game.Cross
		if m.within {
			kind = game.Tick
		}
		c.stroke(game.Stroke{Kind: kind, X: a.At(m.hz), Y: y - 2*dot - 7, R: max(3.5, 1.3*dot)})
	}
}
