package game

import (
	"strings"

	"partialcredit/game/ui"
)

// A desk page is one on which something is written: things to write and to set in a
// stack, turned over where it does not fit, what is to be known below, and buttons.
type deskPage struct {
	title string
	tabs  []ui.Widget // none where nil
	stack []block
	list  []ui.Widget // lines below the stack, which then is never turned over
	note  string      // what is missing, or the first advice
	ink   Ink         // of it
	foot  []ui.Widget // the way back first
}

// A block is one thing on a desk page.
type block struct {
	height float64
	lay    func(r ui.Rect)
}

// layDesk lays out a desk page.
func (g *Game) layDesk(p *paper, d deskPage) {
	g.scene.Title, g.scene.Body = d.title, strings.TrimSpace(d.note+" "+g.scene.Body)
	area := p.plain()
	area = g.deskTitle(p, area, d.title)
	perRow := len(d.foot)
	if p.W < 480 && len(d.foot) > 4 {
		perRow = 3
	}
	foot, area := area.CutBottom(rowsHeight(p, len(d.foot), perRow, p.button), p.gap)
	var tabs ui.Rect
	if p.short {
		left, right := area.CutLeft(0.4*area.W, 2*p.gap)
		if len(d.tabs) > 0 {
			columns := min(3, len(d.tabs))
			tabs, left = left.CutTop(rowsHeight(p, len(d.tabs), columns, finger), p.gap)
			g.layGrid(p, tabs, d.tabs, columns)
		}
		if d.list != nil { // what is done to it stands beside it
			for _, b := range d.stack {
				var here ui.Rect
				here, left = left.CutTop(b.height, p.gap)
				b.lay(here)
			}
			d.stack = nil
		}
		g.layStack(p, right, d)
		g.layNote(p, left, d)
	} else {
		if len(d.tabs) > 0 {
			columns := len(d.tabs)
			if p.W < 600 && columns > 3 {
				columns = 3
			}
			tabs, area = area.CutTop(rowsHeight(p, len(d.tabs), columns, finger), 2*p.gap)
			g.layGrid(p, tabs, d.tabs, columns)
		}
		n := 3
		if p.wide {
			n = 2
		}
		var below ui.Rect
		below, area = area.CutBottom(lines(n, p.body), p.gap)
		g.layStack(p, area, d)
		g.layNote(p, below, d)
	}
	g.layGrid(p, foot, d.foot, perRow)
}

// deskTitle writes a title in one line, cut where it is longer: it may be the teacher's
// own.
func (g *Game) deskTitle(p *paper, area ui.Rect, title string) (rest ui.Rect) {
	line, rest := area.CutTop(lines(1, p.title), p.gap/2)
	p.line(line, p.cut(title, p.title, true, line.W), p.title, true, Black, Left)
	return rest
}

// layNote writes what is to be known, as much of it as there is room for.
func (g *Game) layNote(p *paper, r ui.Rect, d deskPage) {
	if d.note == "" {
		return
	}
	broken := p.measure.Wrap(d.note, p.body, false, r.W)
	n := min(len(broken), int((r.H+0.3*p.body)/lines(1, p.body)))
	for i := range n {
		s := broken[i]
		if i == n-1 && n < len(broken) {
			s = p.cut(s+" …", p.body, false, r.W)
		}
		_, below := r.CutTop(lines(i, p.body), 0)
		p.line(below, p.cut(s, p.body, false, r.W), p.body, false, d.ink, Left)
	}
}

func rowsHeight(p *paper, n, columns int, height float64) float64 {
	rows := (n + columns - 1) / max(1, columns)
	return float64(rows)*height + float64(max(0, rows-1))*p.gap
}

// layGrid lays buttons out in rows.
func (g *Game) layGrid(p *paper, r ui.Rect, widgets []ui.Widget, columns int) {
	if len(widgets) == 0 {
		return
	}
	rows := (len(widgets) + columns - 1) / columns
	for i, row := range r.Rows(rows, p.gap) {
		p.buttons(row, widgets[i*columns:min(len(widgets), (i+1)*columns)]...)
	}
}

// layStack lays the blocks out in one column, or in two where the page is wide, and in
// parts where they do not fit.
func (g *Game) layStack(p *paper, r ui.Rect, d deskPage) {
	if d.list != nil {
		var head ui.Rect
		for _, b := range d.stack {
			head, r = r.CutTop(b.height, p.gap)
			b.lay(head)
		}
		list, w := *p, p.W
		list.short, list.wide, p.W = false, false, r.W // as on a screen of that width
		g.layList(&list, r, d.list)
		p.W = w
		return
	}
	columns := 1
	if p.wide {
		columns = 2
	}
	parts := packed(p, r.H, columns, d.stack)
	if len(parts) > 1 {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap)
		parts = packed(p, r.H, columns, d.stack)
		g.layTurn(p, turn, len(parts))
	} else {
		g.part = 0
	}
	if len(parts) == 0 {
		return
	}
	for i, column := range r.Columns(columns, 3*p.gap) {
		if i >= len(parts[g.part]) {
			break
		}
		for _, b := range parts[g.part][i] {
			var here ui.Rect
			here, column = column.CutTop(b.height, p.gap)
			b.lay(here)
		}
	}
}

// packed deals blocks out to the columns of as many parts as they need.
func packed(p *paper, height float64, columns int, blocks []block) (parts [][][]block) {
	var part [][]block
	var column []block
	used := 0.0
	for _, b := range blocks {
		if len(column) > 0 && used+b.height > height+0.01 {
			part, column, used = append(part, column), nil, 0
			if len(part) == columns {
				parts, part = append(parts, part), nil
			}
		}
		column = append(column, b)
		used += b.height + p.gap
	}
	if len(column) > 0 {
		part = append(part, column)
	}
	if len(part) > 0 {
		parts = append(parts, part)
	}
	return parts
}

// row is a block of buttons side by side.
func (g *Game) row(p *paper, widgets ...ui.Widget) block {
	return block{finger, func(r ui.Rect) { p.buttons(r, widgets...) }}
}

// grid is a block of buttons in rows.
func (g *Game) grid(p *paper, columns int, widgets ...ui.Widget) block {
	return block{rowsHeight(p, len(widgets), columns, finger), func(r ui.Rect) { g.layGrid(p, r, widgets, columns) }}
}

// field is a block of a text field.
func (g *Game) field(p *paper, w ui.Widget) block {
	return block{ui.TextHeight(w.Text.Lines), func(r ui.Rect) { p.written(r, w) }}
}

// scale is a block of a ruler.
func (g *Game) scale(p *paper, id, label string, ruler ui.Ruler) block {
	h := max(finger, min(56, p.rulerHeight()))
	return block{h, func(r ui.Rect) { p.ruled(id, label, ruler, r) }}
}

// saying is a block of text.
func (g *Game) saying(p *paper, s string, ink Ink) block {
	g.scene.Body += s + " "
	w := g.stackWidth(p)
	return block{p.height(s, p.body, false, w), func(r ui.Rect) { p.paragraph(r, s, p.body, false, ink) }}
}

// stackWidth is how wide a column of the stack is.
func (g *Game) stackWidth(p *paper) float64 {
	area := p.plain()
	switch {
	case p.short:
		return area.W - 0.4*area.W - 2*p.gap
	case p.wide:
		return (area.W - 3*p.gap) / 2
	}
	return area.W
}

// bare is a page that has lost what it is about: the way back.
func (g *Game) bare(p *paper, title string) {
	area := g.head(p, p.plain(), title, "")
	bottom, _ := area.CutBottom(p.button, p.gap)
	p.buttons(bottom, ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"})
}
