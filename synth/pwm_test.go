package synth

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"
)

// p(t) = s(φ-d) - s(φ) + 2d - 1 for any φ and d (own derivation, sound.md 3);
// the engine leaves the 2d - 1 out. Levels away from the edges, where no
// correction reaches, are those of a pulse shifted by exactly that.
func TestPulseIsTheDifferenceOfTwoSawtooths(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	s := func(p float64) float64 { return 2*wrap(p) - 1 }
	for range 1000 {
		p, d := random.Float64(), random.Float64()
		want := -1.0
		if p < d {
			want = 1
		}
		if got := s(p-d) - s(p) + 2*d - 1; math.Abs(got-want) > 1e-12 { // row 23
			t.Fatalf("phase %v, duty %v: %v, want %v", p, d, got, want)
		}
		var o osc
		o.start(Pulse, 0, p, d)
		o.advance(0, 0, 0)
		if got := o.run(d, nil)[ticks-1] + 2*d - 1; math.Abs(got-want) > 1e-12 {
			t.Fatalf("engine at phase %v, duty %v: %v, want %v", p, d, got, want)
		}
	}
}

// The series of the pulse with its mean of 2d - 1: the mean is taken off in
// the oscillator, so that bin 0 is empty at every duty.
func TestPulseHasNoMean(t *testing.T) {
	_, hz := coherent(220, 48000, fftLength)
	for _, d := range []float64{0.03, 0.25, 0.5, 0.9} {
		c := spectrum(steady(oscillators(OnlyA, Pulse, d), 48000, hz, hz, fftLength))
		if m := cmplx.Abs(c[0]); m > 1e-9 {
			t.Errorf("duty %v: mean %v, want 0 (%v less %v)", d, m, 2*d-1, 2*d-1)
		}
	}
}

// widths plays a pulse whose duty an LFO moves and returns it at the level of
// the oscillator, from 0.5 s on.
func widths(shape LFOShape, hz, depth float64, seconds float64) []float64 {
	s := oscillators(OnlyA, Pulse, 0.5)
	s.Note, s.A.Cents = 43, 1200*math.Log2(100/97.99885899543733) // 100 Hz
	s.Seconds = 0.5 + seconds
	s.LFO = LFO{Shape: shape, Hz: hz, Duty: depth}
	return wide(Render(s, 48000))[24000:][:int(seconds*48000)]
}

// A sawtooth LFO over the whole period makes the pulse exactly two sawtooths,
// one of them lower by the rate of the LFO; rows 21 of sound.md 9, without
// the lines of the LFO itself, which are the mean that is taken off. One
// second and whole frequencies in hertz: a bin is 1 Hz.
func TestFullSawtoothWidthIsASecondSawtooth(t *testing.T) {
	c := spectrum(widths(LFOSawtooth, 3, 0.5, 1))
	for hz, want := range map[int]float64{97: 0.636620, 100: 0.636620, 194: 0.318310, 200: 0.318310, 291: 0.212207, 300: 0.212207, 94: 0, 103: 0, 106: 0} {
		checkAmplitude(t, fmt.Sprint(hz, " Hz"), cmplx.Abs(c[hz]), want, 0.1, 1e-3*0.6366) // row 21: 0.1 dB, -60 dB
	}
	// Sample for sample: two sawtooths at 97 and 100 Hz.
	s := oscillators(Mix, Sawtooth, 0.5)
	s.A.Shape = FallingSawtooth
	x := widths(LFOSawtooth, 3, 0.5, 1)
	two := steady(s, 48000, 100, 97, 48000)
	a, b := spectrum(x), spectrum(two)
	for k := 20; k < 20000; k++ { // above the reach of the filter against the mean
		if d := cmplx.Abs(a[k]) - cmplx.Abs(b[k]); math.Abs(d) > 1e-3 {
			t.Errorf("%d Hz: differs by %v", k, d)
		}
	}
}

// A triangle LFO puts the second sawtooth 2fD above and below by turns: lines
// at 100 ± m Hz, row 22 of sound.md 9 (own derivation, checked there against a
// simulation).
func TestTriangleWidth(t *testing.T) {
	c := spectrum(widths(LFOTriangle, 1, 0.25, 1))
	for hz, want := range map[int]float64{100: 1.041905, 99: 0.318310, 101: 0.318310, 98: 0.135095, 102: 0.135095, 97: 0, 103: 0, 96: 0.027019, 104: 0.027019, 200: 0.318310, 199: 0.135095, 201: 0.135095, 198: 0.159155} {
		checkAmplitude(t, fmt.Sprint(hz, " Hz"), cmplx.Abs(c[hz]), want, 0.1, 2e-3) // row 22: 0.1 dB
	}
}

// A sine LFO modulates the phase of partial k by πkD: its carrier is
// (2/πk)·|e^{-j2πkd0}·J0(πkD) - 1|, own derivation (sound.md 3).
func TestSineWidth(t *testing.T) {
	const d = 0.4 // peak to peak
	c := spectrum(widths(LFOSine, 1, d/2, 1))
	for k := 1; k <= 5; k++ {
		n := float64(k)
		want := 2 / (math.Pi * n) * math.Abs(math.Cos(math.Pi*n)*math.J0(math.Pi*n*d)-1)
		checkAmplitude(t, fmt.Sprint("partial ", k), cmplx.Abs(c[100*k]), want, 0.02, 0)
		want = 2 / (math.Pi * n) * math.Abs(math.J1(math.Pi*n*d))
		checkAmplitude(t, fmt.Sprint("beside partial ", k), cmplx.Abs(c[100*k+1]), want, 0.02, 0)
	}
}
