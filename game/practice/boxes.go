package practice

import (
	"maps"
	"slices"
)

// Boxes bring back what was missed (Leitner 1972, So lernt man lernen): an item
// moves up one box with each right answer and back to the first with a wrong one,
// and the higher its box, the later it is due. Items go by any key; set a key to
// Item{} to put a new one in.
type Boxes map[string]Item

// An Item is where a thing to practise stands. The zero value is new: in the
// first box and due.
type Item struct {
	Box int `json:"box,omitempty"` // 1 to 5; others count as the nearest of these
	Due int `json:"due,omitempty"` // the day from which on it is due, counted from any day as long as it is always the same
}

// Days is after how many days an item is due again, by its box. A missed item is
// due the same day, until it was answered rightly, as in the SM-2 schedule
// (hearing, source 61); then after 1, 3 and 5 days, a common choice for Leitner's
// boxes (source 60). The last is a design choice: twice the one before.
var Days = [5]int{0, 1, 3, 5, 10}

// Answer moves an item, put in if it is new, after an answer on a day. A right
// answer to what is not due yet changes nothing: what was heard a minute ago
// proves little.
func (b Boxes) Answer(key string, right bool, day int) {
	it := b[key]
	box := it.box()
	switch {
	case !right:
		box = 1
	case !it.due(day):
		return
	default:
		box = min(box+1, len(Days))
	}
	b[key] = Item{Box: box, Due: day + Days[box-1]}
}

// Due are the keys of what is due on a day, the lowest boxes first, then in
// alphabetical order.
func (b Boxes) Due(day int) []string {
	return b.keys(func(it Item) bool { return it.due(day) })
}

func (b Boxes) keys(which func(Item) bool) []string {
	var keys []string
	for _, key := range slices.Sorted(maps.Keys(b)) {
		if which(b[key]) {
			keys = append(keys, key)
		}
	}
	slices.SortStableFunc(keys, func(j, k string) int { return b[j].box() - b[k].box() })
	return keys
}

func (it Item) box() int { return min(max(it.Box, 1), len(Days)) }

// due also holds for an item further off than any box puts it: then the clock of
// the device was wrong once.
func (it Item) due(day int) bool { return it.Due <= day || it.Due > day+Days[len(Days)-1] }

// Counts is how many items lie in each box, the first box first.
func (b Boxes) Counts() [len(Days)]int {
	var n [len(Days)]int
	for _, it := range b {
		n[it.box()-1]++
	}
	return n
}
