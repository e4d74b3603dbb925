package view

import (
	"slices"

	"partialcredit/game"
	"partialcredit/game/mark"
	"partialcredit/game/ui"
)

// still is all that the page shows and that seldom changes, as it was drawn
// last.
type still struct {
	valid       bool
	theme       *theme
	scale       float64
	axis        axis
	margin      float64
	trace       ui.Rect
	partials    ui.Rect
	covered     bool
	focus       string
	panel       ui.Rect
	texts, over []game.Text
	widgets     []ui.Widget
	strokes     []game.Stroke
}

// update notes the scene and reports whether the page must be drawn anew.
func (k *still) update(s *game.Scene, th *theme, scale float64, a axis) bool {
	trace, partials, covered := ui.Rect{}, ui.Rect{}, false
	if s.Trace != nil {
		trace, covered = s.Trace.Rect, s.Trace.Covered
	}
	if s.Partials != nil {
		partials, covered = s.Partials.Rect, covered || s.Partials.Covered
	}
	if k.valid && k.theme == th && k.scale == scale && k.axis == a && k.margin == s.Margin &&
		k.trace == trace && k.partials == partials && k.covered == covered &&
		k.focus == s.Focus && k.panel == s.Panel &&
		slices.Equal(k.texts, s.Texts) && slices.Equal(k.over, s.Over) &&
		slices.Equal(k.widgets, s.Widgets) && slices.Equal(k.strokes, s.Strokes) {
		return false
	}
	*k = still{
		true, th, scale, a, s.Margin, trace, partials, covered, s.Focus, s.Panel,
		append(k.texts[:0], s.Texts...), append(k.over[:0], s.Over...),
		append(k.widgets[:0], s.Widgets...), append(k.strokes[:0], s.Strokes...),
	}
	return true
}

// spectrum is the partials as they were drawn last: they change less often than
// the trace.
type spectrum struct {
	yours, target []mark.Line
	marked        []mark.Partial
}

// update notes the partials and reports whether they have changed.
func (k *spectrum) update(p *game.Partials) bool {
	if slices.Equal(k.yours, p.Yours) && slices.Equal(k.target, p.Target) && slices.Equal(k.marked, p.Marked) {
		return false
	}
	*k = spectrum{append(k.yours[:0], p.Yours...), append(k.target[:0], p.Target...), append(k.marked[:0], p.Marked...)}
	return true
}
