package take

import (
	"math"

	"partialcredit/synth/spectrum"
)

// The stretches in which noise is looked for: 43 ms, a quarter of it apart.
const (
	noiseFrame = 2048
	noiseHop   = noiseFrame / 4
)

// quieten takes from the note the noise that is heard around it: hiss and hum of
// the input, which are no part of the sound. It is spectral subtraction (S. F.
// Boll, IEEE Trans. ASSP 27:113, 1979) in its careful form: of what does not
// stand 10 times over the power of the noise at its frequency 40 dB less is left,
// of what stands over it all but the noise. Where the recording has not 60 ms
// outside the note the note stays what it was. x is the recording, around the
// note from start to end. It returns what it knows of the noise too, nil where
// that is nothing.
func quieten(x []float32, start, end int) ([]float32, *quieter) {
	q := newQuieter()
	edge := int(0.005 * Rate) // of an onset that begins before it is found
	n := q.learn(x[:max(0, start-edge)]) + q.learn(x[min(len(x), end+edge):])
	note := append([]float32(nil), x[start:end]...)
	if n < 3 {
		return note, nil
	}
	for k := range q.noise {
		q.noise[k] /= float64(n)
	}
	q.spread()
	return q.apply(note), q
}

// Alike returns a sound at the level of a take, and without what the noise around
// it covers: as quiet partials are lost in one of two sounds that are compared,
// so they are in the other.
func (t *Take) Alike(samples []float32) []float32 {
	out := level(samples)
	if t.noise == nil {
		return out
	}
	return t.noise.apply(out)
}

type quieter struct {
	fft    *spectrum.Real
	back   *spectrum.Complex
	window []float64 // Hann: its squares, four of them over each moment, sum to 1.5
	noise  []float64 // power per bin
}

func newQuieter() *quieter {
	q := &quieter{
		fft: spectrum.NewReal(noiseFrame), back: spectrum.NewComplex(noiseFrame),
		window: spectrum.Hann.Samples(noiseFrame), noise: make([]float64, noiseFrame/2+1),
	}
	return q
}

// learn adds the power of a stretch of noise and counts its frames.
func (q *quieter) learn(x []float32) (n int) {
	for from := 0; from+noiseFrame <= len(x); from += noiseFrame / 2 {
		for k, v := range q.fft.Coefficients(x[from:from+noiseFrame], q.window) {
			q.noise[k] += real(v)*real(v) + imag(v)*imag(v)
		}
		n++
	}
	return n
}

// spread takes the mean of each bin and two neighbours at either side: a few
// frames leave each unsure.
func (q *quieter) spread() {
	out := make([]float64, len(q.noise))
	for k := range out {
		from, to := max(0, k-2), min(len(out), k+3)
		for _, v := range q.noise[from:to] {
			out[k] += v / float64(to-from)
		}
	}
	q.noise = out
}

func (q *quieter) apply(x []float32) []float32 {
	out := make([]float64, len(x))
	frame := make([]float32, noiseFrame)
	z := make([]complex128, noiseFrame)
	for from := -noiseFrame + noiseHop; from < len(x); from += noiseHop {
		for i := range frame {
			frame[i] = 0
			if at := from + i; at >= 0 && at < len(x) {
				frame[i] = x[at]
			}
		}
		for k, v := range q.fft.Coefficients(frame, q.window) {
			power := real(v)*real(v) + imag(v)*imag(v)
			gain := 0.01
			if power > 10*q.noise[k] {
				gain = math.Sqrt(1 - q.noise[k]/power)
			}
			v *= complex(gain, 0)
			z[k] = v
			if k > 0 && k < noiseFrame/2 {
				z[noiseFrame-k] = complex(real(v), -imag(v))
			}
		}
		q.back.Backward(z)
		for i, v := range z {
			if at := from + i; at >= 0 && at < len(x) {
				out[at] += real(v) * q.window[i] / (1.5 * noiseFrame)
			}
		}
	}
	done := make([]float32, len(x))
	for i, v := range out {
		done[i] = float32(v)
	}
	return done
}

// times is the same of noise at another gain.
func (q *quieter) times(gain float64) *quieter {
	louder := *q
	louder.noise = make([]float64, len(q.noise))
	for k, v := range q.noise {
		louder.noise[k] = v * gain * gain
	}
	return &louder
}
