package game

import (
	"math"
	"time"
)

// oneTwoFive are the multiples of powers of ten that count as round.
var oneTwoFive = [...]float64{1, 2, 5}

// roundNumber is the i-th of the round numbers: 0 is 1, 1 is 2, 2 is 5, 3 is 10.
func roundNumber(i int) float64 {
	decade := int(math.Floor(float64(i) / 3))
	return times10(oneTwoFive[i-3*decade], decade)
}

// times10 is v·10^e with no error of its own: a power of ten below 1 has no
// exact value, its inverse has.
func times10(v float64, e int) float64 {
	if e < 0 {
		return v / math.Pow10(-e)
	}
	return v * math.Pow10(e)
}

// linearTicks are the multiples of a round step from lo to hi: of the smallest
// step that makes at most so many of them.
func linearTicks(lo, hi float64, most int) []float64 {
	if !(hi > lo) || math.IsInf(hi-lo, 0) || most < 1 {
		return nil
	}
	const near = 1e-9 // of a step
	for i := 3 * int(math.Floor(math.Log10((hi-lo)/float64(most+1)))); ; i++ {
		step := roundNumber(i)
		first, last := math.Ceil(lo/step-near), math.Floor(hi/step+near)
		if last-first+1 > float64(most) {
			continue
		}
		decade := int(math.Floor(float64(i) / 3))
		var ticks []float64
		for k := first; k <= last; k++ {
			ticks = append(ticks, times10(k*oneTwoFive[i-3*decade], decade)+0) // no −0
		}
		return ticks
	}
}

// ratioTicks are the round numbers from lo, above 0, to hi: 1, 2 and 5 times
// powers of ten, powers of ten only where those are too many, or every second,
// third ... of those. A narrow range is marked like a linear one.
func ratioTicks(lo, hi float64, most int) []float64 {
	if !(lo > 0) || !(hi > lo) || math.IsInf(hi, 0) || most < 1 {
		return nil
	}
	const near = 1e-9
	var ticks []float64
	for stride := 1; ; stride += 3 - stride%3 {
		ticks = ticks[:0]
		first := stride * int(math.Floor(math.Log10(lo)*3/float64(stride)-1))
		for i := first; roundNumber(i) <= hi*(1+near); i += stride {
			if roundNumber(i) >= lo*(1-near) {
				ticks = append(ticks, roundNumber(i))
			}
		}
		if stride == 1 && len(ticks) < 2 {
			return linearTicks(lo, hi, most)
		}
		if len(ticks) <= most {
			return ticks
		}
	}
}

// roundOut widens a range above 0 to the next round numbers, and to more than
// one of them.
func roundOut(lo, hi float64) (float64, float64) {
	if !(lo > 0) || !(hi >= lo) || math.IsInf(hi, 0) {
		return 1, 10
	}
	const near = 1e-9
	i := 3*int(math.Floor(math.Log10(lo))) + 3
	for roundNumber(i) > lo*(1+near) {
		i--
	}
	k := i
	for roundNumber(k) < hi*(1-near) {
		k++
	}
	if i == k {
		i, k = i-1, k+1
	}
	return roundNumber(i), roundNumber(k)
}

// A DateUnit is what the ticks of an axis of dates are.
type DateUnit int

// The units.
const (
	Days DateUnit = iota // weeks, too: Mondays
	Months
	Years
)

// dateSteps are how far apart dates may be.
var dateSteps = [...]struct {
	unit  DateUnit
	every int
}{
	{Days, 1}, {Days, 2}, {Days, 7}, {Days, 14}, {Months, 1}, {Months, 3}, {Months, 6},
	{Years, 1}, {Years, 2}, {Years, 5}, {Years, 10}, {Years, 20}, {Years, 50}, {Years, 100},
}

// dateTicks are the dates from one to another in the smallest step that makes
// at most so many.
func dateTicks(from, to time.Time, most int) ([]time.Time, DateUnit) {
	for _, s := range dateSteps {
		if dates, ok := datesEvery(from, to, s.unit, s.every, most); ok {
			return dates, s.unit
		}
	}
	return nil, Years
}

func datesEvery(from, to time.Time, unit DateUnit, every, most int) (dates []time.Time, ok bool) {
	t := midnight(from, 0)
	switch unit {
	case Days:
		const monday = 4 // days after 1970-01-01, a Thursday
		t = midnight(t, -floorMod(dayNumber(t)-monday, every))
	case Months:
		t = time.Date(t.Year(), t.Month()-time.Month((int(t.Month())-1)%every), 1, 0, 0, 0, 0, t.Location())
	case Years:
		t = time.Date(t.Year()-floorMod(t.Year(), every), 1, 1, 0, 0, 0, 0, t.Location())
	}
	for !t.After(to) {
		if !t.Before(from) {
			if dates = append(dates, t); len(dates) > most {
				return nil, false
			}
		}
		switch unit {
		case Days:
			t = midnight(t, every)
		case Months:
			t = t.AddDate(0, every, 0)
		case Years:
			t = t.AddDate(every, 0, 0)
		}
	}
	return dates, true
}

// midnight is the start of a day, so many days later.
func midnight(t time.Time, days int) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d+days, 0, 0, 0, 0, t.Location())
}

// dayNumber counts the days since 1970-01-01 in the calendar of t.
func dayNumber(t time.Time) int {
	y, m, d := t.Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

func floorMod(a, b int) int { return ((a % b) + b) % b }
