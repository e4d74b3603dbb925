package mark

import (
	"math"
	"slices"

	"partialcredit/synth/spectrum"
)

// tones are the lines of the sound, and how two frequencies explain them.
type tones struct {
	lines []spectrum.Line // the strongest, by frequency, amplitude re the strongest

	how     product
	a, b    float64 // Hz: the carrier, and what it is moved or multiplied by
	share   float64 // share of the lines explained, 0..1
	carrier float64 // amplitude of the line a re the strongest
	pair    float64 // mean amplitude of the lines a±b re the strongest
	breadth float64 // rms distance of the lines from a, in units of b
	ok      bool
}

// product is a way in which two frequencies make sums and differences.
type product int

const (
	noProduct product = iota
	ringed            // k·a ± b, the carriers k·a missing
	modulated         // k·a and k·a ± b
	spread            // a ± n·b
	products
)

// combination is the line |k·a + l·b|.
type combination struct{ k, l int }

var combinations = func() (t [products][]combination) {
	for k := 1; k <= 9; k++ {
		t[ringed] = append(t[ringed], combination{k, 1}, combination{k, -1})
		t[modulated] = append(t[modulated], combination{k, 0}, combination{k, 1}, combination{k, -1})
	}
	for n := -9; n <= 9; n++ {
		t[spread] = append(t[spread], combination{1, n})
	}
	return
}()

func (t combination) hz(a, b float64) float64 { return math.Abs(float64(t.k)*a + float64(t.l)*b) }

// lines are those of the sound, found when they are first asked for.
func (h *heard) lines() []spectrum.Line {
	if h.tones.lines == nil {
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
	X := spectrum.NewReal(n).Coefficients(x, w.Samples(len(x)))
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

// findTones looks for two frequencies that explain the lines of a sound.
func (a *analysis) findTones(near float64) (t tones) {
	t.lines = a.findLines()
	if len(t.lines) < 2 {
		return
	}
	var carriers []float64
	if near > 0 {
		for _, f := range []float64{0.25, 0.5, 1, 2, 4} {
			carriers = append(carriers, near*f)
		}
	} else {
		loud := loudest(t.lines, 6)
		for i, l := range loud {
			carriers = append(carriers, l.Hz)
			for _, k := range loud[:i] {
				carriers = append(carriers, (l.Hz+k.Hz)/2, math.Abs(l.Hz-k.Hz)/2)
			}
		}
	}
	best := 0.0
	for _, c := range carriers {
		for _, l := range loudest(t.lines, 6) {
			for _, b := range []float64{math.Abs(l.Hz - c), l.Hz + c} {
				if b < 12 || b > 9*c {
					continue
				}
				for how := ringed; how < products; how++ {
					if s, share := explain(t.lines, how, c, b); s > best {
						best = s
						t.how, t.a, t.b, t.share = how, c, b, share
					}
				}
			}
		}
	}
	if t.how == noProduct {
		return
	}
	t.ok = t.share > 0.9 && best > 0.75
	t.carrier = lineAt(t.lines, t.a)
	t.pair = (lineAt(t.lines, t.a+t.b) + lineAt(t.lines, math.Abs(t.a-t.b))) / 2
	var sum, power float64
	for _, l := range t.lines {
		p := l.Amplitude * l.Amplitude
		sum += p * (l.Hz - t.a) * (l.Hz - t.a)
		power += p
	}
	t.breadth = math.Sqrt(sum/power) / t.b
	return
}

// explain says how well the combinations of a product account for the lines; score is
// lower where lines that must be there are missing or pairs are unequal.
func explain(lines []spectrum.Line, how product, a, b float64) (score, share float64) {
	const power = 0.6 // of the amplitude: faint lines count, but less
	var all, found float64
	for _, l := range lines {
		w := math.Pow(l.Amplitude, power)
		all += w
		for _, t := range combinations[how] {
			if near(l.Hz, t.hz(a, b)) {
				found += w
				break
			}
		}
	}
	share = found / all
	if share < 0.5 {
		return 0, share
	}
	up, down := lineAt(lines, a+b), lineAt(lines, math.Abs(a-b))
	carrier := lineAt(lines, a)
	score = share
	if up == 0 || down == 0 {
		score -= 0.3
	} else {
		score -= math.Min(0.3, 0.01*math.Abs(20*math.Log10(up/down)))
	}
	switch how {
	case ringed:
		if carrier > 0.03 {
			score -= 0.3
		}
	case modulated:
		if carrier < 0.1 {
			score -= 0.3
		}
		score -= 0.02
	case spread:
		score -= 0.05
	}
	return score, share
}

// near says whether two frequencies are the same line: within 0.4 %, or 1.5 Hz.
func near(a, b float64) bool { return math.Abs(a-b) < math.Max(1.5, 0.004*b) }

// lineAt is the amplitude of the line at hz, 0 where there is none.
func lineAt(lines []spectrum.Line, hz float64) float64 {
	sum := 0.0
	for _, l := range lines {
		if near(l.Hz, hz) {
			sum += l.Amplitude * l.Amplitude
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

// moved looks for the frequency b for which the lines of another sound, made of
// the same a, lie where the lines of t would lie: their levels are taken over.
// score is the share of amplitude that agrees, times the share of the other
// sound's lines that are accounted for.
func (t tones) moved(lines []spectrum.Line) (b, score float64) {
	if s, _ := explain(lines, t.how, t.a, t.b); s > 0.85 {
		return t.b, s // it has not moved, whatever the levels do
	}
	type part struct {
		combination
		amplitude float64
	}
	var parts []part
	for _, m := range combinations[t.how] {
		if m.l == 0 {
			continue // the carriers do not move
		}
		if v := lineAt(t.lines, m.hz(t.a, t.b)); v > 0.02 {
			parts = append(parts, part{m, v})
		}
	}
	at := func(b float64) float64 {
		var agree, all float64
		for _, p := range parts {
			hz := p.hz(t.a, b)
			if hz < 15 {
				continue
			}
			agree += math.Min(lineAt(lines, hz), p.amplitude)
			all += p.amplitude
		}
		return agree / all
	}
	for f := 0.2 * t.a; f < 9*t.a; f *= 1.001 {
		s := at(f)
		if s <= score {
			continue
		}
		if _, known := explain(lines, t.how, t.a, f); s*known > score {
			score, b = s*known, f
		}
	}
	return
}
