package synth

import (
	"cmp"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"partialcredit/synth/exact"
)

var rates = []float64{44100, 48000}

// The range of the piano above 55 Hz in octaves. desk measure takes half octaves.
var pitches = []float64{55, 110, 220, 440, 880, 1760, 3520, 4186}

// A waveform is something steady and its exact partials; ratio 0 is unsynced.
type waveform struct {
	shape       Shape
	duty, ratio float64
}

func (w waveform) String() string {
	s := w.shape.String()
	if w.shape == Pulse {
		s += fmt.Sprintf(" %v", w.duty)
	}
	if w.ratio != 0 {
		s += fmt.Sprintf(" synced at %v", w.ratio)
	}
	return s
}

func (w waveform) sound() Sound {
	how := OnlyA
	if w.ratio != 0 {
		how = Sync
	}
	s := oscillators(how, w.shape, w.duty)
	s.Combine.Ratio = w.ratio
	return s
}

// exact returns the first n partials.
func (w waveform) exact(n int) []complex128 {
	x := exact.Named(w.shape.String(), w.duty)
	if w.ratio != 0 {
		x = x.Synced(w.ratio)
	}
	return x.Partials(n)
}

// The bounds of issue 3: aliases 100 dB under the signal, partials within 0.05
// dB below 18 kHz, at all ratios of sync.
func TestWaveformsAreExactAndFreeOfAliases(t *testing.T) {
	const (
		aliasBound   = -100.0 // dB, below 20 kHz
		partialBound = 0.05   // dB, below 18 kHz
		floor        = 1e-4   // of the strongest partial: weaker ones answer to the energy of the error instead
	)
	var waveforms []waveform
	for _, ratio := range []float64{0, 0.25, 0.6, 1.5, 2.5, 3.7, 7.5} {
		waveforms = append(waveforms,
			waveform{Triangle, 0.5, ratio}, waveform{Sawtooth, 0.5, ratio}, waveform{FallingSawtooth, 0.5, ratio},
			waveform{Pulse, 0.03, ratio}, waveform{Sine, 0.5, ratio})
		if ratio != 0.25 { // where the wider pulses never fall
			waveforms = append(waveforms, waveform{Pulse, 0.5, ratio}, waveform{Pulse, 0.25, ratio})
		}
	}
	worstAlias, worstPartial := map[float64]float64{}, 0.0 // aliases by ratio
	for _, w := range waveforms {
		for _, rate := range rates {
			for _, pitch := range pitches {
				p, hz := coherent(pitch, rate, fftLength)
				c := spectrum(steady(w.sound(), rate, hz, hz, fftLength))
				what := fmt.Sprintf("%v, %.1f Hz at %v", w, hz, rate)
				signal, alias := energies(c, p, 20000, rate)
				a := powerDecibels(alias / signal)
				worstAlias[w.ratio] = math.Max(a, cmp.Or(worstAlias[w.ratio], a))
				if !(a <= aliasBound) {
					t.Errorf("%s: aliases at %.1f dB", what, a)
				}
				partials, strongest := w.exact(int(18000/hz)), 0.0
				for _, x := range partials {
					strongest = math.Max(strongest, cmplx.Abs(x))
				}
				for n := 1; n < len(partials); n++ {
					got, want := cmplx.Abs(c[n*p]), cmplx.Abs(partials[n])
					if want < floor*strongest {
						want = 0
					} else {
						worstPartial = math.Max(worstPartial, math.Abs(decibels(got/want)))
					}
					checkAmplitude(t, fmt.Sprintf("%s, partial %d", what, n), got, want, partialBound, 1.01*floor*strongest)
				}
			}
		}
	}
	t.Logf("worst alias energy in dB by ratio: %.1f; worst partial %.4f dB off", worstAlias, worstPartial)
}

// A sawtooth sampled without correction at 5 kHz and 48 kHz has aliases of
// partials 9 and 10 at 3 and 2 kHz with 0.0707 and 0.0637 (sound.md 9, row 25).
// It shows that the measurement above sees aliases.
func TestNaiveSawtoothHasItsAliases(t *testing.T) {
	const n = 48000
	x := make([]float64, n)
	for i := range x {
		x[i] = 2*wrap(float64(i)*5000/48000) - 1
	}
	naive := spectrum(x)
	ours := spectrum(steady(oscillators(OnlyA, Sawtooth, 0.5), 48000, 5000, 0, n))
	for _, c := range []struct {
		hz   int
		want float64
	}{{3000, 0.0707}, {2000, 0.0637}} {
		got := math.Hypot(real(naive[c.hz]), imag(naive[c.hz]))
		// The sampled steps repeat after 48 samples, which shifts the sum by its
		// second term: 3 %.
		if math.Abs(got/c.want-1) > 0.1 {
			t.Errorf("naive at %d Hz: %v, want %v", c.hz, got, c.want)
		}
		if got := math.Hypot(real(ours[c.hz]), imag(ours[c.hz])); decibels(got/0.63662) > -90 {
			t.Errorf("ours at %d Hz: %v", c.hz, got)
		}
	}
}
