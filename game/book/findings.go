package book

import (
	"math"
	"strconv"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

var comparison = ask.Comparison

// A Finding is a sentence about the class.
type Finding struct {
	Text words.Message
	Item int // of the table, that it is about; -1 where it is about the class
}

// How much is found (design choices). An exercise that separates less than little is
// worth a look: 0.2 is where Ebel's rule of thumb begins to call one poor (Ebel and
// Frisbie 1991, Essentials of Educational Measurement, from memory).
const (
	mostConfused = 3
	leastTimes   = 2
	little       = 0.2
)

// Findings is what the table says, in sentences: first about the class, then what is
// still confused, then which exercises to look at.
func (t *Table) Findings() []Finding {
	var found []Finding
	say := func(item int, m words.Message) { found = append(found, Finding{m, item}) }
	t.sayClass(say)
	t.sayConfused(say)
	t.sayItems(say)
	t.sayLimits(say)
	return found
}

func (t *Table) sayClass(put func(int, words.Message)) {
	if len(t.Rows) == 0 {
		put(-1, words.Say("Nobody has handed in this sheet yet."))
		return
	}
	whole := 0
	var first, best []float64
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Done == len(t.Items) {
			whole++
		}
		if !math.IsNaN(r.First) {
			first, best = append(first, r.First), append(best, r.Best)
		}
	}
	put(-1, words.Say("Learners: %d. Of them, answered all of the sheet: %d.", len(t.Rows), whole))
	if len(first) > 0 {
		put(-1, words.Say("Marks, on average: %s at first, %s at best.", whole0(mean(first)), whole0(mean(best))))
	}
	for i := range t.Rows {
		if t.Rows[i].Shared {
			put(-1, words.Say("The slips of “%s” have different first answers: perhaps two learners chose this name. The latest counts.", t.Rows[i].Entry.Slip.Name))
		}
	}
	if len(t.Rows) < LeastLearners {
		put(-1, words.Say("Fewer than %d learners are too few to say which exercises are too hard, too easy or separate the class.", LeastLearners))
	}
}

func (t *Table) sayConfused(put func(int, words.Message)) {
	said := 0
	for _, c := range t.Confused() {
		if c.Times < leastTimes || said == mostConfused {
			continue
		}
		said++
		put(c.Group.Items[0], words.Say("Taken for each other: “%s” and “%s”, %d times of %d, %s %% (the true share is likely %s to %s %%).",
			c.A, c.B, c.Times, c.Played, percent(c.Share()), percent(c.Low), percent(c.High)))
	}
	for _, g := range t.Groups() {
		if !g.Comparison {
			continue
		}
		alike, other := ask.Comparison[0], ask.Comparison[1]
		if n := g.Table.Count(other, alike); n >= leastTimes {
			all := n + g.Table.Count(other, other)
			low, high := practice.Wilson(n, all)
			put(g.Items[0], words.Say("Different sounds were called the same %d times of %d, %s %% (the true share is likely %s to %s %%).", n, all, percent(float64(n)/float64(all)), percent(low), percent(high)))
		}
		if n := g.Table.Count(alike, other); n >= leastTimes {
			all := n + g.Table.Count(alike, alike)
			low, high := practice.Wilson(n, all)
			put(g.Items[0], words.Say("Sounds that are the same were called different %d times of %d, %s %% (the true share is likely %s to %s %%).", n, all, percent(float64(n)/float64(all)), percent(low), percent(high)))
		}
	}
}

func (t *Table) sayItems(put func(int, words.Message)) {
	most := -1
	for i := range t.Items {
		item := &t.Items[i]
		title := item.Exercise.Title
		switch {
		case len(t.Rows) > 0 && item.Done == 0:
			put(i, words.Say("Nobody has answered “%s”.", title))
		case item.Hard && item.Mean < item.Chance:
			put(i, words.Say("Too hard: “%s”. First marks are %s on average; guessing, or leaving everything as it starts, gives %s.", title, whole0(item.Mean), whole0(item.Chance)))
		case item.Hard:
			put(i, words.Say("Too hard: “%s”. First marks are %s on average.", title, whole0(item.Mean)))
		case item.Easy:
			put(i, words.Say("Too easy: “%s”. First marks are %s on average.", title, whole0(item.Mean)))
		}
		if !math.IsNaN(item.Apart) && item.Apart >= little && (most < 0 || item.Apart > t.Items[most].Apart) {
			most = i
		}
	}
	if most >= 0 {
		put(most, words.Say("“%s” separates the class best: who does well in it does well in the rest (correlation %s).", t.Items[most].Exercise.Title, decimals(t.Items[most].Apart)))
	}
	for i := range t.Items {
		if item := &t.Items[i]; item.Apart < little {
			put(i, words.Say("“%s” says little about the rest (correlation %s): see whether its task is clear.", item.Exercise.Title, decimals(item.Apart)))
		}
	}
}

func (t *Table) sayLimits(put func(int, words.Message)) {
	for i := range t.Items {
		item := &t.Items[i]
		if item.Exercise.Kind == sheet.Limit && item.Found > 0 {
			put(i, words.Say("“%s”: %d of %d found a limit; in the middle of the class it is %s.", item.Exercise.Title, item.Found, item.Done, item.Exercise.Quantity.Format(item.Limit)))
		}
	}
}

func whole0(v float64) string   { return strconv.FormatFloat(v, 'f', 0, 64) }
func decimals(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
func percent(v float64) string  { return whole0(100 * v) }
