package book

import (
	"math"
	"strconv"
	"strings"

	"partialcredit/game/sheet"
)

// CSV is the table for a spreadsheet (RFC 4180, UTF-8, a header row, decimal points): a
// line for each learner and exercise, in the order of the rows.
//
// Names come from learners, and a spreadsheet would work out one that looks like a
// formula: such cells begin with an apostrophe (OWASP, CSV Injection).
func (t *Table) CSV(rows []*Row) string {
	w := &csv{}
	w.line("sheet", "learner", "handed in (UTC)", "exercise", "title", "kind", "first marks", "best marks",
		"limit", "unit", "tries", "minutes", "replays", "target uncovered", "other slips kept")
	for _, r := range rows {
		for i := range r.Cells {
			c, e := &r.Cells[i], t.Items[i].Exercise
			w.text(t.Sheet.Title).text(r.Entry.Slip.Name).text(r.Entry.When()).text(e.ID).text(e.Title).text(kind(e))
			if c.Work == nil {
				w.empty(8)
			} else {
				w.marks(c.First, c).marks(c.Best, c).limit(c, e)
				w.number(float64(c.Work.Tries), 0).number(float64(c.Work.Seconds)/60, 1).number(float64(c.Work.Replays), 0)
				w.text(yes(c.uncovered()))
			}
			w.number(float64(r.Kept), 0).end()
		}
	}
	return w.String()
}

// Wide is the table with a line for each learner: the best marks of every exercise, or
// the limit found, and what they come to.
func (t *Table) Wide(rows []*Row) string {
	w := &csv{}
	w.text("sheet").text("learner").text("handed in (UTC)").text("answered").text("first marks, mean").text("best marks, mean").
		text("tries").text("minutes").text("replays")
	for _, item := range t.Items {
		title := item.Exercise.Title
		if item.Exercise.Kind == sheet.Limit {
			if _, unit := measured(item.Exercise, 1); unit != "" {
				title += " (" + unit + ")"
			}
		}
		w.text(title)
	}
	w.end()
	for _, r := range rows {
		w.text(t.Sheet.Title).text(r.Entry.Slip.Name).text(r.Entry.When())
		w.number(float64(r.Done), 0).number(r.First, 1).number(r.Best, 1)
		w.number(float64(r.Tries), 0).number(float64(r.Seconds)/60, 1).number(float64(r.Replays), 0)
		for i := range r.Cells {
			if c := &r.Cells[i]; c.Found {
				number, _ := measured(t.Items[i].Exercise, c.Limit)
				w.field(number)
			} else {
				w.marks(c.Best, c)
			}
		}
		w.end()
	}
	return w.String()
}

func (c *Cell) uncovered() bool {
	return c.Work.First.Uncovered || c.Work.Best != nil && c.Work.Best.Uncovered
}

func kind(e *sheet.Exercise) string {
	if e.Kind == "" {
		return string(sheet.Match)
	}
	return string(e.Kind)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// csv writes records of RFC 4180: fields parted by commas, in quotes where they need
// them, lines that end with CR and LF.
type csv struct {
	strings.Builder
	begun bool // a field stands in the line
}

func (w *csv) line(fields ...string) {
	for _, f := range fields {
		w.text(f)
	}
	w.end()
}

func (w *csv) end() {
	w.WriteString("\r\n")
	w.begun = false
}

func (w *csv) field(s string) *csv {
	if w.begun {
		w.WriteByte(',')
	}
	w.begun = true
	w.WriteString(s)
	return w
}

// formula says whether a cell that begins so is taken for a formula (OWASP, CSV Injection:
// = + - @, tab, line ends, and the full-width forms of the first four, which lie 0xFEE0
// above them in Unicode).
func formula(r rune) bool {
	const toFullWidth = 0xFEE0
	return r == '\t' || r == '\r' || r == '\n' ||
		strings.ContainsRune("=+-@", r) || r > toFullWidth && strings.ContainsRune("=+-@", r-toFullWidth)
}

// text writes a text. Semicolons are quoted too: some spreadsheets part fields at them.
func (w *csv) text(s string) *csv {
	if s == "" {
		return w.field("")
	}
	if formula(firstRune(strings.TrimLeft(s, " "))) {
		s = "'" + s
	}
	if strings.ContainsAny(s, "\",;\r\n\t'") || s[0] == ' ' || s[len(s)-1] == ' ' {
		s = `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return w.field(s)
}

func firstRune(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}

// number writes a number with so many decimals; nothing for NaN.
func (w *csv) number(v float64, decimals int) *csv {
	if math.IsNaN(v) {
		return w.field("")
	}
	return w.field(strconv.FormatFloat(v, 'f', decimals, 64))
}

// marks writes marks where there are any.
func (w *csv) marks(v float64, c *Cell) *csv {
	if !c.hasMarks() {
		return w.field("")
	}
	return w.number(v, 1)
}

// limit writes the threshold of a limit and its unit.
func (w *csv) limit(c *Cell, e *sheet.Exercise) *csv {
	if !c.Found {
		return w.field("").field("")
	}
	number, unit := measured(e, c.Limit)
	return w.field(number).text(unit)
}

// measured is a value of a limit as people read it, and its unit.
func measured(e *sheet.Exercise, v float64) (number, unit string) {
	number, unit, _ = strings.Cut(e.Quantity.Format(v), " ")
	return number, unit
}

func (w *csv) empty(n int) {
	for range n {
		w.field("")
	}
}
