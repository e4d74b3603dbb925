package game

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

// What d3-array 3.2.5 answers to ticks(lo, hi, n), npm, run under node 20. d3
// takes n as a wish, so here the most is as many as it gave.
func TestLinearTicksAreThoseOfD3(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		want   []float64
	}{
		{0, 100, []float64{0, 20, 40, 60, 80, 100}},
		{0, 100, []float64{0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100}},
		{1, 50, []float64{10, 20, 30, 40, 50}},
		{0, 1, []float64{0, 0.2, 0.4, 0.6, 0.8, 1}},
		{-1, 1, []float64{-1, -0.5, 0, 0.5, 1}},
		{0, 0.3, []float64{0, 0.1, 0.2, 0.3}},
		{3, 17, []float64{5, 10, 15}},
		{0, 8, []float64{0, 1, 2, 3, 4, 5, 6, 7, 8}},
		{105, 543, []float64{200, 300, 400, 500}},
		{0.02, 0.037, []float64{0.02, 0.025, 0.03, 0.035}},
		{99, 1234, []float64{200, 400, 600, 800, 1000, 1200}},
	} {
		if got := linearTicks(c.lo, c.hi, len(c.want)); !slices.Equal(got, c.want) {
			t.Errorf("%v to %v: %v, not %v", c.lo, c.hi, got, c.want)
		} else if got[0] == 0 && math.Signbit(got[0]) {
			t.Errorf("%v to %v begins with −0", c.lo, c.hi)
		}
	}
}

// However odd the range, the ticks are few enough, and lie on it.
func TestTicksKeepToTheirRangeAndNumber(t *testing.T) {
	for lo := 1e-4; lo < 2e4; lo *= 1.37 {
		for ratio := 1.01; ratio < 1e5; ratio *= 1.9 {
			for most := 1; most < 12; most++ {
				for name, ticks := range map[string][]float64{
					"linear": linearTicks(lo, lo*ratio, most), "ratio": ratioTicks(lo, lo*ratio, most),
				} {
					if len(ticks) > most || !slices.IsSorted(ticks) || most > 4 && len(ticks) < 2 && ratio < 1e4 {
						t.Fatalf("%s, %v to %v, at most %d: %v", name, lo, lo*ratio, most, ticks)
					}
					for _, v := range ticks {
						if v < lo*(1-1e-6) || v > lo*ratio*(1+1e-6) {
							t.Fatalf("%s, %v to %v: %v", name, lo, lo*ratio, ticks)
						}
					}
				}
			}
		}
	}
	if linearTicks(1, 1, 5) != nil || linearTicks(0, math.NaN(), 5) != nil || ratioTicks(0, 1, 5) != nil || ratioTicks(1, math.Inf(1), 5) != nil {
		t.Error("ticks on no range")
	}
}

// 1, 2, 5, 10 ... is the series of the values of euro coins and notes from 1
// cent to 500 euros (European Central Bank); of these, in cents, powers of ten.
func TestRatioTicksAreThoseOfTheEuro(t *testing.T) {
	euro := []float64{0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500}
	if got := ratioTicks(0.01, 500, 15); !slices.Equal(got, euro) {
		t.Errorf("%v", got)
	}
	if got := ratioTicks(0.01, 500, 14); !slices.Equal(got, []float64{0.01, 0.1, 1, 10, 100}) {
		t.Errorf("%v", got)
	}
	if got := ratioTicks(0.01, 500, 4); !slices.Equal(got, []float64{0.01, 1, 100}) {
		t.Errorf("%v", got)
	}
	if got := ratioTicks(2.1, 4.2, 5); !slices.Equal(got, []float64{2.5, 3, 3.5, 4}) {
		t.Errorf("a narrow range: %v", got)
	}
	for i, v := range euro {
		if lo, hi := roundOut(v*1.001, v*1.002); lo != v || i+1 < len(euro) && hi != euro[i+1] {
			t.Errorf("%v lies from %v to %v", v*1.001, lo, hi)
		}
	}
	if lo, hi := roundOut(5, 5); lo != 2 || hi != 10 {
		t.Errorf("5 alone lies from %v to %v", lo, hi)
	}
}

// What d3-time 3.1.1 answers to utcTicks, and for weeks to utcMonday.range.
func TestDateTicksAreThoseOfD3(t *testing.T) {
	day := func(s string) time.Time {
		d, err := time.Parse(time.DateOnly, s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, c := range []struct {
		from, to, want string
		unit           DateUnit
	}{
		{"2026-11-03", "2026-11-08", "2026-11-03 2026-11-04 2026-11-05 2026-11-06 2026-11-07 2026-11-08", Days},
		{"2026-11-03", "2026-12-09", "2026-11-09 2026-11-16 2026-11-23 2026-11-30 2026-12-07", Days},
		{"2026-01-15", "2026-07-20", "2026-02-01 2026-03-01 2026-04-01 2026-05-01 2026-06-01 2026-07-01", Months},
		{"2024-02-10", "2026-11-25", "2025-01-01 2026-01-01", Years},
		{"2020-05-05", "2026-11-25", "2021-01-01 2022-01-01 2023-01-01 2024-01-01 2025-01-01 2026-01-01", Years},
	} {
		dates, unit := dateTicks(day(c.from), day(c.to), len(strings.Fields(c.want)))
		var got []string
		for _, d := range dates {
			got = append(got, d.Format(time.DateOnly))
		}
		if strings.Join(got, " ") != c.want || unit != c.unit {
			t.Errorf("%s to %s: %v, unit %v", c.from, c.to, got, unit)
		}
	}
}

// The axis of one evening has a beginning and an end, and where clocks are put
// back a day has 25 hours: in Berlin on 25 October 2026 (directive 2000/84/EC:
// the last Sunday in October).
func TestDateAxisHasWholeDays(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	evening := time.Date(2026, 10, 25, 20, 15, 0, 0, berlin)
	a := DateAxis(evening, evening.Add(time.Hour).UTC(), 6, func(d time.Time, u DateUnit) string { return d.Format("2 Jan 15:04") })
	if a.Hi-a.Lo != 25*3600 || len(a.Ticks) != 2 || a.Ticks[0].Text != "25 Oct 00:00" || a.Ticks[1].Text != "26 Oct 00:00" {
		t.Errorf("%+v", a)
	}
	if x := Date(evening); x <= a.Lo || x >= a.Hi {
		t.Errorf("%v is not on it", x)
	}
}

func TestSharesOfATableAreThoseOfItsRows(t *testing.T) {
	table := Table{Rows: []string{"a", "b", "c"}, Columns: []string{"a", "b"}, Counts: [][]int{{3, 1}, {0, 0}}}
	for _, c := range []struct {
		row, column int
		want        float64
	}{{0, 0, 0.75}, {0, 1, 0.25}, {1, 0, 0}, {2, 1, 0}} {
		if got := table.Share(c.row, c.column); got != c.want {
			t.Errorf("%d, %d: %v", c.row, c.column, got)
		}
	}
}
