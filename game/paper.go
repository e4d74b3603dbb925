package game

import (
	"partialcredit/game/ui"
)

// paper lays a scene out: it holds the sizes that fit the screen and writes
// texts and widgets into the scene.
type paper struct {
	*Scene
	measure ui.Measure
	over    bool // onto the panel instead of the page

	pad, gap            float64
	title, body, label  float64 // sizes of text
	button, row         float64 // heights of a button and of a line of the contents
	wide, short, narrow bool    // how the page is arranged
}

// Sizes: at least 14 px for text and 44 px for what a finger must hit (look of
// the exercise book; WCAG 2.2, 2.5.5).
func newPaper(s *Scene, w, h float64, measure ui.Measure) *paper {
	p := &paper{Scene: s, measure: measure}
	p.W, p.H = w, h
	p.short = h < 560 && w > h
	p.wide = !p.short && w >= 700 && w > 0.95*h
	p.narrow = w < 360
	scale := max(1, min(1.7, w/1180, h/820))
	p.pad, p.gap, p.title, p.body, p.label = 20, 12, 20, 15, 15
	p.button, p.row = 52, 46
	switch {
	case p.wide || min(w, h) >= 700:
		p.pad, p.gap, p.title, p.body, p.label, p.button = 24*scale, 16*scale, 26*scale, 16*scale, 17*scale, 60*scale
		p.row *= scale
		if !p.wide { // a tablet held upright has room below
			p.body, p.label = 1.2*p.body, 1.1*p.label
		}
	case p.short || h < 640 || p.narrow:
		p.pad, p.gap, p.title, p.body, p.label, p.button = 8, 8, 17, 14, 14, 44
	}
	return p
}

// inner is the screen without its edges.
func (p *paper) inner() ui.Rect {
	return ui.Rect{X: p.pad, Y: p.pad, W: p.W - 2*p.pad, H: p.H - 2*p.pad}
}

// apart parts a row of buttons into one that leads back and what goes on; where
// the page is wide, the first stands apart.
func (p *paper) apart(row ui.Rect) (back, onward ui.Rect) {
	if !p.wide {
		columns := row.Columns(2, p.gap)
		return columns[0], columns[1]
	}
	columns := row.Columns(2, 2*p.gap)
	return columns[0].Columns(2, p.gap)[0], columns[1]
}

// leading is the distance of baselines as a multiple of the size.
const leading = 1.3

func (p *paper) put(t Text) {
	if p.over {
		p.Over = append(p.Over, t)
		return
	}
	p.Texts = append(p.Texts, t)
}

// lines is the height of n lines of text.
func lines(n int, size float64) float64 { return float64(n) * size * leading }

// line writes one line at the top of r.
func (p *paper) line(r ui.Rect, s string, size float64, bold bool, ink Ink, align Align) {
	x := r.X
	switch align {
	case Middle:
		x += r.W / 2
	case Right:
		x += r.W
	}
	p.put(Text{X: x, Y: r.Y + size, String: s, Size: size, Bold: bold, Ink: ink, Align: align})
}

// paragraph writes text broken to the width of r at its top, and returns what
// is left of r below. Text that is too tall for r is not written: fits tells.
func (p *paper) paragraph(r ui.Rect, s string, size float64, bold bool, ink Ink) (rest ui.Rect, fits bool) {
	broken := p.measure.Wrap(s, size, bold, r.W)
	h := lines(len(broken), size)
	if h > r.H+0.3*size { // the last line needs no space below it
		return r, false
	}
	for i, s := range broken {
		_, below := r.CutTop(lines(i, size), 0)
		p.line(below, s, size, bold, ink, Left)
	}
	_, rest = r.CutTop(h, 0)
	return rest, true
}

// height is how tall a paragraph would be.
func (p *paper) height(s string, size float64, bold bool, width float64) float64 {
	return lines(len(p.measure.Wrap(s, size, bold, width)), size)
}

// written lays a text field out at the top of r, and returns what is left below.
func (p *paper) written(r ui.Rect, w ui.Widget) (rest ui.Rect) {
	w.Role = ui.Written
	w.Rect, rest = r.CutTop(ui.TextHeight(w.Text.Lines), p.gap)
	p.widget(w)
	return rest
}

func (p *paper) widget(w ui.Widget) { p.Widgets = append(p.Widgets, w) }

// buttons lays buttons out side by side.
func (p *paper) buttons(r ui.Rect, widgets ...ui.Widget) {
	for i, c := range r.Columns(len(widgets), p.gap) {
		widgets[i].Rect = c
		p.widget(widgets[i])
	}
}

// cut is as much of a text as fits into a width.
func (p *paper) cut(s string, size float64, bold bool, width float64) string {
	return p.measure.Fit(s, size, bold, width)
}
