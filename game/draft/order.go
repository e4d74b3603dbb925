package draft

import (
	"fmt"
	"slices"

	"partialcredit/game/sheet"
)

// Add puts an exercise behind another, at the end for -1, and returns its place; -1
// where the sheet is full.
func (d *Draft) Add(after int, e sheet.Exercise) int {
	n := len(d.sheet.Exercises)
	if n >= sheet.MostExercises {
		return -1
	}
	at := after + 1
	if after < 0 || at > n {
		at = n
	}
	d.Change("", func(s *sheet.Sheet) {
		e := copied(e)
		e.ID = fresh(s, e.Kind)
		s.Exercises = slices.Insert(s.Exercises, at, e)
	})
	return at
}

// Copy puts another one like it behind an exercise.
func (d *Draft) Copy(i int) int {
	if !d.has(i) {
		return -1
	}
	return d.Add(i, d.sheet.Exercises[i])
}

// Remove takes an exercise away.
func (d *Draft) Remove(i int) {
	if d.has(i) {
		d.Change("", func(s *sheet.Sheet) { s.Exercises = slices.Delete(s.Exercises, i, i+1) })
	}
}

// Move carries an exercise up (by -1) or down (by 1) and returns its place.
func (d *Draft) Move(i, by int) int {
	if !d.has(i) || !d.has(i+by) {
		return i
	}
	d.Change("", func(s *sheet.Sheet) {
		s.Exercises[i], s.Exercises[i+by] = s.Exercises[i+by], s.Exercises[i]
	})
	return i + by
}

func (d *Draft) has(i int) bool { return i >= 0 && i < len(d.sheet.Exercises) }

// fresh is an id that no exercise of the sheet has: "match-3".
func fresh(s *sheet.Sheet, k sheet.Kind) string {
	for n := 1; ; n++ {
		id := fmt.Sprintf("%s-%d", k, n)
		if !slices.ContainsFunc(s.Exercises, func(e sheet.Exercise) bool { return e.ID == id }) {
			return id
		}
	}
}
