package book

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// A Column is what rows are sorted by.
type Column int

const (
	ByName    Column = iota
	ByMarks          // the means of the best
	ByTime           // seconds spent
	ByMinute         // when the slip was handed in
	ByOneItem        // the best marks of one item, or the limit found in it
)

// A View is how a table is looked at.
type View struct {
	Find string // only learners whose names have this in them, upper or lower case
	By   Column
	Item int  // of ByOneItem
	Down bool // the greatest first
}

// View gives the rows that are looked for, sorted. Whoever has nothing to be sorted by
// comes last either way; equal rows are sorted by their names.
func (t *Table) View(v View) []*Row {
	find := strings.ToLower(strings.TrimSpace(v.Find))
	var rows []*Row
	for i := range t.Rows {
		if strings.Contains(strings.ToLower(t.Rows[i].Entry.Slip.Name), find) {
			rows = append(rows, &t.Rows[i])
		}
	}
	slices.SortStableFunc(rows, func(a, b *Row) int {
		order := byName(a, b)
		if v.By == ByName {
			if v.Down {
				return -order
			}
			return order
		}
		x, y := t.key(a, v), t.key(b, v)
		if math.IsNaN(x) || math.IsNaN(y) {
			return cmp.Or(cmp.Compare(btoi(math.IsNaN(x)), btoi(math.IsNaN(y))), order)
		}
		if v.Down {
			x, y = y, x
		}
		return cmp.Or(cmp.Compare(x, y), order)
	})
	return rows
}

// byName compares as people look names up, upper and lower case alike. Letters with
// accents come after z: a collation for each language is not worth its size here.
func byName(a, b *Row) int {
	x, y := a.Entry.Slip.Name, b.Entry.Slip.Name
	return cmp.Or(strings.Compare(strings.ToLower(x), strings.ToLower(y)), strings.Compare(x, y))
}

func (t *Table) key(r *Row, v View) float64 {
	switch v.By {
	case ByMarks:
		return r.Best
	case ByTime:
		return float64(r.Seconds)
	case ByMinute:
		return float64(r.Entry.Slip.Minute)
	}
	c := &r.Cells[v.Item]
	switch {
	case c.Found:
		return c.Limit
	case c.hasMarks():
		return c.Best
	}
	return math.NaN()
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}
