package mark

import (
	"math"
	"math/cmplx"
	"slices"

	"partialcredit/synth/spectrum"
)

// frames hold the levels of the partials over time. For a sound without one
// pitch they hold only the level and the brightness.
type frames struct {
	hop    float64     // seconds
	span   float64     // length of the window in seconds
	offset float64     // what the pitch track is short of, in Hz
	first  float64     // time of the middle of the first frame
	power  [][]float64 // per frame, power of partials 1.. at [0].. (nil without a pitch)
	total  []float64   // per frame, power of everything
	own    []float64   // per frame, power of all partials
	cam    []float64   // per frame, brightness in Cam
}

// frames cuts the sound into Hann windows. Where there is a pitch the sound is
// first brought to a constant pitch: y[m] = x(t) with t such that φ(t) = m/per,
// φ the phase of the pitch track and per the samples per period; windows are a
// whole number of periods, so that a partial does not leak into its
// neighbours, glides and vibrato included. Interpolation is by cubics (the
// error grows above a fifth of the sample rate; both sounds of a comparison
// suffer it alike).
func (a *analysis) frames(t *track, h *heard) *frames {
	if !h.pitch.ok {
		return a.plainFrames()
	}
	x := a.x[a.start:a.end]
	base := t.base
	per := spectrum.FastLength(int(math.Ceil(a.rate / base)))
	periods := max(2, int(math.Ceil(0.018*base)))
	w := warp(x, a.rate, t, per)
	y := w.y
	n := per * periods
	// Frames lie a quarter of a window apart, but never nearer than 8 ms.
	f := &frames{span: float64(periods) / base}
	f.hop = math.Max(0.008, f.span/4)
	if len(y) < n {
		return f
	}
	window := a.kit.Hann(n)
	fft := a.kit.Real(n)
	scale := 2 / (float64(n) * spectrum.Hann.Gain())
	count := min(n/2/periods-1, int(16000/base))
	count = max(1, count)
	// Times are even only while the pitch stands: frames are taken at even
	// times, not at even phases.
	next := w.when(n / 2)
	f.first = next
	var last, turned [8]complex128
	for m := 0; m+n <= len(y); {
		X := fft.Coefficients(y[m:m+n], window)
		p := make([]float64, count)
		own := 0.0
		for k := 1; k <= count; k++ {
			c := X[k*periods]
			p[k-1] = (real(c)*real(c) + imag(c)*imag(c)) * scale * scale / 2
			own += p[k-1]
			if k <= len(last) {
				// The phase against that of the track.
				c *= cmplx.Rect(1, -2*math.Pi*float64(k*(m%per))/float64(per))
				turned[k-1] += c * cmplx.Conj(last[k-1])
				last[k-1] = c
			}
		}
		f.power = append(f.power, p)
		f.own = append(f.own, own)
		f.add(X, n, t.at(w.when(m+n/2))/float64(periods))
		next += f.hop
		for m+n <= len(y) && w.when(m+n/2) < next {
			m++
		}
	}
	// The partials turn against the track where its pitch is a little off: all
	// agree on by how much, the higher ones more exactly.
	var sum, weight float64
	for k, z := range turned {
		w := cmplx.Abs(z) * float64((k+1)*(k+1))
		sum += w * cmplx.Phase(z) / (2 * math.Pi * float64(k+1) * f.hop)
		weight += w
	}
	if weight > 0 {
		f.offset = sum / weight
	}
	return f
}

// camEdges are the frequencies in hertz of whole Cams.
var camEdges = spectrum.Centres(0, 40, 1)

// add appends the level and the brightness of a Hann-windowed transform of n
// samples with the given spacing of bins in hertz.
func (f *frames) add(X []complex128, n int, spacing float64) {
	var bands [40]float64
	sum, k := 0.0, 1
	for b := range bands {
		p := 0.0
		for end := min(len(X), int(math.Ceil(camEdges[b+1]/spacing))); k < end; k++ {
			p += real(X[k])*real(X[k]) + imag(X[k])*imag(X[k])
		}
		bands[b] = p
		sum += p
	}
	f.total = append(f.total, sum*2/(float64(n)*float64(n)*0.375))
	f.cam = append(f.cam, centroid(bands[:]))
}

// plainFrames are frames of 40 ms.
func (a *analysis) plainFrames() *frames {
	x := a.x[a.start:a.end]
	n := spectrum.FastLength(int(0.04 * a.rate))
	f := &frames{hop: float64(n) / 2 / a.rate, span: float64(n) / a.rate, first: float64(n) / 2 / a.rate}
	window := a.kit.Hann(n)
	fft := a.kit.Real(n)
	for from := 0; from+n <= len(x); from += n / 2 {
		f.add(fft.Coefficients(x[from:from+n], window), n, a.rate/float64(n))
	}
	return f
}

// centroid is the mean place in Cam of power in bands 1 Cam wide, each weighted
// with its power to 0.3 (about its loudness; Stevens' power law), bands more
// than 50 dB under the strongest left out.
func centroid(bands []float64) float64 {
	top := 0.0
	for _, p := range bands {
		top = math.Max(top, p)
	}
	var sum, weight float64
	for b, p := range bands {
		if p > top*1e-5 {
			w := onPower.of(p / top)
			sum += w * (float64(b) + 0.5)
			weight += w
		}
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}

// A warped sound has the same number of samples in every period.
type warped struct {
	y        []float32
	at, step []float64 // in seconds, of the first sample of every stretch, and between its samples
}

// stretch is the number of samples for which the pitch is taken to stand.
const stretch = 16

// when is the time in seconds of a sample.
func (w *warped) when(i int) float64 {
	return w.at[i/stretch] + float64(i%stretch)*w.step[i/stretch]
}

// warp resamples x so that every period of the track has per samples, with
// cubics of Catmull and Rom.
func warp(x []float32, rate float64, t *track, per int) *warped {
	size := int(float64(len(x))/rate*t.base*float64(per)*1.1) + per
	w := &warped{y: make([]float32, 0, size), at: make([]float64, 0, size/stretch), step: make([]float64, 0, size/stretch)}
	for at := 0.0; int(at)+2 < len(x); {
		step := rate / (t.at(at/rate) * float64(per))
		w.at, w.step = append(w.at, at/rate), append(w.step, step/rate)
		w.y = slices.Grow(w.y, stretch)
		y := w.y[len(w.y) : len(w.y)+stretch]
		for n := range y {
			i := int(at)
			if i+2 >= len(x) {
				y = y[:n]
				break
			}
			var b float32
			if i > 0 {
				b = x[i-1]
			}
			f, v := float32(at-float64(i)), x[i:][:3]
			c, d, e := v[0], v[1], v[2]
			y[n] = c + 0.5*f*(d-b+f*(2*b-5*c+4*d-e+f*(3*(c-d)+e-b)))
			at += step
		}
		w.y = w.y[:len(w.y)+len(y)]
	}
	return w
}

// steady returns the frames between the attack and the release.
func (f *frames) steady() (from, to int) {
	n := len(f.total)
	from, to = int(math.Ceil(0.03/f.hop)), n-int(math.Ceil(0.06/f.hop))
	if to-from < 4 {
		return 0, n
	}
	return
}

// brightness is the mean brightness in Cam, weighted with the level to 0.3.
func (f *frames) brightness() float64 {
	var sum, weight float64
	for i, p := range f.total {
		w := onPower.of(p)
		sum += w * f.cam[i]
		weight += w
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}
