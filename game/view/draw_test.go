package view

import (
	"math"
	"testing"

	"partialcredit/game"
	"partialcredit/game/mark"
	"partialcredit/game/ui"
)

func testCanvas(scale float64) *canvas {
	c := newCanvas(newAtlas(1024))
	c.theme, c.scale = &paper, scale
	return c
}

// extent is the smallest rectangle round all that was drawn, in CSS pixels.
func (c *canvas) extent() ui.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, v := range c.vertices {
		x, y := float64(v.DstX)/c.scale, float64(v.DstY)/c.scale
		x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
	}
	return ui.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

func inside(inner, outer ui.Rect, slack float64) bool {
	return inner.X >= outer.X-slack && inner.Y >= outer.Y-slack &&
		inner.Right() <= outer.Right()+slack && inner.Bottom() <= outer.Bottom()+slack
}

// Rulers and buttons keep to their rectangles, at every value and height.
func TestWidgetsStayInside(t *testing.T) {
	for _, scale := range []float64{1, 1.5, 3} {
		for _, h := range []float64{44, 52, 68, 84, 120} {
			for _, value := range []float64{0, 0.5, 1} {
				w := ui.Widget{
					Role: ui.Ruled, Label: "Duty, oscillator A", Rect: ui.Rect{X: 50, Y: 70, W: 200, H: h},
					Ruler: ui.Ruler{
						Max: 1, Value: value, Text: "34.0 %", MinText: "3 %", MaxText: "50 %",
						Scale: ui.Rect{X: 64, Y: 70 + min(36, h-16), W: 172},
					},
				}
				c := testCanvas(scale)
				c.widget(&w)
				if e := c.extent(); !inside(e, w.Rect, 1.5) {
					t.Errorf("scale %v, height %v, value %v: ruler at %v, drawn %v", scale, h, value, w.Rect, e)
				}
			}
			for _, w := range []ui.Widget{
				{Label: "Hand in everything there is", Primary: true}, {Label: "Yours", On: true},
				{Label: "12. How far?", Plain: true, Note: "98"}, {Label: "A long label that nobody can read", Disabled: true},
			} {
				w.Rect = ui.Rect{X: 50, Y: 70, W: 110, H: h}
				c := testCanvas(scale)
				c.widget(&w)
				if e := c.extent(); !inside(e, w.Rect, 1) {
					t.Errorf("scale %v, height %v: button %v drawn %v", scale, h, w.Rect, e)
				}
			}
		}
	}
}

// Fine lines fill whole pixels of the device, or they would look grey.
func TestFineLinesAreCrisp(t *testing.T) {
	for _, scale := range []float64{1, 1.25, 2, 2.625, 3} {
		c := testCanvas(scale)
		c.squared(ui.Rect{X: 20.3, Y: 10.7, W: 333.3, H: 141}, 0, 70.5)
		for _, v := range c.vertices {
			if v.DstX != float32(math.Round(float64(v.DstX))) || v.DstY != float32(math.Round(float64(v.DstY))) {
				t.Fatalf("scale %v: a corner at %v, %v", scale, v.DstX, v.DstY)
			}
		}
		if len(c.vertices) < 4*(33+13) {
			t.Errorf("scale %v: %d corners", scale, len(c.vertices))
		}
	}
}

func TestPeriods(t *testing.T) {
	for w := 100.0; w < 1400; w++ {
		p := periods(w)
		if p < 3 || p > 4 {
			t.Errorf("%v px wide: %v periods", w, p)
		}
		if squares := w / p / square; w >= 120 && math.Abs(squares-math.Round(squares)) > 1e-9 {
			t.Errorf("%v px wide: a period is %v squares", w, squares)
		}
	}
}

func harmonics(f0 float64, number bool, db float64, n int) (l []mark.Line) {
	for i := 1; i <= n; i++ {
		line := mark.Line{Hz: f0 * float64(i), DB: db * float64(i-1)}
		if number {
			line.Number = i
		}
		l = append(l, line)
	}
	return l
}

func TestAxisNumbersByPartialUntilALineIsNone(t *testing.T) {
	p := game.Partials{Rect: ui.Rect{X: 10, Y: 20, W: 400, H: 200}, F0: 220, Yours: harmonics(220, true, -3, 12)}
	var k spectrum
	lay := func(before axis) axis {
		k.update(&p)
		return newAxis(p.Rect, p.F0, &k, before)
	}
	a := lay(axis{})
	if a.f0 != 220 {
		t.Errorf("harmonic, but numbered from %v", a.f0)
	}
	stray := func(db float64) axis {
		p.Target = []mark.Line{{Hz: 1000, DB: db}}
		a = lay(a)
		return a
	}
	if stray(-45).f0 != 220 {
		t.Error("a faint line turned the axis to hertz")
	}
	if stray(-30).f0 != 0 {
		t.Error("a clear line that is no partial did not turn the axis to hertz")
	}
	if stray(-45).f0 != 0 {
		t.Error("the axis turned back though the line is there yet")
	}
	if stray(-60).f0 != 220 {
		t.Error("the axis did not turn back")
	}
}

func TestAxisFloorLiesWholeTensBelow(t *testing.T) {
	for h := 60.0; h < 500; h += 7 {
		p := game.Partials{Rect: ui.Rect{X: 10, Y: 20, W: 400, H: h}, F0: 220}
		a := newAxis(p.Rect, p.F0, &spectrum{}, axis{})
		tens := (a.floor - a.top) / a.decibel / 10
		if math.Abs(tens-math.Round(tens)) > 1e-9 || tens < 2 || h > 130 && tens < 5 {
			t.Errorf("%v px high: %v divisions", h, tens)
		}
		if a.top < p.Rect.Y+10 || a.floor > p.Rect.Bottom()-18 {
			t.Errorf("%v px high: from %v to %v in %v", h, a.top, a.floor, p.Rect)
		}
	}
}

// What moves draws without a word to the collector.
func TestMovingPicturesAllocateNothing(t *testing.T) {
	c := testCanvas(2)
	box := ui.Rect{X: 10, Y: 10, W: 400, H: 200}
	w := game.Wave{Rate: 48000, Period: 480, Scale: 1, Live: true}
	for i := range 8192 {
		phase := float64(i%480) / 480
		w.Samples = append(w.Samples, float32(2*phase-1))
		w.Cycle = append(w.Cycle, float32(phase))
	}
	p := game.Partials{
		Rect: box, F0: 100, Yours: harmonics(100, true, -1, 40), Target: harmonics(100, true, -2, 40),
		Marked: []mark.Partial{{Number: 1, Hz: 100, Within: true}, {Number: 2, Hz: 200}},
	}
	s := game.Scene{Trace: &game.Trace{Rect: box, Yours: w, Target: w}, Partials: &p}
	var yours, target tracing
	var a axis
	var k spectrum
	frame := func() {
		k.update(&p)
		a = newAxis(p.Rect, p.F0, &k, a)
		yours.trace(c, box, &s.Trace.Yours, span(&s, &w), false)
		target.trace(c, box, &s.Trace.Target, span(&s, &w), true)
		c.partials(&k, a)
		c.vertices, c.indices = c.vertices[:0], c.indices[:0]
	}
	frame()
	if n := testing.AllocsPerRun(20, frame); n > 4 { // the closures of the two triggers
		t.Errorf("%v allocations a frame", n)
	}
}

// A silent sound's line is kept, and made anew when anything about it changes.
func TestSilentTraceIsKept(t *testing.T) {
	c := testCanvas(1)
	box := ui.Rect{W: 400, H: 200}
	var tr tracing
	height := func(w *game.Wave, span float64) float64 {
		c.vertices, c.indices = c.vertices[:0], c.indices[:0]
		tr.trace(c, box, w, span, false)
		return c.extent().H
	}
	w := game.Wave{Samples: make([]float32, 4000), Scale: 1}
	for i := range w.Samples {
		w.Samples[i] = float32(math.Sin(float64(i) / 50))
	}
	tall := height(&w, 1000)
	clear(w.Samples) // must not be noticed: nobody may change the samples of a silent sound
	if got := height(&w, 1000); got != tall {
		t.Errorf("it was drawn anew: %v, %v", got, tall)
	}
	if got := height(&w, 900); got == tall {
		t.Error("the span changed, the line did not")
	}
	w.Live = true
	w.Samples[3500] = 1
	if got := height(&w, 900); got < 20 {
		t.Errorf("a live sound is %v high", got)
	}
}

func TestPartialsAreDrawnAnewOnlyWhenTheyChanged(t *testing.T) {
	p := game.Partials{Yours: harmonics(100, true, -1, 5), Marked: []mark.Partial{{Hz: 100}}}
	var k spectrum
	if !k.update(&p) || k.update(&p) {
		t.Error("the same partials were drawn twice, or never")
	}
	p.Yours[3].DB = -9
	if !k.update(&p) || k.yours[3].db != -9 {
		t.Error("a level changed and was not drawn")
	}
	p.Marked[0].Within = true
	if !k.update(&p) {
		t.Error("a mark changed and was not drawn")
	}
	p.Yours = p.Yours[:2]
	if !k.update(&p) || len(k.yours) != 2 {
		t.Error("lines went and stayed drawn")
	}
}

func TestPageIsDrawnAnewOnlyWhenItChanged(t *testing.T) {
	scene := func() *game.Scene {
		return &game.Scene{
			Texts: []game.Text{{String: "4."}}, Widgets: []ui.Widget{{ID: "a", Ruler: ui.Ruler{Value: 1}}},
			Trace:  &game.Trace{Rect: ui.Rect{W: 100, H: 100}},
			Charts: []game.Chart{aChart(ui.Rect{W: 300, H: 200})}, Tables: []game.Table{aTable(ui.Rect{W: 300, H: 200})},
		}
	}
	var k still
	if !k.update(scene(), &paper, 1, axis{}) {
		t.Error("the first page was not drawn")
	}
	moving := scene()
	moving.Trace.Yours.Samples = []float32{1, 2}
	if k.update(moving, &paper, 1, axis{}) {
		t.Error("the page was drawn anew for a trace that moved")
	}
	for name, change := range map[string]func(*game.Scene){
		"text":    func(s *game.Scene) { s.Texts[0].String = "5." },
		"ruler":   func(s *game.Scene) { s.Widgets[0].Ruler.Value = 2 },
		"focus":   func(s *game.Scene) { s.Focus = "a" },
		"panel":   func(s *game.Scene) { s.Panel.W = 1 },
		"cover":   func(s *game.Scene) { s.Trace.Covered = true },
		"strokes": func(s *game.Scene) { s.Strokes = []game.Stroke{{}} },
		"chart":   func(s *game.Scene) { s.Charts[0].Rect.X++ },
		"name":    func(s *game.Scene) { s.Charts[0].Name = "" },
		"axis":    func(s *game.Scene) { s.Charts[0].X.Hi++ },
		"tick":    func(s *game.Scene) { s.Charts[0].Y.Ticks[1].Text = "2" },
		"dot":     func(s *game.Scene) { s.Charts[0].Series[0].Points[2].Ringed = true },
		"join":    func(s *game.Scene) { s.Charts[0].Series[0].Joined = false },
		"level":   func(s *game.Scene) { s.Charts[0].Levels[1].At++ },
		"key":     func(s *game.Scene) { s.Charts[0].Key[0].Text = "good" },
		"table":   func(s *game.Scene) { s.Tables[0].Rect.X++ },
		"count":   func(s *game.Scene) { s.Tables[0].Counts[1][2]++ },
		"row":     func(s *game.Scene) { s.Tables[0].RowsTitle = "" },
		"signs":   func(s *game.Scene) { d := s.Charts[0].Series[0].Points; d[1].X, d[2].X = -d[1].X, -d[2].X },
		"swap":    func(s *game.Scene) { d := s.Charts[0].Series[0].Points; d[1], d[2] = d[2], d[1] },
		"tables":  func(s *game.Scene) { s.Tables = nil },
		"code":    func(s *game.Scene) { s.Code = &game.Code{Rect: ui.Rect{W: 100, H: 100}} },
	} {
		k.update(scene(), &paper, 1, axis{})
		s := scene()
		change(s)
		if !k.update(s, &paper, 1, axis{}) {
			t.Errorf("%s changed, and the page was not drawn anew", name)
		}
	}
	if k.update(scene(), &paper, 1, axis{}); !k.update(scene(), &blackboard, 1, axis{}) {
		t.Error("the theme changed, and the page was not drawn anew")
	}
}
