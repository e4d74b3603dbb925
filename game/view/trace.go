package view

import (
	"partialcredit/game"
	"partialcredit/game/plot"
	"partialcredit/game/ui"
)

// A tracing draws one sound's trace; it remembers where the last picture
// started.
type tracing struct {
	trigger plot.Trigger
	sampler plot.Sampler
	points  []plot.Point
	scratch []plot.Point
}

const (
	inkWidth    = 2.2 // CSS pixels
	pencilWidth = 1.6
	dashOn      = 7
	dashOff     = 4
	straight    = 0.04       // pixels of the device: what Simplify may bend
	lead        = 2 * square // CSS pixels before the trigger, so that a step there is seen whole
	mostOfIt    = 0.55       // of the samples are drawn; the rest is for the trigger to choose from
)

// periods is how many periods a box shows, three to four, so that a period is
// a whole number of squares, of fifth lines where possible.
func periods(width float64) float64 {
	for _, unit := range [...]float64{5 * square, square} {
		if n := int(width / 3 / unit); n > 0 && width/(float64(n)*unit) <= 4 {
			return width / (float64(n) * unit)
		}
	}
	return 3.5
}

// span is how many samples the box shows: periods of the note, which is the
// target's partial 1 where it is known, so that both sounds share a scale.
func span(s *game.Scene, w *game.Wave) float64 {
	period := w.Period
	if s.Partials != nil && s.Partials.F0 > 0 {
		period = w.Rate / s.Partials.F0
	}
	return min(period*periods(s.Trace.Rect.W), mostOfIt*float64(len(w.Samples)))
}

// trace draws a sound into its box.
func (t *tracing) trace(c *canvas, box ui.Rect, w *game.Wave, span float64, dashed bool) {
	if len(w.Samples) == 0 {
		return
	}
	const edge = 4 // room for the pen
	column := 1.0
	if c.scale > 1 {
		column = c.scale / 2
	}
	start := t.trigger.Start(w.Samples, w.Cycle, span) - span*lead/box.W
	t.points = t.sampler.Points(t.points[:0], w.Samples, plot.Frame{
		Start: max(0, start), Span: span,
		X: c.scale * box.X, W: c.scale * box.W, Column: column,
		Zero: c.scale * (box.Y + box.H/2), Gain: c.scale * (box.H/2 - edge) * w.Scale,
	})
	t.points = plot.Simplify(t.points, straight)
	if dashed {
		t.scratch = c.pen(pencilWidth).Dashed(&c.mesh, t.points, dashOn*c.scale, dashOff*c.scale, t.scratch)
		c.put(c.inks[game.Target])
		return
	}
	c.pen(inkWidth).Line(&c.mesh, t.points)
	c.put(c.inks[game.Yours])
}
