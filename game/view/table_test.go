package view

import (
	"math"
	"testing"

	"partialcredit/game"
	"partialcredit/game/ui"
)

func aTable(r ui.Rect) game.Table {
	names := []string{"sine", "triangle", "sawtooth", "pulse", "falling sawtooth"}
	return game.Table{
		Rect: r, Name: "What you took for what", Rows: names, Columns: names, RowsTitle: "played", ColumnsTitle: "answered",
		Counts: [][]int{{18, 2, 0, 0, 0}, {5, 12, 1, 2, 0}, {0, 0, 100, 0, 0}, {0, 1, 2, 21, 0}, {0, 0, 9, 1, 6}},
	}
}

// glyphs is the smallest rectangle round the characters whose middles lie in r.
func (c *canvas) glyphs(r ui.Rect) ui.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i := 0; i+5 < len(c.indices); i += 6 { // quads
		a, b := c.vertices[c.indices[i]], c.vertices[c.indices[i+2]]
		if a.SrcX == whiteAt || b.DstX <= a.DstX {
			continue
		}
		l, t, R, B := float64(a.DstX)/c.scale, float64(a.DstY)/c.scale, float64(b.DstX)/c.scale, float64(b.DstY)/c.scale
		if r.Contains((l+R)/2, (t+B)/2) {
			x0, y0, x1, y1 = min(x0, l), min(y0, t), max(x1, R), max(y1, B)
		}
	}
	return ui.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

// What stands in a cell stands in its row and column, inked by its share.
func TestCellsAlignWithRowsAndColumns(t *testing.T) {
	for _, r := range []ui.Rect{{X: 10, Y: 20, W: 280, H: 180}, {X: 10, Y: 20, W: 390, H: 300}, {X: 5.5, Y: 7, W: 900, H: 500}} {
		for _, scale := range []float64{1, 2} {
			table := aTable(r)
			c := testCanvas(scale)
			c.table(&table)
			p := layTable(&table)
			if p.cells.Right() > r.Right() || p.cells.Bottom() > r.Bottom() || p.w < leastCell {
				t.Fatalf("%v: cells %v", r, p.cells)
			}
			middle := func(what string, i, k int, g, around ui.Rect, level bool) {
				if dx := g.X + g.W/2 - around.X - around.W/2; !(math.Abs(dx) <= 1.5) && !level {
					t.Errorf("%v at %v: %s %d, %d: %v off its column", r, scale, what, i, k, dx)
				}
				if dy := g.Y + g.H/2 - around.Y - around.H/2; level && !(math.Abs(dy) <= 4) {
					t.Errorf("%v at %v: %s %d, %d: %v off its row", r, scale, what, i, k, dy)
				}
			}
			for i := range 5 {
				row := ui.Rect{X: r.X, Y: p.cells.Y + float64(i)*p.h, W: p.cells.X - r.X, H: p.h}
				middle("row", i, 0, c.glyphs(row), row, true)
				column := ui.Rect{X: p.cells.X + float64(i)*p.w, Y: p.base - p.size, W: p.w, H: p.size + 5}
				middle("column", i, 0, c.glyphs(column), column, false)
				for k := range 5 {
					cell := p.cell(i, k)
					g := c.glyphs(cell)
					middle("count", i, k, g, cell, true)
					middle("count", i, k, g, cell, false)
					if !inside(g, cell, -1) {
						t.Errorf("%v at %v: %v does not lie in cell %d, %d, %v", r, scale, g, i, k, cell)
					}
				}
			}
		}
	}
}

func TestInkOfACellIsItsShare(t *testing.T) {
	for _, th := range []*theme{&paper, &blackboard} {
		table := aTable(ui.Rect{W: 900, H: 500})
		c := testCanvas(1)
		c.theme = th
		c.table(&table)
		p := layTable(&table)
		at := func(i, k int) tint { // between the lines of the squares
			r := p.cell(i, k)
			return c.inkAt(r.X+5.3, r.Y+5.2)
		}
		for _, cell := range []struct {
			row, column int
			share       float32
		}{{2, 2, 1}, {0, 0, 0.9}, {0, 1, 0.1}, {1, 0, 0.25}, {4, 4, 6. / 16}, {0, 4, 0}} {
			want := th.paper
			for n := range want {
				want[n] += th.dense * cell.share * (th.inks[game.Yours][n] - want[n])
			}
			if got := at(cell.row, cell.column); !near(got, want) {
				t.Errorf("cell %d, %d: %v, not %v", cell.row, cell.column, got, want)
			}
		}
		framed := func(i, k int) bool {
			r := p.cell(i, k)
			return near(c.inkAt(r.X+1.7, r.Y+0.43*r.H), th.inks[game.Black])
		}
		for i := range 5 {
			for k := range 5 {
				if framed(i, k) != (i == k) {
					t.Errorf("cell %d, %d: framed is %v", i, k, framed(i, k))
				}
			}
		}
	}
}

func TestTablesStayInside(t *testing.T) {
	for w := 280.0; w < 2600; w *= 1.53 {
		for h := 160.0; h < 1500; h *= 1.61 {
			for n := range 14 {
				table := aTable(ui.Rect{X: 12, Y: 30, W: w, H: h})
				for len(table.Rows) < n {
					table.Rows = append(table.Rows, "an answer that is seldom given")
				}
				table.Rows, table.Columns = table.Rows[:n], table.Rows[:n]
				if n%2 == 1 {
					table.Columns = append([]string{"something else"}, table.Columns...)
					table.RowsTitle, table.ColumnsTitle = "a title that is far too long for it", "another title that is far too long for it"
				}
				c := testCanvas(1)
				c.table(&table)
				if e := c.extent(); !inside(e, table.Rect, 1) {
					t.Fatalf("%v by %v, %d names: drawn %v in %v", w, h, n, e, table.Rect)
				}
			}
		}
	}
}
