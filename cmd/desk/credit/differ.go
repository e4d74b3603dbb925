package credit

import (
	"math"
	"slices"

	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// The excitation that Different compares: channels every quarter Cam (146 of
// them), levels down to 40 dB under the highest (hearing.md 8(a)1).
const (
	excitationStep  = 0.25
	excitationRange = 40.0
	frame, hop      = 8192, 4096 // samples at 48 kHz: 171 ms, 85 ms
	listen          = 2.0        // seconds
	rate            = 48000.0
)

// An Ear compares sounds by their excitation patterns: rounded-exponential
// filters on the ERB scale (Glasberg and Moore 1990; Patterson et al. 1982). It
// knows nothing of how marks are made, so that marks can answer to it. It
// keeps buffers: one sound at a time.
type Ear struct {
	fft     *spectrum.Real
	window  []float64
	filters []filter
}

type filter struct {
	first  int
	weight []float64
}

// NewEar makes an ear.
func NewEar() *Ear {
	e := &Ear{fft: spectrum.NewReal(frame), window: spectrum.Hann.Samples(frame)}
	const spacing = rate / frame
	for _, c := range spectrum.Centres(2, 38.25, excitationStep) {
		reach := spectrum.RoexReach * spectrum.ERB(c)
		f := filter{first: max(1, int((c-reach)/spacing))}
		for k := f.first; k <= min(frame/2, int((c+reach)/spacing)+1); k++ {
			f.weight = append(f.weight, spectrum.Roex(float64(k)*spacing, c))
		}
		e.filters = append(e.filters, f)
	}
	return e
}

// A Pattern is the excitation of a sound: per channel the levels of its frames
// in rising order, so that where in its cycle a movement stands is gone.
type Pattern [][]float64

// Listen returns the pattern of the first two seconds of a sound, at a total
// power of 1; nil for silence.
func (e *Ear) Listen(s synth.Sound) Pattern {
	s.A.Phase, s.B.Phase, s.LFO.Phase = 0, 0, 0
	s.Seconds = math.Min(s.Seconds, listen)
	x := make([]float32, int(listen*rate))
	copy(x, synth.Render(s, rate))
	p := make(Pattern, len(e.filters))
	total := 0.0
	for at := 0; at+frame <= len(x); at += hop {
		bins := e.fft.Coefficients(x[at:at+frame], e.window)
		power := make([]float64, len(bins))
		for k, v := range bins {
			power[k] = real(v)*real(v) + imag(v)*imag(v)
		}
		for c, f := range e.filters {
			sum := 0.0
			for i, w := range f.weight {
				sum += w * power[f.first+i]
			}
			p[c] = append(p[c], sum)
			total += sum
		}
	}
	if total == 0 {
		return nil
	}
	highest := 0.0
	for _, levels := range p {
		highest = math.Max(highest, slices.Max(levels)/total)
	}
	floor := highest * spectrum.Power(-excitationRange)
	for _, levels := range p {
		slices.Sort(levels)
		for i, v := range levels {
			levels[i] = spectrum.PowerDB(math.Max(v/total, floor))
		}
	}
	return p
}

// Different is the root-mean-square difference of two patterns in dB over
// channels and frames. One decibel is the working unit of a just-noticeable
// difference (hearing.md 1.3). Known weakness: it hears how far a sound moves,
// not how fast nor in which order, and so never calls two sounds different
// that are not.
func Different(a, b Pattern) float64 {
	if a == nil || b == nil {
		if a == nil && b == nil {
			return 0
		}
		return math.Inf(1)
	}
	sum, n := 0.0, 0
	for c := range a {
		for i := range a[c] {
			d := a[c][i] - b[c][i]
			sum += d * d
			n++
		}
	}
	return math.Sqrt(sum / float64(n))
}
