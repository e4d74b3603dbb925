package view

import (
	"partialcredit/game"
	"partialcredit/game/plot"
)

// A bow is a curve drawn in one pull of the pen: start, end and the point it
// bends towards, in units of the mark's half width.
type bow struct{ x0, y0, cx, cy, x1, y1 float64 }

// The strokes of each mark. None is quite straight or level: a hand drew them.
var (
	tickBows  = []bow{{-0.9, 0.05, -0.6, 0.2, -0.35, 0.75}, {-0.35, 0.75, 0.1, -0.15, 1, -0.85}}
	crossBows = []bow{{-0.8, -0.75, -0.05, 0.1, 0.85, 0.8}, {0.8, -0.85, 0.1, -0.1, -0.85, 0.75}}
	underBows = []bow{{-1.05, -0.02, -0.1, 0.14, 1.05, -0.06}}
)

// stroke draws a mark with the red pen.
func (c *canvas) stroke(s game.Stroke) {
	bows, width := tickBows, max(2, min(6, 0.3*s.R))
	switch s.Kind {
	case game.Cross:
		bows = crossBows
	case game.Underline:
		bows, width = underBows, max(2.5, min(6, 0.08*s.R))
	}
	c.pull(bows, s.X, s.Y, s.R, width, c.inks[game.Red])
}

func (c *canvas) pull(bows []bow, x, y, r, width float64, t tint) {
	const steps = 10
	c.points = c.points[:0]
	for i, b := range bows {
		if i > 0 && (bows[i-1].x1 != b.x0 || bows[i-1].y1 != b.y0) { // the pen is lifted
			c.pen(width).Press(&c.mesh, c.points)
			c.points = c.points[:0]
		}
		for k := range steps + 1 {
			u := float64(k) / steps
			p, q, s := (1-u)*(1-u), 2*u*(1-u), u*u
			c.points = append(c.points, plot.Point{
				X: c.scale * (x + r*(p*b.x0+q*b.cx+s*b.x1)),
				Y: c.scale * (y + r*(p*b.y0+q*b.cy+s*b.y1)),
			})
		}
	}
	c.pen(width).Press(&c.mesh, c.points)
	c.put(t)
}
