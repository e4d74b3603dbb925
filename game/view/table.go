package view

import (
	"math"
	"slices"
	"strconv"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// tabled is where the parts of a table are drawn.
type tabled struct {
	size         float64
	cells        ui.Rect // all of them
	w, h         float64 // of one
	rows         []string
	columns      [][]string // in lines
	name         string
	rowsTitle    word
	columnsTitle word
	nameBase     float64
	base         float64 // of the lowest names of columns
}

const leastCell = 30.0 // CSS pixels across

// layTable makes the cells whole squares of the paper. Where a column is too
// narrow for its name, rows and columns are numbered instead.
func layTable(t *game.Table) tabled {
	p := tabled{size: plotSize(t.Rect)}
	in := t.Rect.Inset(chartEdge)
	line := p.size + 6
	y := in.Y
	if t.Name != "" {
		p.name, p.nameBase = fit(t.Name, p.size, true, in.W), y+line-6
		y += line
	}
	p.rows = slices.Clone(t.Rows)
	n := float64(max(1, len(t.Columns)))
	left := p.spread(in.W, n)
	lines := 1
	for _, name := range t.Columns {
		wrapped := p.wrap(name, p.w-6)
		p.columns = append(p.columns, wrapped)
		lines = max(lines, len(wrapped))
	}
	if p.tooWide() && slices.Equal(t.Rows, t.Columns) {
		for i, name := range t.Rows {
			number := strconv.Itoa(i + 1)
			p.columns[i], p.rows[i] = []string{number}, number+"  "+name
		}
		left, lines = p.spread(in.W, n), 1
	}
	wide := p.w * n
	p.columnsTitle = word{fit(t.ColumnsTitle, p.size, false, max(wide, in.W-left)), 0, y + line - 6, false, game.Faint}
	title := width(p.columnsTitle.text, p.size, false)
	p.columnsTitle.x = in.X + left + max(0, (wide-title)/2)
	if t.ColumnsTitle != "" {
		y += line
	}
	y = math.Ceil(y + p.size*1.1*float64(lines-1) + line)
	p.base = y - 6
	p.rowsTitle = word{fit(t.RowsTitle, p.size, false, left-8), in.X, p.base, false, game.Faint}
	for i := range p.rows {
		p.rows[i] = fit(p.rows[i], p.size, false, left-8)
	}
	m := float64(max(1, len(t.Rows)))
	p.h = min((in.Bottom()-y)/m, max(p.w, 2*line), 5*p.size)
	if p.h >= 2*square {
		p.h = square / 2 * math.Floor(p.h/square*2)
	}
	p.cells = ui.Rect{X: in.X + left, Y: y, W: wide, H: p.h * m}
	return p
}

// spread divides a width between the names of the rows and the cells.
func (p *tabled) spread(room, columns float64) (left float64) {
	left = 5 * p.size
	for _, s := range p.rows {
		left = max(left, width(s, p.size, false)+10)
	}
	left = math.Floor(min(math.Ceil(left), max(0.3*room, room-leastCell*columns)))
	p.w = min(9*p.size, (room-left)/columns)
	if p.w >= leastCell {
		p.w = square * math.Floor(p.w/square)
	}
	return left
}

// wrap breaks a name that is too wide in two, at a space.
func (p *tabled) wrap(name string, room float64) []string {
	if width(name, p.size, false) <= room {
		return []string{name}
	}
	for i := len(name) - 1; i > 0; i-- {
		if name[i] == ' ' && width(name[:i], p.size, false) <= room {
			return []string{name[:i], name[i+1:]}
		}
	}
	return []string{name}
}

// tooWide says whether the name of a column does not fit.
func (p *tabled) tooWide() bool {
	for _, lines := range p.columns {
		for _, s := range lines {
			if width(s, p.size, false) > p.w-6 {
				return true
			}
		}
	}
	return false
}

func (p *tabled) cell(row, column int) ui.Rect {
	return ui.Rect{X: p.cells.X + float64(column)*p.w, Y: p.cells.Y + float64(row)*p.h, W: p.w, H: p.h}
}

// table draws a table of counts on squared paper: the more often an answer was
// given to a sound, the more ink is in its cell.
func (c *canvas) table(t *game.Table) {
	p := layTable(t)
	c.squared(t.Rect, p.cells.X-t.Rect.X, p.cells.Y-t.Rect.Y)
	black, faint := c.inks[game.Black], c.inks[game.Faint]
	if p.name != "" {
		c.set(p.name, t.Rect.X+chartEdge, p.nameBase, p.size, true, false, game.Left, black)
	}
	for _, w := range [...]word{p.columnsTitle, p.rowsTitle} {
		c.set(w.text, w.x, w.base, p.size, false, false, game.Left, faint)
	}
	for k, lines := range p.columns {
		for i, s := range lines {
			base := p.base - p.size*1.1*float64(len(lines)-1-i)
			c.set(fit(s, p.size, false, p.w-4), p.cells.X+(float64(k)+0.5)*p.w, base, p.size, false, false, game.Middle, black)
		}
	}
	readable := p.h >= p.size+2
	for i := range t.Rows {
		for k := range t.Columns {
			if share := t.Share(i, k); share > 0 {
				c.area(p.cell(i, k), c.inks[game.Yours].times(c.dense*float32(share)))
			}
		}
		if readable {
			base := p.cells.Y + (float64(i)+0.5)*p.h + 0.35*p.size
			c.set(p.rows[i], p.cells.X-8, base, p.size, false, false, game.Right, black)
		}
	}
	c.ruledCells(&p)
	for i, row := range t.Rows {
		for k, column := range t.Columns {
			r := p.cell(i, k)
			if row == column {
				c.ring(c.rounded(r, 2, 1), 2.4, black)
			}
			count := t.Count(i, k)
			text := strconv.Itoa(count)
			if readable && width(text, p.size, false) <= p.w-4 {
				ink := black
				if count == 0 {
					ink = faint
				}
				c.set(text, r.X+p.w/2, r.Y+p.h/2+0.35*p.size, p.size, row == column, false, game.Middle, ink)
			}
		}
	}
}

// ruledCells draws the fine lines between the cells.
func (c *canvas) ruledCells(p *tabled) {
	faint := c.inks[game.Faint]
	for k := range len(p.columns) + 1 {
		c.along(p.cells.X+float64(k)*p.w, p.cells.Y, p.cells.Bottom(), 1, faint)
	}
	for i := range len(p.rows) + 1 {
		c.across(p.cells.X, p.cells.Right(), p.cells.Y+float64(i)*p.h, 1, faint)
	}
}
