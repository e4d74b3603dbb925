package synth

import (
	"math"
	"math/cmplx"
	"sync"
	"testing"
)

// bspline is the centred B-spline by the recursion of Cox and de Boor for
// evenly spaced knots: B_n(t) = ((n+1)/2 + t)/n·B_{n-1}(t + 1/2) + ((n+1)/2 - t)/n·
// B_{n-1}(t - 1/2).
func bspline(degree int, t float64) float64 {
	if degree == 0 {
		if t >= -0.5 && t < 0.5 {
			return 1
		}
		return 0
	}
	n := float64(degree)
	return (((n+1)/2+t)*bspline(degree-1, t+0.5) + ((n+1)/2-t)*bspline(degree-1, t-0.5)) / n
}

// splineSteps is the number of steps of the midpoint rule over the spline.
const splineSteps = 2000

// splineAt returns the argument of the spline in the middle of a step.
func splineAt(i int) float64 { return -reach + 2*reach*(float64(i)+0.5)/splineSteps }

// splines has the spline there: the recursion takes its time.
var splines = sync.OnceValue(func() (b [splineSteps]float64) {
	for i := range b {
		b[i] = bspline(2*reach-1, splineAt(i))
	}
	return b
})

// convolved integrates, by the midpoint rule, what the spline makes of d(s) for
// s > 0 at time t.
func convolved(t float64, d func(float64) float64) float64 {
	sum := 0.0
	for i, b := range splines() {
		if s := splineAt(i); t-s > 0 {
			sum += b * d(t-s)
		}
	}
	return sum * 2 * reach / splineSteps
}

// Step, corner and the onset of a sine against numerical convolution with the
// B-spline. The sine far away is the one the spline has scaled by sinc¹².
func TestCorrectionsAreTheConvolutionWithTheSpline(t *testing.T) {
	const w = 1.7
	sine := func(s float64) float64 { return 0.4*math.Cos(w*s) + 0.9/w*math.Sin(w*s) }
	for _, c := range []struct {
		what            string
		step, slope, w2 float64
		d               func(float64) float64
		scale           float64
	}{
		{"step", 1, 0, 0, func(float64) float64 { return 1 }, 1},
		{"corner", 0, 1, 0, func(s float64) float64 { return s }, 1},
		{"both", -2, 0.5, 0, func(s float64) float64 { return -2 + 0.5*s }, 1},
		{"sine", 0.4, 0.9, w * w, sine, spline(w / (2 * math.Pi))},
	} {
		for _, since := range []float64{0, 0.1, 0.5, 0.83, 1} {
			var got near
			correct(&got, since, c.step, c.slope, c.w2)
			for i := range got {
				at := float64(i-reach) + since
				want := convolved(at, c.d)
				if i >= reach { // where the waveform itself has it
					want -= c.scale * c.d(at)
				}
				if math.Abs(got[i]-want) > 2e-3 { // the midpoint rule at the step
					t.Errorf("%s, %v before the sample: at %v %v, want %v", c.what, since, at, got[i], want)
				}
			}
		}
	}
}

// The design bounds of the filters at both rates: whole up to 20 kHz, gone by
// 110 dB from rate - 20 kHz on, exactly half in the middle.
func TestHalfbandFilters(t *testing.T) {
	for _, edge := range []float64{20000 / 192000.0, 20000 / 96000.0, 20000 / 176400.0, 20000 / 88200.0} {
		h := halfbandTaps(edge)
		response := func(f float64) float64 {
			sum := 0.5
			for i, x := range h {
				sum += 2 * x * math.Cos(2*math.Pi*f*float64(2*(len(h)-i)-1))
			}
			return sum
		}
		ripple, leak := 0.0, math.Inf(-1)
		for f := 0.0; f <= edge; f += edge / 500 {
			ripple = math.Max(ripple, math.Abs(decibels(response(f))))
			leak = math.Max(leak, decibels(math.Abs(response(0.5-f))))
		}
		if ripple > 1e-4 || leak > -110 {
			t.Errorf("edge %v: ripple %.6f dB, leak %.1f dB", edge, ripple, leak)
		}
		if e := response(0.25); math.Abs(e-0.5) > 1e-12 {
			t.Errorf("edge %v: %v in the middle", edge, e)
		}
	}
}

// slowHalfband is the direct form of the whole filter, output i centred on
// input i.
func slowHalfband(h, x []float64, i int) float64 {
	at := func(i int) float64 {
		if i < 0 || i >= len(x) {
			return 0
		}
		return x[i]
	}
	sum := 0.5 * at(i)
	for j, c := range h {
		k := 2*(len(h)-j) - 1
		sum += c * (at(i-k) + at(i+k))
	}
	return sum
}

func TestHalfbandAgainstTheDirectForm(t *testing.T) {
	h := halfbandTaps(0.2)
	m := len(h)
	x := make([]float64, 640)
	for i := range x {
		x[i] = math.Sin(float64(i * i))
	}
	halve, keep := newHalfband(h, 16, 3), newHalfband(h, 16, 0)
	var halved, kept []float64
	for i := 0; i < len(x); i += 32 {
		out := make([]float64, 16)
		halve.decimate(out, x[i:i+32])
		halved = append(halved, out...)
		block := append([]float64(nil), x[i:i+32]...)
		keep.filter(block)
		kept = append(kept, block...)
	}
	for i, got := range halved {
		if want := slowHalfband(h, x, 2*(i-m+1-3)); math.Abs(got-want) > 1e-12 { // rounding
			t.Fatalf("decimated sample %d: %v, want %v", i, got, want)
		}
	}
	for i, got := range kept {
		if want := slowHalfband(h, x, i-2*m+1); math.Abs(got-want) > 1e-12 {
			t.Fatalf("filtered sample %d: %v, want %v", i, got, want)
		}
	}
}

// The droop filters undo sinc¹² to 5.3e-5, 85 dB under what they pass, as far
// as each is made for.
func TestDroopUndoesTheSpline(t *testing.T) {
	for _, c := range []struct {
		taps []float64
		top  float64
	}{{droopPlain, 20000 / 88200.0}, {droopProduct, 28000 / 96000.0}, {droopFourfold, 28000 / 192000.0}} {
		d := droop{taps: c.taps}
		var x [ticks]float64
		x[0] = 1
		d.run(&x)
		for f := 0.0; f < c.top; f += 0.001 {
			if e := spline(f)/d.undo(f) - 1; math.Abs(e) > 5.3e-5 {
				t.Errorf("%v at %v", e, f)
			}
			// undo answers to the response of the filter itself, as far as
			// cosineOf is exact.
			sum := complex(0, 0)
			for i, y := range x {
				sum += complex(y, 0) * cmplx.Rect(1, -2*math.Pi*f*float64(i-d.delay()))
			}
			if math.Abs(real(sum)*d.undo(f)-1) > 2e-9 || math.Abs(imag(sum)) > 1e-10 {
				t.Errorf("response %v at %v, want %v", sum, f, 1/d.undo(f))
			}
		}
	}
}

func TestSineOf(t *testing.T) {
	for i := range 100001 {
		p := float64(i) / 100000
		if e := math.Abs(sineOf(p) - math.Sin(2*math.Pi*p)); e > 3e-11 { // its own claim
			t.Fatalf("sin at phase %v is %v off", p, e)
		}
		if e := math.Abs(cosineOf(p) - math.Cos(2*math.Pi*p)); e > 3e-11 {
			t.Fatalf("cos at phase %v is %v off", p, e)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct{ in, want float64 }{{0, 0}, {0.25, 0.25}, {1, 0}, {-0.25, 0.75}, {7.5, 0.5}, {-1e-20, 0}} {
		if got := wrap(c.in); got != c.want {
			t.Errorf("wrap(%v) = %v, want %v", c.in, got, c.want)
		}
	}
}
