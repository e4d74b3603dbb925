package mark

import (
	"math"
	"slices"

	"partialcredit/synth/spectrum"
)

// lines are those of the sound, found when they are first asked for.
func (h *heard) lines() []spectrum.Line {
	if h.tones.lines == nil {
		b := workbenches.Get().(*workbench)
		defer workbenches.Put(b)
		h.sound.kit = &b.kit
		h.tones.lines = h.sound.findLines()
	}
	return h.tones.lines
}

// findLines takes the lines of the middle of the sound, up to two seconds, down
// to -45 dB, at most 40.
func (a *analysis) findLines() []spectrum.Line {
	x := a.x[a.start:a.end]
	cut := min(int(0.03*a.rate), len(x)/8)
	x = x[cut : len(x)-cut]
	if most := int(2 * a.rate); len(x) > most {
		x = x[:most]
	}
	n := spectrum.FastLength(len(x))
	w := spectrum.BlackmanHarris
	X := a.kit.Real(n).Coefficients(x, w.Samples(len(x)))
	lines := spectrum.Peaks(nil, X, n, a.rate, w, 1e-7)
	if len(lines) == 0 {
		return nil
	}
	slices.SortFunc(lines, func(p, q spectrum.Line) int {
		if p.Amplitude > q.Amplitude {
			return -1
		}
		return 1
	})
	top := lines[0].Amplitude
	kept := lines[:0]
	for _, l := range lines {
		if l.Amplitude < top*0.0056 || len(kept) == 40 {
			break
		}
		if l.Hz < 15 || l.Hz > 16000 {
			continue
		}
		l.Amplitude /= top
		kept = append(kept, l)
	}
	slices.SortFunc(kept, func(p, q spectrum.Line) int {
		if p.Hz < q.Hz {
			return -1
		}
		return 1
	})
	return kept
}

// near says whether two frequencies are the same line: within 1.2 Hz and 0.1 %
// (the lines are measured to 0.1 Hz; the rest is for a note that is out of tune
// by two cents).
func near(a, b float64) bool { return math.Abs(a-b) < 1.2+0.001*b }

// lineAt is the amplitude of the line at hz, 0 where there is none. The lines
// are in order of their frequencies.
func lineAt(lines []spectrum.Line, hz float64) float64 {
	sum := 0.0
	for _, l := range lines {
		if near(l.Hz, hz) {
			sum += l.Amplitude * l.Amplitude
		} else if l.Hz > hz {
			break
		}
	}
	return math.Sqrt(sum)
}

func loudest(lines []spectrum.Line, n int) []spectrum.Line {
	s := slices.Clone(lines)
	slices.SortFunc(s, func(p, q spectrum.Line) int {
		if p.Amplitude > q.Amplitude {
			return -1
		}
		return 1
	})
	return s[:min(n, len(s))]
}

// harmonic says whether the lines are multiples of a pitch, and enough of its
// multiples are there (see partials.filled).
func harmonic(lines []spectrum.Line, hz float64) bool {
	var all, found float64
	there, last := map[int]bool{}, 0
	for _, l := range lines {
		w := faintCounts.of(l.Amplitude)
		all += w
		if k := math.Round(l.Hz / hz); k >= 1 && near(l.Hz, k*hz) {
			found += w
			there[int(k)] = true
			if l.Amplitude > 0.03 {
				last = max(last, min(20, int(k)))
			}
		}
	}
	n := 0
	for k := range there {
		if k <= last {
			n++
		}
	}
	return found > 0.97*all && (float64(n) >= 0.45*float64(last) || lineAt(lines, hz) > 0.25)
}
