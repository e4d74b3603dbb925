// Package measure judges the sound: against exact spectra from outside the engine, and side by side
// with sampling without any correction, with two-point polynomial BLEP, and with the oscillators
// of a browser.
package measure

import (
	"math"

	"gonum.org/v1/gonum/dsp/fourier"

	"partialcredit/synth"
)

// A tone is a pitch at which a measurement needs no window: p periods fall on n samples, p odd, so
// that partials and aliases fall on different lines of the spectrum (sound.md 7.1).
type tone struct {
	rate float64
	p, n int
}

// coherent returns the tone next to hz. Above 3 kHz it is shorter, so that a browser's single
// precision holds its frequency exactly.
func coherent(hz, rate float64) tone {
	n := 1 << 14
	if hz > 3000 {
		n = 1 << 13
	}
	return tone{rate, odd(hz * float64(n) / rate), n}
}

// odd returns the odd number next to x.
func odd(x float64) int { return 2*int(x/2) + 1 }

func (t tone) hz() float64 { return t.at(t.p) }

// at is the frequency of a line of the spectrum in hertz.
func (t tone) at(line int) float64 { return float64(line) * t.rate / float64(t.n) }

// pitched returns s at exactly hz: the nearest note, and the rest in cents.
func pitched(s synth.Sound, hz float64) synth.Sound {
	note, feet := math.Round(69+12*math.Log2(hz/440)), 8.0
	for ; note < 24; note += 12 {
		feet *= 2
	}
	for ; note > 96; note -= 12 {
		feet /= 2
	}
	s.Note, s.A.Footage, s.B.Footage, s.A.Cents, s.B.Cents = note, feet, feet, 0, 0
	at, _ := s.Hz()
	s.A.Cents = 1200 * math.Log2(hz/at)
	s.B.Cents = s.A.Cents
	return s
}

// settle is the time in seconds after which the filter against the mean has forgotten how the note
// began, by 148 dB.
const settle = 2.7

// unit is the amplitude with which an oscillator of amplitude 1 leaves a voice.
const unit = 0.125

// ours plays a sound as the app does and returns the samples of the tone, from one at which all
// phases are what they were at the start.
func ours(s synth.Sound, t tone) []float64 {
	s.Seconds, s.Amplitude.Attack = 10, 0.002
	v := synth.NewVoice(pitched(s, t.hz()), t.rate)
	out := make([]float32, t.n)
	for range int(math.Ceil(settle*t.rate/float64(t.n))) + 1 {
		v.Render(out, nil)
	}
	x := make([]float64, t.n)
	for i, y := range out {
		x[i] = float64(y) / unit
	}
	return x
}

// spectrum returns c with x = Σ over k of Re(c[k]·e^{j2πki/n}): the magnitude is the amplitude of
// the line.
func spectrum(x []float64) []complex128 {
	n := len(x)
	c := fourier.NewFFT(n).Coefficients(nil, x)
	for i := range c {
		c[i] *= complex(2/float64(n), 0)
	}
	c[0] /= 2
	return c
}

// coupling is the response of the filter against the mean that ends a voice, a one-pole high-pass
// at 1 Hz, at a line.
func (t tone) coupling(line int) complex128 {
	w := 2 * math.Pi * float64(line) / float64(t.n)
	s, c := math.Sincos(w)
	z := complex(c, -s) // one sample later
	return (1 - z) / (1 - complex(1-2*math.Pi/t.rate, 0)*z)
}
