package mark

import (
	"math"

	"partialcredit/game/words"
)

// compareTones speaks of sums and differences of two frequencies. It asks for
// which second frequency the lines of the target would become those of yours,
// and, where that does not fit, the other way round.
func compareTones(t, y *heard) (f []finding) {
	for _, h := range []*heard{t, y} {
		if h.shape.ok && resets(h.shape.family) {
			return // a peak that moves spreads the lines
		}
	}
	const agrees = 0.6
	a, b, how := 0.0, 0.0, noProduct
	both := t.tones.ok && y.tones.ok && !t.pitched() && !y.pitched() && t.tones.how == y.tones.how && near(t.tones.a, y.tones.a)
	if both && math.Abs(math.Log(y.tones.b/t.tones.b)) < 0.05 {
		a, b, how = t.tones.b, y.tones.b, t.tones.how
	}
	if how == noProduct && t.tones.ok && !t.pitched() {
		if v, score := t.tones.moved(y.lines()); score > agrees {
			a, b, how = t.tones.b, v, t.tones.how
		}
	}
	if how == noProduct && y.tones.ok && !y.pitched() {
		if v, score := y.tones.moved(t.lines()); score > agrees {
			a, b, how = v, y.tones.b, y.tones.how
		}
	}
	if how == noProduct && both {
		a, b, how = t.tones.b, y.tones.b, t.tones.how
	}
	if d := compareDepth(t, y, a, b); d != nil {
		f = append(f, *d)
	}
	if how != noProduct {
		ys, ts := two(b, a)
		way := more(b, a, "higher", "lower")
		text := words.Say("The sums and differences in yours lie %s Hz either side, the target's %s Hz: its ratio is %s.", ys, ts, way)
		switch how {
		case modulated:
			text = words.Say("The sidebands of yours stand %s Hz from the carrier, the target's %s Hz: its ratio is %s.", ys, ts, way)
		case spread:
			text = words.Say("The lines of yours stand %s Hz apart, the target's %s Hz: its ratio is %s.", ys, ts, way)
		}
		f = append(f, finding{aboutTones, Reason{text, math.Abs(math.Log(b/a)) / 0.004}})
	}
	if t.tones.ok && y.tones.ok && !t.pitched() && !y.pitched() && near(t.tones.a, y.tones.a) && near(t.tones.b, y.tones.b) {
		p, q := t.tones, y.tones
		switch {
		case p.how == ringed && q.how == modulated:
			f = append(f, finding{aboutSidebands, Reason{words.Say("The carrier of yours can be heard; the target has only the sums and differences."), 15}})
		case p.how == modulated && q.how == ringed:
			f = append(f, finding{aboutSidebands, Reason{words.Say("The carrier of the target can be heard; yours has only the sums and differences."), 15}})
		case p.how == spread && q.how == spread && !(t.paired() && y.paired()):
			ys, ts := two(math.Sqrt2*q.breadth, math.Sqrt2*p.breadth)
			f = append(f, finding{aboutSidebands, Reason{words.Say("The sidebands of yours spread %s, as with an index of %s on the whole; the target's as with %s.",
				more(q.breadth, p.breadth, "further", "less far"), ys, ts), math.Abs(p.breadth-q.breadth) * math.Sqrt2 / (0.15 + 0.02*p.breadth)}})
		}
	}
	return
}

// paired says whether a carrier with one pair of sidebands explains the lines.
func (h *heard) paired() bool {
	t := h.tones
	return t.ok && (t.how == modulated || t.how == spread && lineAt(t.lines, t.a) > 0.5 && lineAt(t.lines, t.a+2*t.b) < 0.03)
}

// compareDepth speaks of the sidebands of amplitude modulation: m = 2·sideband/
// carrier (sound.md 1.3). Of a sound that has no sidebands the depth is 0. a and
// b are the modulating frequencies where they are known.
//
// Frequency modulation with a small index has one pair of sidebands too, and
// where it cannot be followed in time it is told from amplitude modulation by
// nobody: the sentence is the same. Where the brightness falls nothing is said:
// how far it falls says it better.
func compareDepth(t, y *heard, a, b float64) *finding {
	if t.sweep.ok || y.sweep.ok {
		return nil
	}
	known := t.tones
	if !t.paired() || t.pitched() {
		known = y.tones
		if !y.paired() || y.pitched() {
			return nil
		}
	}
	if t.tones.how == spread && y.tones.how == spread && !(t.paired() && y.paired()) {
		return nil // how far they spread says it better
	}
	if a == 0 {
		a, b = known.b, known.b
	}
	depth := func(h *heard, b float64) float64 {
		carrier := lineAt(h.lines(), known.a)
		if carrier == 0 {
			return math.NaN()
		}
		// A difference that is too low to be measured is left out.
		up, down := lineAt(h.lines(), known.a+b), lineAt(h.lines(), math.Abs(known.a-b))
		if math.Abs(known.a-b) < 20 {
			down = up
		}
		return math.Min(1, (up+down)/carrier)
	}
	da, db := depth(t, a), depth(y, b)
	return &finding{aboutSidebands, Reason{words.Say("The sidebands of yours are %s: a depth of %d %% against %d %%.",
		more(db, da, "stronger", "weaker"), percent(db), percent(da)), math.Abs(da-db) / math.Max(0.05, 0.12*(da+db)/2)}}
}
