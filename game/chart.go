package game

import (
	"time"

	"partialcredit/game/ui"
)

// A Chart is a plot drawn by hand on squared paper: a run, or something over
// time. Its texts are in the person's language already. It is drawn well from
// 280 by 160 CSS pixels on.
type Chart struct {
	Rect   ui.Rect
	Name   string // its heading; none where empty
	X, Y   Axis
	Levels []Level
	Series []Series
	Key    []Sign // what the dots mean; left out where there is no room
}

// An Axis is one side of a chart. What lies outside it is not drawn.
type Axis struct {
	Lo, Hi float64
	Log    bool // equal ratios are equal lengths; Lo is above 0 then
	Ticks  []TickMark
	Label  string // the quantity and its unit
}

// A TickMark is a place on an axis. Where texts would touch, some are left out.
type TickMark struct {
	At   float64
	Text string
}

// Series are dots that belong together, in the order in which they are joined.
type Series struct {
	Points []Dot
	Joined bool
	Dashed bool // the line that joins them
	Ink    Ink
}

// A Dot is a point of a series.
type Dot struct {
	X, Y   float64
	Mark   DotKind
	Ringed bool // by the pencil
}

// A DotKind is the shape of a dot.
type DotKind int

// The dots. The cross is one of the red pen, whatever the ink of its series.
const (
	DotFilled DotKind = iota
	DotOpen
	DotCross
	NoDot // a corner of the line
)

// A Level is a line across the whole chart, with what it says.
type Level struct {
	At     float64
	Text   string
	Ink    Ink
	Dashed bool
}

// A Sign says what a dot means.
type Sign struct {
	Mark   DotKind
	Ringed bool
	Ink    Ink
	Text   string
}

// A Table is a square of counts: how often each column was answered to each
// row. Cells whose row and column have the same name are framed. Every cell
// should have 30 by 20 CSS pixels; a smaller one goes without its number.
type Table struct {
	Rect                    ui.Rect
	Name                    string // its heading; none where empty
	Rows, Columns           []string
	RowsTitle, ColumnsTitle string  // "played" and "answered"
	Counts                  [][]int // by row and column; what is missing is 0
}

// Count is one cell.
func (t *Table) Count(row, column int) int {
	if row >= len(t.Counts) || column >= len(t.Counts[row]) {
		return 0
	}
	return t.Counts[row][column]
}

// Share is which part of its row a cell is, 0 to 1; 0 in an empty row.
func (t *Table) Share(row, column int) float64 {
	sum := 0
	for k := range t.Columns {
		sum += t.Count(row, k)
	}
	if sum <= 0 {
		return 0
	}
	return float64(t.Count(row, column)) / float64(sum)
}

// LinearAxis is an axis from lo to hi with at most so many round numbers.
func LinearAxis(lo, hi float64, most int, text func(float64) string) Axis {
	return Axis{Lo: lo, Hi: hi, Ticks: tickMarks(linearTicks(lo, hi, most), text)}
}

// RatioAxis is a logarithmic axis for quantities from lo, above 0, to hi. It
// begins and ends at 1, 2 or 5 times a power of ten.
func RatioAxis(lo, hi float64, most int, text func(float64) string) Axis {
	lo, hi = roundOut(lo, hi)
	return Axis{Lo: lo, Hi: hi, Log: true, Ticks: tickMarks(ratioTicks(lo, hi, most), text)}
}

// DateAxis is an axis of whole days, from the one of from to the one of to, in
// the time zone of from. Its ticks are days, Mondays, or first days of months or
// years; text writes one of them. Its values are those of [Date].
func DateAxis(from, to time.Time, most int, text func(time.Time, DateUnit) string) Axis {
	from, to = midnight(from, 0), midnight(to.In(from.Location()), 1)
	dates, unit := dateTicks(from, to, most)
	a := Axis{Lo: Date(from), Hi: Date(to)}
	for _, d := range dates {
		a.Ticks = append(a.Ticks, TickMark{Date(d), text(d, unit)})
	}
	return a
}

// Date is a time as a value on an axis: seconds since 1970 (Unix).
func Date(t time.Time) float64 { return float64(t.UnixMilli()) / 1000 }

func tickMarks(at []float64, text func(float64) string) []TickMark {
	out := make([]TickMark, len(at))
	for i, v := range at {
		out[i] = TickMark{v, text(v)}
	}
	return out
}
