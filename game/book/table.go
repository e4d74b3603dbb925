package book

import (
	"math"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// A Table is what the class did with one sheet, as far as it is marked. Only slips that
// count are in it.
type Table struct {
	Sheet *sheet.Sheet
	Items []Item // what there is to answer on the sheet, in its order: no demonstrations
	Rows  []Row  // learners, in the order in which their slips came
	Left  int    // how many cells are still to be marked
}

// A Row is one learner.
type Row struct {
	Entry   *Entry
	Cells   []Cell  // one for each of the table's items
	Done    int     // how many of them were answered
	First   float64 // mean of the first marks of what was answered; NaN where nothing has marks
	Best    float64 // mean of the best
	Tries   int
	Seconds int
	Replays int
	Kept    int  // how many other slips of the learner are kept beside this one
	Shared  bool // one of them has other first answers: perhaps two learners chose one name
}

// A Cell is what one learner did in one exercise.
type Cell struct {
	Work         *slip.Work // nil where it was not answered
	Marked       bool       // the outcome is known
	slip.Outcome            // First and Best are NaN where there are no marks
}

// Table is that of a sheet, by its fingerprint; nil where it was not opened. It is made
// anew each time, which takes some milliseconds for a class of a thousand.
func (b *Book) Table(print string) *Table {
	sh := b.Sheet(print)
	if sh == nil {
		return nil
	}
	t := &Table{Sheet: sh}
	for i := range sh.Exercises {
		if sh.Exercises[i].Kind != sheet.Show {
			t.Items = append(t.Items, Item{Exercise: &sh.Exercises[i]})
		}
	}
	for _, e := range b.entries {
		if e.Counts && e.Slip.Sheet == print {
			t.Rows = append(t.Rows, b.row(e, t))
		}
	}
	for i := range t.Items {
		t.Items[i].Chance = b.chance(print, t.Items[i].Exercise)
		t.judge(i)
	}
	return t
}

func (b *Book) row(e *Entry, t *Table) Row {
	r := Row{Entry: e, Cells: make([]Cell, len(t.Items))}
	var first, best []float64
	for i := range t.Items {
		w := work(e.Slip, t.Items[i].Exercise.ID)
		c := Cell{Work: w, Outcome: slip.Outcome{First: math.NaN(), Best: math.NaN()}}
		if w != nil {
			r.Done++
			r.Tries, r.Seconds, r.Replays = r.Tries+w.Tries, r.Seconds+w.Seconds, r.Replays+w.Replays
			if o, ok := b.outcome(e, w); ok {
				c.Outcome, c.Marked = o, true
			} else {
				t.Left++
			}
		}
		if c.hasMarks() {
			first, best = append(first, c.First), append(best, c.Best)
		}
		r.Cells[i] = c
	}
	r.First, r.Best = mean(first), mean(best)
	for _, other := range b.learners[e.learner] {
		if other != e {
			r.Kept++
			r.Shared = r.Shared || e.contradicts(other)
		}
	}
	return r
}

// hasMarks says whether the cell has marks: no limit has.
func (c *Cell) hasMarks() bool { return c.Marked && !math.IsNaN(c.First) }

// chance are the marks of who guesses, on average, or who leaves every control where it
// starts; NaN where they are not known yet, and in a limit.
func (b *Book) chance(print string, x *sheet.Exercise) float64 {
	switch x.Kind {
	case sheet.Name, sheet.Same:
		return guessing(x)
	case sheet.Match:
		var marks []float64
		for _, p := range b.starts[print+" "+x.ID] {
			if v := b.marks[p]; v != unmarked {
				marks = append(marks, v)
			}
		}
		return mean(marks)
	}
	return math.NaN()
}

// work is what a slip says of an exercise; nil where it says nothing.
func work(s *slip.Slip, id string) *slip.Work {
	for i := range s.Work {
		if s.Work[i].ID == id {
			return &s.Work[i]
		}
	}
	return nil
}
