package mark

import (
	"math"
	"sync"

	"partialcredit/synth/spectrum"
)

// A Line is a line of a spectrum, for drawing.
type Line struct {
	Number int     // of the partial, 1 and up; 0 where it is none
	Hz     float64 // its frequency
	DB     float64 // its level re the strongest line
}

const (
	// lineRange is how far under the strongest line, in dB, others are looked
	// for: above the side lobes of Blackman-Harris at 92 dB, below what is seen
	// or heard (design choice).
	lineRange = 72.0
	// strayed is how far from its place, in spacings of the partials, a line is
	// still the numbered partial, and sway how far in proportion to its
	// frequency: the reach of detune and of vibrato in use, and short of what is
	// inharmonic by intent (design choices).
	strayed = 0.12
	sway    = 0.045
)

// lineScratch is what Partials works in, one for each length in use.
type lineScratch struct {
	fft    *spectrum.Real
	window []float64
	peaks  []spectrum.Line
}

var lineScratches sync.Map // of *sync.Pool, by length

// Partials finds the lines of a short stretch of sound at rate, lowest first,
// and numbers those that lie near a multiple of f0 (Hz; 0 where there is no
// fundamental): of several near one, as vibrato makes them, the strongest. With 8192 samples at 48 kHz, lines 47 Hz apart stand alone.
// Silence has none. It allocates only what it returns.
func Partials(samples []float32, rate, f0 float64) []Line {
	n := len(samples)
	if n < 16 {
		return nil
	}
	entry, ok := lineScratches.Load(n)
	if !ok {
		entry, _ = lineScratches.LoadOrStore(n, &sync.Pool{New: func() any {
			return &lineScratch{fft: spectrum.NewReal(n), window: spectrum.BlackmanHarris.Samples(n)}
		}})
	}
	pool := entry.(*sync.Pool)
	s := pool.Get().(*lineScratch)
	defer pool.Put(s)
	const audible = 1e-5 // -100 dB re full scale
	x := s.fft.Coefficients(samples, s.window)
	s.peaks = spectrum.Peaks(s.peaks[:0], x, n, rate, spectrum.BlackmanHarris, audible)
	strongest := 0.0
	for _, p := range s.peaks {
		strongest = math.Max(strongest, p.Amplitude)
	}
	var lines []Line
	for _, p := range s.peaks {
		if p.Amplitude < strongest*spectrum.Amplitude(-lineRange) {
			continue
		}
		if lines == nil {
			lines = make([]Line, 0, len(s.peaks))
		}
		l := Line{Number: numbered(p.Hz, f0, sway), Hz: p.Hz, DB: spectrum.DB(p.Amplitude / strongest)}
		if last := len(lines) - 1; l.Number > 0 && last >= 0 && lines[last].Number == l.Number {
			if l.DB > lines[last].DB {
				lines[last] = l
			}
			continue
		}
		lines = append(lines, l)
	}
	return lines
}

// numbered is the number of the partial of f0 that lies at hz, or 0.
func numbered(hz, f0, sway float64) int {
	if f0 <= 0 {
		return 0
	}
	n := math.Round(hz / f0)
	if n < 1 || math.Abs(hz/f0-n) > max(strayed, sway*n) {
		return 0
	}
	return int(n)
}
