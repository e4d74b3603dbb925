package view

import (
	"slices"

	"partialcredit/game"
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
	plots       imprint
	code        game.Code
	meter       game.Meter
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
	plots, code := printOf(s.Charts, s.Tables), game.Code{}
	if s.Code != nil {
		code = *s.Code
	}
	if k.valid && k.theme == th && k.scale == scale && k.axis == a && k.margin == s.Margin &&
		k.trace == trace && k.partials == partials && k.covered == covered &&
		k.focus == s.Focus && k.panel == s.Panel && k.plots == plots && k.code == code && k.meter == s.Meter &&
		slices.Equal(k.texts, s.Texts) && slices.Equal(k.over, s.Over) &&
		slices.Equal(k.widgets, s.Widgets) && slices.Equal(k.strokes, s.Strokes) {
		return false
	}
	*k = still{
		true, th, scale, a, s.Margin, trace, partials, covered,
		plots, code, s.Meter, s.Focus, s.Panel,
		append(k.texts[:0], s.Texts...), append(k.over[:0], s.Over...),
		append(k.widgets[:0], s.Widgets...), append(k.strokes[:0], s.Strokes...),
	}
	return true
}
