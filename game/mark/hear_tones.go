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
