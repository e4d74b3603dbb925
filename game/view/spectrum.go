package view

import (
	"math"

	"partialcredit/game"
)

// spectrum is the partials as they were drawn last: they change less often than
// the trace.
type spectrum struct {
	yours, target []line
	marked        []verdict
}

// A line is a line of a spectrum; number is 0 where it is no partial.
type line struct {
	number int
	hz, db float64
}

// A verdict is the mark over a partial.
type verdict struct {
	hz     float64
	within bool
}

// update notes the partials and reports whether they have changed.
func (k *spectrum) update(p *game.Partials) bool {
	changed := len(k.yours) != len(p.Yours) || len(k.target) != len(p.Target) || len(k.marked) != len(p.Marked)
	yours, target, marked := k.yours, k.target, k.marked
	k.yours, k.target, k.marked = k.yours[:0], k.target[:0], k.marked[:0]
	for i, l := range p.Yours {
		now := line{l.Number, l.Hz, l.DB}
		changed = changed || now != yours[i]
		k.yours = append(k.yours, now)
	}
	for i, l := range p.Target {
		now := line{l.Number, l.Hz, l.DB}
		changed = changed || now != target[i]
		k.target = append(k.target, now)
	}
	for i, m := range p.Marked {
		now := verdict{m.Hz, m.Within}
		changed = changed || now != marked[i]
		k.marked = append(k.marked, now)
	}
	return changed
}

// lowest is the lowest frequency of a line above the bound, infinite where
// there is none.
func (k *spectrum) lowest(bound float64) float64 {
	hz := math.Inf(1)
	for _, lines := range [...][]line{k.yours, k.target} {
		for _, l := range lines {
			if l.db > bound {
				hz = min(hz, l.hz)
			}
		}
	}
	return hz
}

// loudest is the level of what is drawn at a frequency or right beside it.
func (k *spectrum) loudest(hz float64) float64 {
	db := math.Inf(-1)
	for _, lines := range [...][]line{k.yours, k.target} {
		for _, l := range lines {
			if math.Abs(l.hz/hz-1) < 0.015 { // a quarter of the spacing at partial 16
				db = max(db, l.db)
			}
		}
	}
	return db
}

// odd reports whether a line above the bound that the axis shows is no partial.
func (k *spectrum) odd(a axis, bound float64) bool {
	for _, lines := range [...][]line{k.yours, k.target} {
		for _, l := range lines {
			if l.number == 0 && l.db > bound && a.shows(l.hz) {
				return true
			}
		}
	}
	return false
}

// spacing is the least distance between neighbouring lines of one sound. Lines
// that beat stand in one place.
func (k *spectrum) spacing(a axis) float64 {
	const onePlace = 2 // CSS pixels
	least := math.Inf(1)
	for _, lines := range [...][]line{k.yours, k.target} {
		before := math.Inf(-1)
		for _, l := range lines {
			if _, ok := a.height(l.db); ok && a.shows(l.hz) {
				x := a.At(l.hz)
				if x-before > onePlace {
					least = min(least, x-before)
				}
				before = x
			}
		}
	}
	return least
}
