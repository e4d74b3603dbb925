package synth

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"partialcredit/synth/exact"
)

// tolerance of lines of sine products, in dB: sound.md 9, rows 13 to 18.
const lineTolerance = 0.02

// lines checks amplitudes at bins of a spectrum. Where none is wanted, the
// bound is -100 dB.
func lines(t *testing.T, what string, c []complex128, want map[int]float64) {
	t.Helper()
	for bin, w := range want {
		checkAmplitude(t, fmt.Sprintf("%s, bin %d", what, bin), cmplx.Abs(c[bin]), w, lineTolerance, 1e-5)
	}
}

// sines combines two sines at bins a and b of an FFT at 48 kHz.
func sines(how How, a, b int, change func(*Sound)) []complex128 {
	s := oscillators(how, Sine, 0.5)
	if change != nil {
		change(&s)
	}
	const bin = 48000.0 / fftLength
	return spectrum(steady(s, 48000, float64(a)*bin, float64(b)*bin, fftLength))
}

// sin a · sin b = ½cos(a-b) - ½cos(a+b): identity. Row 13 of sound.md 9, on
// bins.
func TestRingModulationHasSumAndDifference(t *testing.T) {
	lines(t, "ring of sines", sines(Ring, 150, 102, nil), map[int]float64{48: 0.5, 252: 0.5, 150: 0, 102: 0, 0: 0})
	lines(t, "B at half level", sines(Ring, 150, 102, func(s *Sound) { s.B.Level = 0.5 }), map[int]float64{48: 0.25, 252: 0.25})
}

// (1 + m sin Ωt)·carrier has sidebands of m/2: J.O. Smith, Mathematics of the
// DFT, "Sinusoidal Amplitude Modulation"; row 14 of sound.md 9.
func TestAmplitudeModulationHasSidebands(t *testing.T) {
	for _, m := range []float64{0, 0.6, 1} {
		c := sines(AM, 341, 17, func(s *Sound) { s.Combine.Depth = m })
		lines(t, fmt.Sprint("depth ", m), c, map[int]float64{341: 1, 324: m / 2, 358: m / 2, 17: 0, 307: 0})
	}
}

// Abramowitz & Stegun, Table 9.4, J_n(x), rounded to ten digits (recomputed:
// the numeric pages were not readable, sound.md 2).
var bessel = map[float64][]float64{
	1: {0.7651976866, 0.4400505857, 0.1149034849, 0.0195633540, 0.0024766390},
	2: {0.2238907791, 0.5767248078, 0.3528340286, 0.1289432495, 0.0339957198, 0.0070396298},
	5: {-0.1775967713, -0.3275791376, 0.0465651163, 0.3648312306, 0.3912323605, 0.2611405461, 0.1310487318, 0.0533764102},
}

// sin(a + β sin b) = Σ J_n(β) sin(a + nb): NIST DLMF 10.12; Chowning, JAES
// 21(7), 526-534, 1973.
func TestFrequencyModulationHasBesselSidebands(t *testing.T) {
	const a, b = 3000, 171
	check := func(index float64, orders []float64) {
		c := sines(FM, a, b, func(s *Sound) { s.Combine.Index = index })
		want := map[int]float64{b: 0}
		for n, j := range orders {
			want[a+n*b], want[a-n*b] = math.Abs(j), math.Abs(j)
		}
		lines(t, fmt.Sprint("index ", index), c, want)
		if len(orders) > 1 { // the sign: upper sidebands against the carrier
			phase := real(c[a+b] * cmplx.Conj(c[a]) * cmplx.Conj(modulatorPhase(b)))
			if phase*orders[0]*orders[1] < 0 {
				t.Errorf("index %v: the first upper sideband has the wrong sign", index)
			}
		}
	}
	for index, orders := range bessel {
		check(index, orders)
	}
	for _, index := range []float64{0, 0.5, 3, 8, 10} {
		var orders []float64
		for n := range 15 {
			if j := math.Jn(n, index); math.Abs(j) > 1e-3 || n == 0 {
				orders = append(orders, j)
			} else if n > int(index) {
				break
			} else {
				orders = append(orders, 0)
				t.Fatalf("index %v: order %d is too weak to be measured to %v dB", index, n, lineTolerance)
			}
		}
		check(index, orders)
	}
}

// modulatorPhase is e^{jθ} of a sine at bin b after fftLength samples from
// phase 0, against the sine convention c = -j for sin.
func modulatorPhase(b int) complex128 {
	c := sines(OnlyA, b, 0, nil)[b] * complex(0, 1)
	return c / complex(cmplx.Abs(c), 0)
}

// The carrier vanishes at the first zero of J0 (A&S Table 9.5), and sidebands
// of negative frequency fold back with their sign changed: carrier and
// modulator at the same frequency, from phase 0 (rows 16 and 18 of sound.md 9).
func TestFrequencyModulationFoldsAndVanishes(t *testing.T) {
	lines(t, "first zero of J0", sines(FM, 3000, 171, func(s *Sound) { s.Combine.Index = 2.4048255577 }),
		map[int]float64{3000: 0, 3171: 0.5191474973, 2829: 0.5191474973, 3342: 0.431755})
	lines(t, "one to one", sines(FM, 68, 68, nil), map[int]float64{68: 0.650294, 136: 0.459614, 204: 0.112427})
}

// The steepest case that stays clear of aliases by 80 dB (issue 3): those
// start where carrier + (index + 9)·modulator reaches 172 kHz at 48 kHz, as
// J_{β+9}(β) is below -80 dB for β up to 10 (sound.md 1.3).
func TestFrequencyModulationWithinItsLimitHasNoAliases(t *testing.T) {
	const a, b = 1429, 2689 // 4.2 and 7.9 kHz at index 10: 154 kHz
	c := sines(FM, a, b, func(s *Sound) { s.Combine.Index = 10 })
	want := exact.ModulatedSine(len(c), a, b, 10)
	if e := errorBelow(c, want, 20000, 48000); e > -80 {
		t.Errorf("error %.1f dB under the signal", e)
	}
}

// errorBelow is the energy of the difference of two spectra in dB under that
// of the second.
func errorBelow(got, want []complex128, limit, rate float64) float64 {
	var e, s float64
	for k := 1; float64(k)*rate/float64(2*(len(got)-1)) < limit; k++ {
		e += math.Pow(cmplx.Abs(got[k]-want[k]), 2)
		s += math.Pow(cmplx.Abs(want[k]), 2)
	}
	return powerDecibels(e / s)
}

// sin a + sin b = 2 sin((a+b)/2) cos((a-b)/2): two detuned tones beat at the
// difference of their frequencies, and partial k at k times that. Rates are
// those of 110·(2^(8/1200) - 1), sound.md 1.3.
func TestDetunedTonesBeat(t *testing.T) {
	s := oscillators(Mix, Sawtooth, 0.5)
	s.Note, s.B.Cents, s.Seconds = 45, 8, 10 // A2 = 110 Hz
	x := wide(Render(s, 48000))[4800:]
	for k, want := range map[int]float64{1: 0.509484, 2: 2 * 0.509484, 3: 3 * 0.509484} {
		if got := beatRate(x, float64(k)*110/48000, want/48000) * 48000; math.Abs(got/want-1) > 0.01 { // row 20: 1 %
			t.Errorf("partial %d beats at %.4f Hz, want %.4f", k, got, want)
		}
	}
}

// beatRate finds where the spectrum of the power about a frequency has its
// peak next to a guess, in cycles per sample.
func beatRate(x []float64, frequency, guess float64) float64 {
	const hop = 960 // a window of 50 Hz about the partial
	var power []float64
	for i := 0; i+2*hop <= len(x); i += hop {
		power = append(power, math.Pow(amplitude(x[i:i+2*hop], frequency), 2))
	}
	mean := 0.0
	for _, p := range power {
		mean += p / float64(len(power))
	}
	for i := range power {
		power[i] -= mean
	}
	best, at := 0.0, 0.0
	for f := 0.9 * guess; f < 1.1*guess; f += guess / 2000 {
		if a := amplitude(power, f*hop); a > best {
			best, at = a, f
		}
	}
	return at
}

// Mix: -1 is A alone, +1 is B alone, in the middle both are whole.
func TestBalance(t *testing.T) {
	for balance, want := range map[float64][2]float64{-1: {1, 0}, -0.5: {1, 0.5}, 0: {1, 1}, 0.25: {0.75, 1}, 1: {0, 1}} {
		c := sines(Mix, 101, 333, func(s *Sound) { s.Combine.Balance = balance })
		lines(t, fmt.Sprint("balance ", balance), c, map[int]float64{101: want[0], 333: want[1]})
	}
}

// Rising and falling sawtooth have the same magnitudes, and so have duties d
// and 1-d (symmetry of the closed forms, sound.md 1.1).
func TestWhatSoundsAlikeMeasuresAlike(t *testing.T) {
	p, hz := coherent(220, 48000, fftLength)
	of := func(shape Shape, duty float64) []complex128 {
		return spectrum(steady(oscillators(OnlyA, shape, duty), 48000, hz, hz, fftLength))
	}
	for _, c := range []struct {
		what string
		a, b []complex128
	}{
		{"rising and falling", of(Sawtooth, 0.5), of(FallingSawtooth, 0.5)},
		{"a quarter and three", of(Pulse, 0.25), of(Pulse, 0.75)},
		{"a tenth and nine", of(Pulse, 0.1), of(Pulse, 0.9)},
	} {
		for k := p; k < len(c.a); k += p {
			if d := cmplx.Abs(c.a[k]) - cmplx.Abs(c.b[k]); math.Abs(d) > 1e-6 { // row 6
				t.Errorf("%s: bin %d differs by %v", c.what, k, d)
			}
		}
	}
}

// A ratio below 1 gives a synced triangle a new shape; a sawtooth is only
// made softer and lower (sound.md 1.2).
func TestSyncBelowOne(t *testing.T) {
	p, hz := coherent(220, 48000, fftLength)
	change := func(shape Shape) float64 { // of the second partial against the first, in dB
		of := func(r float64) float64 {
			s := oscillators(Sync, shape, 0.5)
			s.Combine.Ratio = r
			c := spectrum(steady(s, 48000, hz, hz, fftLength))
			return cmplx.Abs(c[2*p]) / cmplx.Abs(c[p])
		}
		return decibels((of(0.6) + 1e-9) / (of(1) + 1e-9))
	}
	if d := change(Sawtooth); math.Abs(d) > 0.001 {
		t.Errorf("the sawtooth changes by %v dB", d)
	}
	if d := change(Triangle); d < 60 { // from no second partial at all
		t.Errorf("the triangle changes by %v dB only", d)
	}
}
