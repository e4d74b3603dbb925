package game

import (
	"math"

	"partialcredit/game/book"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layClass lays out the class: a line for each learner, a column for each exercise.
func (g *Game) layClass(p *paper, r ui.Rect, t *book.Table) {
	m := &g.marks
	rows := t.View(m.view)
	cell := max(3.2*p.body, min(6*p.body, 0.65*r.W/float64(len(t.Items)+1))) // a limit has its unit where there is room
	name, cells := r.W, 0
	if r.W >= 340 {
		name = max(9*p.body, 0.3*r.W)
		cells = int((r.W - name) / cell)
	}
	shown := max(0, min(len(t.Items), cells-1)) // beside the mean
	if shown == 0 {
		name, cells = r.W, 0
	} else {
		cells = shown + 1
		name = r.W - float64(cells)*cell
	}
	if m.column >= len(t.Items) || m.column < 0 {
		m.column = 0
	}
	from := m.column
	to := min(len(t.Items), from+shown)
	r = g.layClassTop(p, r, t, from, to)

	said := g.sortedText(len(rows), len(t.Rows))
	g.scene.Body += said + " "
	p.line(r, p.cut(said, p.body, false, r.W), p.body, false, Faint, Left)
	_, r = r.CutTop(lines(1, p.body), p.gap/2)
	if cells > 0 {
		for i := range cells {
			head := g.t("Mean")
			if i > 0 {
				if from+i-1 >= to {
					break
				}
				head = g.t("%d", from+i)
			}
			at := ui.Rect{X: r.X + name + float64(i)*cell, Y: r.Y, W: cell - p.gap/2}
			p.line(at, p.cut(head, 14, true, at.W), 14, true, Faint, Right)
		}
		_, r = r.CutTop(lines(1, 14), 2)
	}
	fit := max(1, int(r.H/p.row))
	if fit < len(rows) {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap)
		turn.W = min(turn.W, 30*p.body)
		fit = max(1, int(r.H/p.row))
		parts := (len(rows) + fit - 1) / fit
		defer g.layTurn(p, turn, parts)
		g.part = max(0, min(parts-1, g.part))
	} else {
		g.part = 0
	}
	for i := g.part * fit; i < min(len(rows), (g.part+1)*fit); i++ {
		line, rest := r.CutTop(p.row, 0)
		r = rest
		g.layRow(p, line, t, rows[i], i, name, cell, from, to, cells > 0)
	}
}

// layClassTop lays out what is looked for and how it is sorted.
func (g *Game) layClassTop(p *paper, r ui.Rect, t *book.Table, from, to int) (rest ui.Rect) {
	m := &g.marks
	field := ui.Widget{ID: "find", Label: g.t("Find names"), Text: ui.Text{Value: m.view.Find, Most: 40}}
	sorts := []ui.Widget{
		{ID: numberedID("sort", int(book.ByName)), Label: g.t("Sort by name"), Face: g.t("Names"), On: m.view.By == book.ByName},
		{ID: numberedID("sort", int(book.ByMarks)), Label: g.t("Sort by marks"), Face: g.t("Marks"), On: m.view.By == book.ByMarks},
		{ID: numberedID("sort", int(book.ByTime)), Label: g.t("Sort by time"), Face: g.t("Time"), On: m.view.By == book.ByTime},
	}
	if to > from && to-from < len(t.Items) {
		next := to
		if next >= len(t.Items) {
			next = 0
		}
		sorts = append(sorts, ui.Widget{ID: numberedID("columns", next), Label: g.t("Exercises %d to %d: show others", from+1, to), Face: g.t("%d–%d", from+1, to)})
	}
	if !p.short && r.W < 520 {
		var row ui.Rect
		r = p.written(r, field)
		row, r = r.CutTop(finger, p.gap)
		p.buttons(row, sorts...)
		return r
	}
	top, r := r.CutTop(ui.TextHeight(1), p.gap)
	left, right := top.CutLeft(0.36*top.W, p.gap)
	p.written(left, field)
	row, _ := right.CutBottom(finger, 0)
	p.buttons(row, sorts...)
	return r
}

// sortedText says how many learners are shown and in which order.
func (g *Game) sortedText(n, of int) string {
	v := &g.marks.view
	switch {
	case v.By == book.ByMarks && v.Down:
		return g.t("%d of %d learners, the most marks first.", n, of)
	case v.By == book.ByMarks:
		return g.t("%d of %d learners, the fewest marks first.", n, of)
	case v.By == book.ByTime && v.Down:
		return g.t("%d of %d learners, the longest time first.", n, of)
	case v.By == book.ByTime:
		return g.t("%d of %d learners, the shortest time first.", n, of)
	case v.Down:
		return g.t("%d of %d learners, by name from Z to A.", n, of)
	}
	return g.t("%d of %d learners, by name.", n, of)
}

// layRow lays out one learner.
func (g *Game) layRow(p *paper, r ui.Rect, t *book.Table, row *book.Row, n int, name, cell float64, from, to int, cells bool) {
	learner, mean := row.Entry.Slip.Name, g.rowMean(row)
	w := ui.Widget{ID: numberedID("learner", n), Label: g.t("%s: %s marks", plainly(learner), plainly(mean)), Face: p.cut(learner, p.label, false, name-4*p.body), Plain: true,
		Rect: ui.Rect{X: r.X, Y: r.Y, W: name - p.gap/2, H: r.H - 2}}
	if row.Shared {
		w.Face = p.cut("! "+learner, p.label, false, name-4*p.body)
	}
	if !cells {
		w.Rect.W, w.Note = r.W, mean
		p.widget(w)
		return
	}
	p.widget(w)
	at := func(i int) ui.Rect {
		return ui.Rect{X: r.X + name + float64(i)*cell, Y: r.Y + (r.H-2-p.body)/2 - 0.1*p.body, W: cell - p.gap/2}
	}
	p.line(at(0), mean, p.body, true, Red, Right)
	for i := from; i < to; i++ {
		here := at(1 + i - from)
		p.line(here, p.cut(g.cellText(&row.Cells[i], t.Items[i].Exercise), p.body, false, here.W), p.body, false, Red, Right)
	}
}

// rowMean is the mean of a learner's best marks.
func (g *Game) rowMean(row *book.Row) string { return wholeMarks(row.Best) }

// wholeMarks writes marks as the learner saw them: 100 only for all; a dash where there
// are none.
func wholeMarks(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return wholeNumber(math.Floor(v + 0.05))
}

// cellText is what a learner reached in an exercise: best marks, or a limit.
func (g *Game) cellText(c *book.Cell, e *sheet.Exercise) string {
	switch {
	case c.Work == nil:
		return "–"
	case !c.Marked:
		return "…"
	case c.Found:
		return g.lang.Value(e.Quantity.Format(c.Limit))
	}
	return wholeMarks(c.Best)
}
