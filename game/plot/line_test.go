package plot

import (
	"math"
	"testing"
)

// cover is how much ink lies at a place: the largest cover of the triangles over it.
func (m *Mesh) cover(x, y float64) float64 {
	most := 0.0
	at := func(i uint32) (x, y, c float64) {
		return float64(m.XYC[3*i]), float64(m.XYC[3*i+1]), float64(m.XYC[3*i+2])
	}
	for i := 0; i < len(m.Index); i += 3 {
		ax, ay, ac := at(m.Index[i])
		bx, by, bc := at(m.Index[i+1])
		cx, cy, cc := at(m.Index[i+2])
		all := (bx-ax)*(cy-ay) - (cx-ax)*(by-ay)
		if math.Abs(all) < 1e-9 {
			continue
		}
		u := ((bx-x)*(cy-y) - (cx-x)*(by-y)) / all
		v := ((cx-x)*(ay-y) - (ax-x)*(cy-y)) / all
		if w := 1 - u - v; u >= -1e-9 && v >= -1e-9 && w >= -1e-9 {
			most = max(most, u*ac+v*bc+w*cc)
		}
	}
	return most
}

// ink is the sum of the cover over pixels of a quarter.
func (m *Mesh) ink(x0, y0, x1, y1 float64) float64 {
	sum := 0.0
	for x := x0 + 0.125; x < x1; x += 0.25 {
		for y := y0 + 0.125; y < y1; y += 0.25 {
			sum += m.cover(x, y) / 16
		}
	}
	return sum
}

func TestLineIsAsWideAsThePen(t *testing.T) {
	for _, width := range []float64{0.6, 1, 2.2, 5} {
		for _, slope := range []float64{0, 0.5, 1, 30, 1e6} {
			length := math.Hypot(1, slope)
			dx, dy := 40/length, 40*slope/length
			var m Mesh
			Pen{width}.Line(&m, []Point{{10, 10}, {10 + dx, 10 + dy}})
			got := 0.0 // across the middle
			for d := -6.0; d < 6; d += 0.01 {
				got += 0.01 * m.cover(10+dx/2-d*dy/40, 10+dy/2+d*dx/40)
			}
			if math.Abs(got-width) > 0.03 {
				t.Errorf("width %v, slope %v: drawn %.2f wide", width, slope, got)
			}
		}
	}
}

func TestCornersAreClosed(t *testing.T) {
	for angle := 0.0; angle < 2*math.Pi; angle += 0.1 {
		var m Mesh
		corner := Point{20, 20}
		Pen{3}.Line(&m, []Point{{5, 20}, corner, {20 + 15*math.Cos(angle), 20 + 15*math.Sin(angle)}})
		for around := 0.0; around < 6.3; around += 0.3 {
			if c := m.cover(20+0.8*math.Cos(around), 20+0.8*math.Sin(around)); c < 0.9 {
				t.Errorf("turn %.1f: cover %.2f beside the corner", angle, c)
			}
			if c := m.cover(20+3*math.Cos(around), 20+3*math.Sin(around)); c > 0.99 &&
				math.Cos(around) > -0.5 && math.Cos(around-angle) < 0.5 {
				t.Errorf("turn %.1f: the corner reaches out at %.1f", angle, around)
			}
		}
	}
}

func TestDashesFollowTheLength(t *testing.T) {
	var m Mesh
	points := []Point{{0, 0}, {30, 0}, {30, 30}, {60, 30}}
	Pen{2}.Dashed(&m, points, 6, 4, nil)
	if c := m.cover(3, 0); c < 0.99 {
		t.Errorf("no ink in the first dash: %v", c)
	}
	if c := m.cover(8, 0); c > 0.5 {
		t.Errorf("ink in the first gap: %v", c)
	}
	if c := m.cover(30, 3); c < 0.99 { // 33 along the way: in the fourth dash
		t.Errorf("no ink round the corner: %v", c)
	}
	got := m.ink(-3, -3, 63, 33)
	if want := 90 * 2 * 0.6; math.Abs(got-want) > 0.25*want { // the round ends add some
		t.Errorf("ink %.0f, want about %.0f", got, want)
	}
}

func TestFillCoversItsArea(t *testing.T) {
	square := []Point{{5, 5}, {15, 5}, {15, 5}, {15, 15}, {5, 15}}
	for _, turned := range []bool{false, true} {
		if turned {
			square[0], square[4] = square[4], square[0]
			square[1], square[3] = square[3], square[1]
		}
		var m Mesh
		m.Fill(square)
		if got := m.ink(0, 0, 20, 20); math.Abs(got-100) > 1 {
			t.Errorf("turned %v: ink %.1f, want 100", turned, got)
		}
	}
}

func TestGlowFadesOutwards(t *testing.T) {
	var m Mesh
	m.Glow([]Point{{10, 10}, {30, 10}, {30, 30}, {10, 30}}, 8)
	for d, want := range map[float64]float64{1: 7. / 8, 4: 0.5, 7: 1. / 8, 9: 0} {
		if c := m.cover(20, 30+d); math.Abs(c-want) > 0.01 {
			t.Errorf("%v outside: cover %.2f, want %.2f", d, c, want)
		}
	}
}

func TestRingIsClosed(t *testing.T) {
	var points []Point
	for i := range 33 { // the last is the first again
		a := 2 * math.Pi * float64(i) / 32
		points = append(points, Point{20 + 10*math.Cos(a), 20 + 10*math.Sin(a)})
	}
	var m Mesh
	Pen{2}.Ring(&m, points)
	for a := 0.0; a < 6.3; a += 0.05 {
		if c := m.cover(20+10*math.Cos(a), 20+10*math.Sin(a)); c < 0.99 {
			t.Errorf("a gap at %.2f", a)
		}
	}
	if got, want := m.ink(0, 0, 40, 40), 2*math.Pi*10*2; math.Abs(got-want) > 0.03*want {
		t.Errorf("ink %.1f, want %.1f", got, want)
	}
}

func TestSimplifyStaysWithinTolerance(t *testing.T) {
	var points []Point
	for i := range 2000 {
		x := float64(i) / 4
		points = append(points, Point{x, 50*math.Sin(x/20) + math.Abs(math.Mod(x, 100)-50)})
	}
	all := append([]Point(nil), points...)
	kept := Simplify(points, 0.05)
	if len(kept) > 400 || kept[0] != all[0] || kept[len(kept)-1] != all[len(all)-1] {
		t.Fatalf("kept %d of %d, from %v to %v", len(kept), len(all), kept[0], kept[len(kept)-1])
	}
	i := 0
	for _, p := range all {
		for kept[i+1].X < p.X {
			i++
		}
		a, b := kept[i], kept[i+1]
		if y := a.Y + (b.Y-a.Y)*(p.X-a.X)/(b.X-a.X); math.Abs(y-p.Y) > 0.1 {
			t.Fatalf("at %v: %v became %v", p.X, p.Y, y)
		}
	}
}

func TestAxisNumbers(t *testing.T) {
	width := func(s string) float64 { return 7 * float64(len(s)) }
	axis := LogAxis{Lo: 200, Hi: 4000, X: 30, W: 450}
	if got := axis.At(200); got != 30 {
		t.Errorf("the low end is at %v", got)
	}
	if got := axis.At(4000); math.Abs(got-480) > 1e-9 {
		t.Errorf("the high end is at %v", got)
	}
	check := func(numbers []Number, want ...string) {
		t.Helper()
		have := map[string]bool{}
		for i, a := range numbers {
			have[a.Text] = true
			for _, b := range numbers[:i] {
				if math.Abs(a.X-b.X) < (width(a.Text)+width(b.Text))/2+numberGap {
					t.Errorf("%s and %s run together", a.Text, b.Text)
				}
			}
		}
		for _, w := range want {
			if !have[w] {
				t.Errorf("%s is missing from %v", w, numbers)
			}
		}
	}
	check(axis.PartialNumbers(nil, 220, 1, width), "1", "2", "3", "4", "6", "8", "12", "16")
	check(LogAxis{Lo: 200, Hi: 4000, X: 0, W: 90}.PartialNumbers(nil, 220, 1, width), "1", "2", "4", "16")
	check(axis.HertzNumbers(nil, 1, width), "500 Hz", "1k", "2k")
	check(LogAxis{Lo: 90, Hi: 4000, X: 0, W: 450}.HertzNumbers(nil, 1, width), "200 Hz", "500", "1k", "2k")
	if got := axis.PartialNumbers(nil, 0, 1, width); got != nil {
		t.Errorf("without a fundamental: %v", got)
	}
}
