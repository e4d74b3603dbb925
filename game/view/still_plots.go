package view

import (
	"slices"

	"partialcredit/game"
)

// sameCharts compares charts down to their dots, so that pages with charts are
// drawn anew only when one has changed.
func sameCharts(a, b []game.Chart) bool { return slices.EqualFunc(a, b, sameChart) }

func sameChart(a, b game.Chart) bool {
	return a.Rect == b.Rect && a.Name == b.Name && sameAxis(&a.X, &b.X) && sameAxis(&a.Y, &b.Y) &&
		slices.Equal(a.Levels, b.Levels) && slices.Equal(a.Key, b.Key) && slices.EqualFunc(a.Series, b.Series, sameSeries)
}

func sameAxis(a, b *game.Axis) bool {
	return a.Lo == b.Lo && a.Hi == b.Hi && a.Log == b.Log && a.Label == b.Label && slices.Equal(a.Ticks, b.Ticks)
}

func sameSeries(a, b game.Series) bool {
	return a.Joined == b.Joined && a.Dashed == b.Dashed && a.Ink == b.Ink && slices.Equal(a.Points, b.Points)
}

func sameTables(a, b []game.Table) bool { return slices.EqualFunc(a, b, sameTable) }

func sameTable(a, b game.Table) bool {
	return a.Rect == b.Rect && a.Name == b.Name && a.RowsTitle == b.RowsTitle && a.ColumnsTitle == b.ColumnsTitle &&
		slices.Equal(a.Rows, b.Rows) && slices.Equal(a.Columns, b.Columns) &&
		slices.EqualFunc(a.Counts, b.Counts, slices.Equal[[]int])
}

// copyCharts copies charts with all that they hold: the game may write its next
// ones over them.
func copyCharts(charts []game.Chart) []game.Chart {
	out := slices.Clone(charts)
	for i := range out {
		c := &out[i]
		c.X.Ticks, c.Y.Ticks = slices.Clone(c.X.Ticks), slices.Clone(c.Y.Ticks)
		c.Levels, c.Key, c.Series = slices.Clone(c.Levels), slices.Clone(c.Key), slices.Clone(c.Series)
		for k := range c.Series {
			c.Series[k].Points = slices.Clone(c.Series[k].Points)
		}
	}
	return out
}

func copyTables(tables []game.Table) []game.Table {
	out := slices.Clone(tables)
	for i := range out {
		t := &out[i]
		t.Rows, t.Columns, t.Counts = slices.Clone(t.Rows), slices.Clone(t.Columns), slices.Clone(t.Counts)
		for k := range t.Counts {
			t.Counts[k] = slices.Clone(t.Counts[k])
		}
	}
	return out
}
