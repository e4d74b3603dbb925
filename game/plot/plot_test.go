package plot

import (
	"math"
	"math/rand/v2"
	"testing"
)

const rate = 48000

// A tone is a sum of sines of a frequency: amplitudes and phases (in cycles)
// by partial, those above 20 kHz left out.
type tone struct {
	hz   float64
	amp  func(n int) float64
	many int // partials
}

func sine(hz float64) tone { return tone{hz, func(n int) float64 { return 1 }, 1} }

// sawtooth is the Fourier series 2/π Σ (-1)^(n+1) sin(nωt)/n (e.g. Abramowitz &
// Stegun 23.1.16 turned into a sawtooth).
func sawtooth(hz float64) tone {
	return tone{hz, func(n int) float64 { return 2 / math.Pi * float64(n%2*2-1) / float64(n) }, 1 << 20}
}

func (t tone) at(seconds float64) float64 {
	_, turn := math.Modf(t.hz * seconds)
	sum, before, now := 0.0, 0.0, math.Sin(2*math.Pi*turn)
	twice := 2 * math.Cos(2*math.Pi*turn)
	for n := 1; n <= t.many && float64(n)*t.hz < 20000; n++ {
		sum += t.amp(n) * now
		before, now = now, twice*now-before // sin (n+1)x = 2 cos x sin nx - sin (n-1)x
	}
	return sum
}

// window is a stretch of a sound that starts at a time, with the phase of the
// trigger beside it.
func window(n int, start, trigger float64, at func(seconds float64) float64) (samples, cycle []float32) {
	for i := range n {
		s := start + float64(i)/rate
		samples = append(samples, float32(at(s)))
		_, phase := math.Modf(trigger * s)
		cycle = append(cycle, float32(phase))
	}
	return samples, cycle
}

const (
	testW = 500.0
	testH = 160.0 // pixels for a sample of 1
)

// picture is the trace with one point for each place, whatever column it is in.
func picture(samples []float32, start, span float64) []Point {
	var s Sampler
	return s.Points(nil, samples, Frame{Start: start, Span: span, W: testW, Gain: testH, Column: 0.5})
}

// apart is the largest distance of a point of a from the line through b.
func apart(t *testing.T, a, b []Point) float64 {
	t.Helper()
	if len(a) != len(b) || len(a) == 0 {
		t.Fatalf("%d and %d points", len(a), len(b))
	}
	most := 0.0
	for i, p := range a {
		nearest := math.Inf(1)
		for j := max(1, i-2); j < min(len(b), i+4); j++ {
			nearest = min(nearest, distance(p, b[j-1], b[j]))
		}
		most = max(most, nearest)
	}
	return most
}

// distance is how far p is from the line between a and b.
func distance(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	along := 0.0
	if square := dx*dx + dy*dy; square > 0 {
		along = max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/square))
	}
	return math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy)
}

// A steady sound stands still: windows that begin at arbitrary times give the
// same picture within 0.1 pixels, also with the cycle unknown.
func TestSteadySoundStandsStill(t *testing.T) {
	fifth := func(hz float64) func(float64) float64 { // a pattern over two cycles of the trigger
		a, b := sawtooth(hz), sawtooth(1.5*hz)
		return func(s float64) float64 { return a.at(s)/2 + b.at(s)/2 }
	}
	under := func(hz float64) func(float64) float64 {
		a, b := sine(hz), sine(hz/4)
		return func(s float64) float64 { return a.at(s) + b.at(s)/20 }
	}
	for _, c := range []struct {
		name  string
		hz    float64
		at    func(float64) float64
		phase bool
	}{
		{"sine 440", 440, sine(440).at, true},
		{"sine 8372", 8372, sine(8372).at, true},
		{"sine 440 without phase", 440, sine(440).at, false},
		{"sawtooth 55", 55, sawtooth(55).at, true},
		{"sawtooth 261.6", 261.6256, sawtooth(261.6256).at, true},
		{"sawtooth 261.6 without phase", 261.6256, sawtooth(261.6256).at, false},
		{"sawtooth 1760", 1760, sawtooth(1760).at, true},
		{"ratio 1.5 at 220", 220, fifth(220), true},
		{"ratio 1.5 at 932", 932.33, fifth(932.33), true},
		{"two octaves under", 440, under(440), true},
	} {
		t.Run(c.name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(1, 2))
			var trigger Trigger
			var first []Point
			span := 10.0 / 3 * rate / c.hz
			n := int(span+8*rate/c.hz) + 400
			for i := range 12 {
				samples, cycle := window(n, 0.01+random.Float64()/8, c.hz, c.at)
				if !c.phase {
					cycle = nil
				}
				if i%3 == 0 {
					trigger = Trigger{} // opened anew: still the same picture
				}
				got := picture(samples, trigger.Start(samples, cycle, span), span)
				if first == nil {
					first = got
					continue
				}
				if d := apart(t, first, got); d > 0.1 {
					t.Errorf("window %d: %.3f pixels apart", i, d)
				}
			}
		})
	}
}

// Two sawtooths that beat once a second: the picture changes a little from one
// sixtieth of a second to the next, and much within half a second.
func TestBeatIsSeenAsSlowChange(t *testing.T) {
	a, b := sine(220), sine(221)
	at := func(s float64) float64 { return a.at(s)/2 + b.at(s)/2 }
	span := 10.0 / 3 * rate / 220
	var trigger Trigger
	var before, first []Point
	overall := 0.0
	for frame := range 30 {
		samples, cycle := window(4096, 0.1+float64(frame)/60, 220, at)
		now := picture(samples, trigger.Start(samples, cycle, span), span)
		if before != nil {
			// The level falls by at most π a second of its height: 8.4 pixels in 1/60 s.
			if d := apart(t, before, now); d > 10 {
				t.Errorf("frame %d jumps by %.1f pixels", frame, d)
			}
			overall = max(overall, apart(t, first, now))
		} else {
			first = now
		}
		before = now
	}
	if overall < 0.8*testH {
		t.Errorf("in half a second it changed by %.1f pixels only", overall)
	}
}

// In a picture with ten samples to a pixel, one sample that stands out shows.
func TestOneSampleSpikeIsSeen(t *testing.T) {
	samples := make([]float32, 6000)
	samples[3001] = 1
	for _, start := range []float64{20, 20.25, 20.5, 20.77} {
		highest := 0.0
		for _, p := range picture(samples, start, 5000) {
			highest = max(highest, -p.Y)
		}
		if highest < 0.85*testH { // half-sample steps meet a sinc at 0.25 in the worst case: 0.90
			t.Errorf("start %v: the spike is %.0f of %.0f pixels high", start, highest, testH)
		}
	}
}

// With a few samples for the whole box the line is smooth: it follows the sine.
func TestHighNotesAreSmooth(t *testing.T) {
	const hz = 8372.0
	samples, _ := window(200, 0, 1, sine(hz).at)
	points := picture(samples, 40.3, 19)
	if len(points) < 400 {
		t.Fatalf("%d points", len(points))
	}
	for _, p := range points {
		want := -testH * math.Sin(2*math.Pi*hz*(40.3+19*p.X/testW)/rate)
		if math.Abs(p.Y-want) > 0.3 { // the kernel's 63 dB, and less near its end
			t.Fatalf("at %v: %v, want %v", p.X, p.Y, want)
		}
	}
}

func TestPoorInput(t *testing.T) {
	nan := float32(math.NaN())
	long := make([]float32, 4000)
	for _, samples := range [][]float32{nil, {}, {1}, {1, 2}, make([]float32, 30), long, {nan, nan, nan}} {
		for _, cycle := range [][]float32{nil, samples, make([]float32, len(samples))} {
			for _, span := range []float64{0, -1, 1, 300, 1e9, math.NaN(), math.Inf(1)} {
				var trigger Trigger
				for range 2 {
					start := trigger.Start(samples, cycle, span)
					if math.IsNaN(start) || start < 0 {
						t.Fatalf("%d samples, span %v: start %v", len(samples), span, start)
					}
					points := Simplify(picture(samples, start, span), 0.05)
					for _, p := range points {
						if math.IsNaN(p.X) || len(samples) != 3 && math.IsNaN(p.Y) {
							t.Fatalf("%d samples, span %v: %v", len(samples), span, p)
						}
					}
					var m Mesh
					Pen{2}.Line(&m, points)
				}
			}
		}
	}
}

// The whole way of a live trace, with memory in use again.
func drawing() func() {
	samples, cycle := window(8192, 0, 110, sawtooth(110).at)
	var trigger Trigger
	var sampler Sampler
	var mesh Mesh
	var points, scratch []Point
	return func() {
		span := 10.0 / 3 * rate / 110
		start := trigger.Start(samples, cycle, span)
		points = sampler.Points(points[:0], samples, Frame{Start: start, Span: span, W: testW, Gain: testH, Column: 0.5})
		points = Simplify(points, 0.04)
		mesh.Reset()
		Pen{2.2}.Line(&mesh, points)
		scratch = Pen{1.6}.Dashed(&mesh, points, 6, 4, scratch)
	}
}

func TestDrawingAllocatesNothing(t *testing.T) {
	draw := drawing()
	draw()
	if n := testing.AllocsPerRun(20, draw); n > 2 { // the two closures of the trigger's source
		t.Errorf("%v allocations a frame", n)
	}
}

func BenchmarkTrace(b *testing.B) {
	draw := drawing()
	for b.Loop() {
		draw()
	}
}
