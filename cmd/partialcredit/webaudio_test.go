//go:build !js

package main_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// TestPartialsAgreeWithWebAudio renders the same Fourier coefficients with the
// browser's own PeriodicWave, un-normalised (W3C Web Audio API 1.1, PeriodicWave
// and OfflineAudioContext), and compares the partials with the engine's.
//
// Coefficients: sawtooth and triangle as in that specification, "Oscillator
// Coefficients"; pulse (4/πn)|sin πnd| and synced sawtooth (2/πn)|σ+S_n| by
// integration, in phase as the specification's a cos + b sin.
func TestPartialsAgreeWithWebAudio(t *testing.T) {
	const hz, rate = 220, 48000
	const headroom = 8 // an oscillator of amplitude 1 leaves the voice with 1/8
	pulse := func(d float64) func(n float64) complex128 {
		return func(n float64) complex128 {
			return complex(2/(math.Pi*n)*math.Sin(2*math.Pi*n*d), 2/(math.Pi*n)*(1-math.Cos(2*math.Pi*n*d)))
		}
	}
	synced := func(r float64) func(n float64) complex128 {
		return func(n float64) complex128 {
			wraps := math.Ceil(r) - 1
			sum := complex(r-wraps, 0)
			for k := 1.0; k <= wraps; k++ {
				sum += cmplx.Rect(1, -2*math.Pi*n*k/r)
			}
			c := complex(0, 1/(math.Pi*n)) * sum // c_n; a = 2 Re c, b = -2 Im c
			return complex(2*real(c), -2*imag(c))
		}
	}
	for _, c := range []struct {
		name  string
		sound func(s *synth.Sound)
		coeff func(n float64) complex128 // a + jb
	}{
		{"sawtooth", func(s *synth.Sound) {}, func(n float64) complex128 { return complex(0, -2/(math.Pi*n)) }},
		{"triangle", func(s *synth.Sound) { s.A.Shape = synth.Triangle },
			func(n float64) complex128 { return complex(0, 8*math.Sin(n*math.Pi/2)/math.Pow(math.Pi*n, 2)) }},
		{"pulse 0.3", func(s *synth.Sound) { s.A.Shape, s.A.Duty = synth.Pulse, 0.3 }, pulse(0.3)},
		{"pulse 0.1", func(s *synth.Sound) { s.A.Shape, s.A.Duty = synth.Pulse, 0.1 }, pulse(0.1)},
		{"sync 2.5", func(s *synth.Sound) { s.Combine.How, s.Combine.Ratio = synth.Sync, 2.5 }, synced(2.5)},
		{"sync 3.7", func(s *synth.Sound) { s.Combine.How, s.Combine.Ratio = synth.Sync, 3.7 }, synced(3.7)},
	} {
		t.Run(c.name, func(t *testing.T) {
			page := Open(t, Visit{})
			const partials = rate / 2 / hz
			var re, im []float64
			for n := 0; n <= partials; n++ {
				v := complex128(0)
				if n > 0 {
					v = c.coeff(float64(n))
				}
				re, im = append(re, real(v)), append(im, imag(v))
			}
			reJSON, _ := json.Marshal(re)
			imJSON, _ := json.Marshal(im)
			var theirs []float32
			page.Eval(fmt.Sprintf(`(async () => {
				const ctx = new OfflineAudioContext(1, %d, %d), osc = ctx.createOscillator();
				osc.setPeriodicWave(ctx.createPeriodicWave(new Float32Array(%s), new Float32Array(%s), {disableNormalization: true}));
				osc.frequency.value = %d;
				osc.connect(ctx.destination);
				osc.start();
				return Array.from((await ctx.startRendering()).getChannelData(0));
			})()`, 2*rate, rate, reJSON, imJSON, hz), &theirs)

			s := synth.Default()
			c.sound(&s)
			ours := synth.Render(s, rate)
			// One second of each, away from the attack: partials fall on whole bins.
			a, b := spectrumOf(theirs[rate/2:][:rate]), spectrumOf(ours[rate/2:][:rate])
			worst := 0.0
			for n := 1; n*hz < 16000; n++ {
				want, got := cmplx.Abs(a[n*hz]), cmplx.Abs(b[n*hz])*headroom
				if want < 1e-4*cmplx.Abs(a[hz]) {
					if got > 1e-3*cmplx.Abs(a[hz]) {
						t.Errorf("partial %d: %.1f dB where the browser has a null", n, spectrum.DB(got/want))
					}
					continue
				}
				worst = math.Max(worst, math.Abs(spectrum.DB(got/want)))
			}
			t.Logf("greatest difference of a partial below 16 kHz: %.4f dB", worst)
			// Five times what was measured; the engine's own bound against the closed forms
			// is in synth.
			if worst > 0.05 {
				t.Errorf("partials differ by up to %.3f dB", worst)
			}
		})
	}
}

func spectrumOf(x []float32) []complex128 {
	return spectrum.NewReal(len(x)).Coefficients(x, nil)
}
