package exact

import (
	"math"
	"math/cmplx"
	"testing"
)

// The published series (sound.md 1.1; W3C Web Audio "Oscillator Coefficients"
// for the first three, the pulse from (4/πn)·|sin πnd|) and the synced values
// of sound.md 1.2.
func TestPartialsAgreeWithPublishedSeries(t *testing.T) {
	for _, c := range []struct {
		what string
		wave Wave
		want map[int]float64
	}{
		{"sawtooth 2/(πn)", Named("sawtooth", 0), map[int]float64{1: 0.636620, 2: 0.318310, 3: 0.212207, 4: 0.159155}},
		{"falling sawtooth 2/(πn)", Named("falling sawtooth", 0), map[int]float64{1: 0.636620, 2: 0.318310}},
		{"square 4/(πn), n odd", Named("pulse", 0.5), map[int]float64{1: 1.273240, 2: 0, 3: 0.424413, 5: 0.254648}},
		{"triangle 8/(πn)², n odd", Named("triangle", 0), map[int]float64{1: 0.810569, 2: 0, 3: 0.090063, 5: 0.032423}},
		{"quarter pulse", Named("pulse", 0.25), map[int]float64{1: 0.900316, 2: 0.636620, 3: 0.300105, 4: 0, 5: 0.180063}},
		{"tenth pulse", Named("pulse", 0.1), map[int]float64{1: 0.393453, 2: 0.374196, 5: 0.254648, 10: 0}},
		{"sync 1.5", Named("sawtooth", 0).Synced(1.5), map[int]float64{1: 0.551329, 2: 0.275664, 3: 0.318310, 8: 0.068916}},
		{"sync 2", Named("sawtooth", 0).Synced(2), map[int]float64{1: 0, 2: 0.636620, 3: 0, 4: 0.318310}},
		{"sync 2.5", Named("sawtooth", 0).Synced(2.5), map[int]float64{1: 0.231266, 2: 0.489829, 5: 0.318310, 6: 0.038544}},
		{"sync 3.7", Named("sawtooth", 0).Synced(3.7), map[int]float64{1: 0.120472, 4: 0.504457, 8: 0.146639}},
		{"sine", Named("sine", 0), map[int]float64{1: 1, 2: 0, 3: 0}},
		{"synced sine 2.5", Named("sine", 0).Synced(2.5), map[int]float64{1: 0.303152, 2: 0.707355, 3: 0.578745, 4: 0.163236}},
	} {
		got := c.wave.Partials(10)
		for n, want := range c.want {
			if math.Abs(cmplx.Abs(got[n])-want) > 6e-7 { // the six digits given
				t.Errorf("%s, partial %d: %.6f, want %.6f", c.what, n, cmplx.Abs(got[n]), want)
			}
		}
	}
}

// integrated returns line k of a function of u by the midpoint rule.
func integrated(x func(u float64) float64, k int) complex128 {
	const steps = 1 << 16
	sum := complex(0, 0)
	for i := range steps {
		u := (float64(i) + 0.5) / steps
		sum += complex(x(u), 0) * cmplx.Rect(2.0/steps, -2*math.Pi*float64(k)*u)
	}
	return sum
}

// Phases too, and what no series is published for, against numerical
// integration of the definition.
func TestLinesAgreeWithIntegration(t *testing.T) {
	saw := func(p float64) float64 { return 2*(p-math.Floor(p)) - 1 }
	triangle := func(p float64) float64 { return 2 / math.Pi * math.Asin(math.Sin(2*math.Pi*p)) }
	pulse := Named("pulse", 0.3).Synced(2.6)
	sine := Named("sine", 0).Synced(3.4)
	ring := func(one, depth float64) Lines {
		x, y := Named("triangle", 0).Partials(400), Named("sine", 0).Partials(2)
		return Product(60, 3, 7, x, y, one, depth)
	}
	for _, c := range []struct {
		what  string
		x     func(u float64) float64
		lines []complex128
	}{
		{"synced pulse", pulse.At, pulse.Partials(59)},
		{"synced sine", sine.At, sine.Partials(59)},
		{"synced triangle", Named("triangle", 0).Synced(0.6).At, Named("triangle", 0).Synced(0.6).Partials(59)},
		{"ring", func(u float64) float64 { return triangle(3*u) * math.Sin(14*math.Pi*u) }, ring(0, 1)},
		{"am", func(u float64) float64 { return triangle(3*u) * (1 + 0.7*math.Sin(14*math.Pi*u)) }, ring(1, 0.7)},
		{"modulated sine", func(u float64) float64 { return math.Sin(2*math.Pi*5*u + 3*math.Sin(2*math.Pi*7*u)) }, ModulatedSine(60, 5, 7, 3)},
		{"modulated sawtooth", func(u float64) float64 { return saw(5*u + 3/(2*math.Pi)*math.Sin(2*math.Pi*7*u)) }, ModulatedSawtooth(60, 5, 7, 3)},
		{"moved width", func(u float64) float64 {
			d := 0.3 + 0.2*triangle(2*u)
			return saw(11*u-d) - saw(11*u)
		}, TriangleWidth(60, 11, 2, 0.3, 0.2)},
	} {
		for k := 1; k < 60; k += 3 {
			// What the midpoint rule leaves at steps, and the sums cut short.
			if want := integrated(c.x, k); cmplx.Abs(c.lines[k]-want) > 2e-4 {
				t.Errorf("%s, line %d: %.6f, want %.6f", c.what, k, c.lines[k], want)
			}
		}
	}
}

// sound.md 3 (own derivation, checked there against a simulation at 4 MHz).
func TestTriangleWidthHasItsLines(t *testing.T) {
	l := TriangleWidth(300, 100, 1, 0.5, 0.25)
	for hz, want := range map[int]float64{100: 1.041905, 99: 0.318310, 101: 0.318310, 98: 0.135095, 97: 0, 96: 0.027019, 200: 0.318310, 199: 0.135095, 198: 0.159155} {
		if got := cmplx.Abs(l[hz]); math.Abs(got-want) > 5e-5 { // the tails of the other partials
			t.Errorf("%d Hz: %.6f, want %.6f", hz, got, want)
		}
	}
}

// The limit is what is stated: whole, half in the middle, gone.
func TestOperandLimit(t *testing.T) {
	for _, rate := range []float64{44100, 48000} {
		for f, want := range map[float64]float64{0: 1, 10000: 1, 20000: 1, rate / 2: 0.5, rate - 20000: 0, rate: 0} {
			if got := OperandLimit(rate, f); math.Abs(got-want) > 3e-6 { // 110 dB
				t.Errorf("%v Hz at %v: %v, want %v", f, rate, got, want)
			}
		}
	}
	// I0(10), A&S Table 9.8 (from memory, checked by its series).
	if got := bessel0(10); math.Abs(got/2815.716628466254-1) > 1e-12 {
		t.Errorf("I0(10) = %v", got)
	}
}
