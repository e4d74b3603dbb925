package view

import (
	"partialcredit/game"
	"partialcredit/game/plot"
	"partialcredit/game/ui"
)

// A tracing draws one sound's trace. It remembers where the last picture
// started, and the line of a sound that is silent.
type tracing struct {
	trigger plot.Trigger
	sampler plot.Sampler
	points  []plot.Point
	scratch []plot.Point
	mesh    plot.Mesh
	drawn   traced
}

// traced is what the mesh of a tracing was made from. It holds on to the
// samples, so that others cannot come to lie in the same place.
type traced struct {
	first       *float32
	count       int
	span, scale float64
	pixels      float64
	line        float64
	box         ui.Rect
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
	now := traced{&w.Samples[0], len(w.Samples), span, w.Scale, c.scale, c.line, box}
	if w.Live || now != t.drawn {
		t.drawn = now
		t.line(c, box, w, span, dashed)
		if w.Live {
			t.drawn = traced{}
		}
	}
	ink := game.Yours
	if dashed {
		ink = game.Target
	}
	c.add(&t.mesh, c.inks[ink])
}

// line makes the mesh.
func (t *tracing) line(c *canvas, box ui.Rect, w *game.Wave, span float64, dashed bool) {
	const edge = 4 // room for the pen
	start := t.trigger.Start(w.Samples, w.Cycle, span) - span*lead/box.W
	t.points = t.sampler.Points(t.points[:0], w.Samples, plot.Frame{
		Start: max(0, start), Span: span,
		X: c.scale * box.X, W: c.scale * box.W, Column: max(1, c.scale/2),
		Zero: c.scale * (box.Y + box.H/2), Gain: c.scale * (box.H/2 - edge) * w.Scale,
	})
	t.points = plot.Simplify(t.points, straight)
	t.mesh.Reset()
	if dashed {
		t.scratch = c.pen(pencilWidth).Dashed(&t.mesh, t.points, dashOn*c.scale, dashOff*c.scale, t.scratch)
		return
	}
	c.pen(inkWidth).Line(&t.mesh, t.points)
}
