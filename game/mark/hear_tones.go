package mark

import (
	"math"

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

// combinations are those that carry most of the power.
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

// accounts says whether a line at hz is a combination of a and b.
func (p product) accounts(hz, a, b float64) bool {
	multiple := func(x, of float64) bool { // of the carrier, 1 and up
		k := math.Round(x / of)
		return k >= 1 && near(hz, hz-x+k*of)
	}
	switch p {
	case ringed:
		return multiple(hz-b, a) || multiple(hz+b, a) || multiple(b-hz, a)
	case modulated:
		return multiple(hz, a) || multiple(hz-b, a) || multiple(hz+b, a) || multiple(b-hz, a)
	}
	const order = 14 // J15 of an index of 10 is still 0.005
	for _, x := range []float64{hz - a, hz + a} {
		if n := math.Round(x / b); math.Abs(n) <= order && near(hz, hz-x+n*b) {
			return true
		}
	}
	return false
}

// findTones looks for two frequencies that explain the lines of a sound.
func (a *analysis) findTones(note float64) (t tones) {
	t.lines = a.findLines()
	if len(t.lines) < 2 {
		return
	}
	var carriers []float64
	if note > 0 {
		for _, f := range []float64{1, 0.5, 2, 0.25, 4} {
			carriers = append(carriers, note*f)
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
			for _, b := range []float64{math.Abs(l.Hz - c), l.Hz + c, math.Abs(l.Hz-c) / 2, (l.Hz + c) / 2} {
				if b < 24 || b > 9*c { // slower is heard as beats or as a tremolo
					continue
				}
				for how := ringed; how < products; how++ {
					if how == modulated && math.Abs(b-c*math.Round(b/c)) < 21 {
						continue // a tremolo of all partials
					}
					s, share := explain(t.lines, how, c, b)
					if c == note {
						s += 0.1 // where it is written, unless the lines speak against it
					}
					if s > best {
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
	t.b = refine(t.lines, t.how, t.a, t.b)
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

// explain says how well a product accounts for the lines: share is the share of
// them that it accounts for, score is lower where lines that must be there are
// missing, pairs are unequal, or hardly any line lies beside the multiples of a
// (then a alone explains them).
func explain(lines []spectrum.Line, how product, a, b float64) (score, share float64) {
	const power = 0.6 // of the amplitude: faint lines count, but less
	var all, found, beside float64
	for _, l := range lines {
		w := math.Pow(l.Amplitude, power)
		all += w
		if how.accounts(l.Hz, a, b) {
			found += w
		}
		if k := math.Round(l.Hz / a); k < 1 || !near(l.Hz, k*a) {
			beside += w
		}
	}
	share = found / all
	if share < 0.5 || beside < 0.1*all {
		return 0, share
	}
	score = share - unequal(lines, how, a, b)
	switch carrier := lineAt(lines, a); {
	case how == ringed && carrier > 0.03, how == modulated && carrier < 0.1:
		score -= 0.3
	case how == modulated && lineAt(lines, a+2*b) > 0.03:
		score -= 0.1 // a second pair speaks for frequency modulation
	case how == modulated:
		score -= 0.02
	case how == spread:
		score -= 0.05
	}
	return score, share
}

// unequal is how far the pairs k·a ± b, or a ± n·b, are from being equally
// strong: 0 to 0.5. Pairs of which one line is too low to be measured do not
// count.
func unequal(lines []spectrum.Line, how product, a, b float64) float64 {
	var sum, weight float64
	for k := 1.0; k <= 4; k++ {
		up, down := k*a+b, math.Abs(k*a-b)
		if how == spread {
			up, down = a+k*b, math.Abs(a-k*b)
		}
		if down < 20 {
			continue
		}
		u, d := lineAt(lines, up), lineAt(lines, down)
		if u+d == 0 && k == 1 {
			return 0.3 // the first pair must be there
		}
		if u+d == 0 {
			continue
		}
		w := math.Max(0.05, math.Max(u, d))
		e := 0.5
		if u > 0 && d > 0 {
			e = math.Min(0.3, 0.01*math.Abs(20*math.Log10(u/d)))
		}
		sum += w * e
		weight += w
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}

// refine takes b from the lines nearest to where it puts them, weighted with
// their amplitudes.
func refine(lines []spectrum.Line, how product, a, b float64) float64 {
	var sum, weight float64
	for _, l := range lines {
		for k := 1.0; k <= 3; k++ {
			c := k * a
			if how == spread && k > 1 {
				break
			}
			for _, guess := range []float64{l.Hz - c, c - l.Hz, c + l.Hz} {
				if math.Abs(guess-b) < 1.2+0.001*l.Hz {
					sum += l.Amplitude * guess
					weight += l.Amplitude
				}
			}
		}
	}
	if weight == 0 {
		return b
	}
	return sum / weight
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
	for f := 0.2 * t.a; f < 9*t.a; f *= 1.0007 {
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
