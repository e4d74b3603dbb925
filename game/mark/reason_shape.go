package mark

import (
	"math"

	"partialcredit/game/words"
)

func compareShape(t, y *heard) (f []finding) {
	a, b := t.shape, y.shape
	if d := compareWhole(t, y); d != nil {
		return []finding{*d}
	}
	if !t.pitched() || !y.pitched() {
		return
	}
	if r := restarts(t, y); r > 0 {
		b = shape{family: a.family, value: r, low: r, high: r, ok: true}
	} else if r := restarts(y, t); r > 0 {
		a = shape{family: b.family, value: r, low: r, high: r, ok: true}
	}
	if g := compareOctaves(t, y); g != nil {
		f = append(f, *g)
	}
	if !a.ok || !b.ok || a.family == unknownShape || b.family == unknownShape {
		return
	}
	// A sine is frequency modulation with an index of nothing, a sawtooth one
	// that is not restarted.
	if modulates(a.family) && b.family == sine {
		b.family = a.family
	}
	if modulates(b.family) && a.family == sine {
		a.family = b.family
	}
	if resets(a.family) && plainOf(a.family) == b.family {
		b.family, b.value, b.low, b.high = a.family, 1, 1, 1
	}
	if resets(b.family) && plainOf(b.family) == a.family {
		a.family, a.value, a.low, a.high = b.family, 1, 1, 1
	}
	if modulates(a.family) && modulates(b.family) && drifts(t, y) {
		return f // what moves looks now like one, now like the other
	}
	if a.family != b.family {
		return append(f, finding{aboutShape, Reason{words.Say("Yours has %s; the target has %s.", b.describe(), a.describe()), 12 + unlike(t.partial, y.partial)}})
	}
	if a.fall.ok != b.fall.ok && (restarts(t, y) > 0 || restarts(y, t) > 0) {
		return // the fall of the other could not be followed
	}
	switch a.family {
	case pulse:
		if t.motion.kind == still && y.motion.kind == still {
			step := 0.04 * (a.value + b.value) / 2
			f = append(f, finding{aboutShape, Reason{compareDuty(a.value, b.value), math.Abs(a.value-b.value) / step}})
		}
	case synced, syncedT, syncedS, syncedP:
		f = append(f, compareSync(a, b, t, y)...)
	case indexed, indexed2, indexed3, indexedHalf:
		f = append(f, compareIndex(a, b)...)
	}
	return
}

func resets(f family) bool { return f >= synced && f <= syncedP }

func plainOf(f family) family {
	return map[family]family{synced: sawtooth, syncedT: triangle, syncedS: sine, syncedP: pulse}[f]
}

// restarts is the ratio for which a plain sound of n times the pitch of a
// synced one is the same voice, its slave running a whole number of times as
// fast: then nothing is cut short, and the pitch jumps to the slave's. 0 where
// that does not explain it.
func restarts(synced, plain *heard) float64 {
	if !synced.shape.ok || !resets(synced.shape.family) || plain.shape.ok && plainOf(synced.shape.family) != plain.shape.family {
		return 0
	}
	ratio := plain.pitch.hz / synced.pitch.hz
	if !plain.shape.ok && math.Abs(ratio-synced.shape.value) > 1.2 {
		return 0
	}
	if n := math.Round(ratio); n >= 2 && math.Abs(ratio/n-1) < 0.01 {
		return ratio
	}
	return 0
}

// compareWhole speaks of a peak that comes to rest on a whole partial in one
// sound: the pitch is then the slave's (see restarts), and the fall towards it
// cannot be followed.
func compareWhole(t, y *heard) *finding {
	if r := restarts(t, y); r > 0 && t.shape.fall.ok && math.Abs(math.Log(r/t.shape.fall.to)) > syncStep {
		to := t.shape.fall.to
		return &finding{aboutShape, Reason{words.Say("The peak of yours comes to rest on partial %s, the target's near %s: its sync ratio is %s.",
			number(math.Round(r)), number(to), more(r, to, "higher", "lower")), 6 + math.Abs(math.Log(r/to))/syncStep}}
	}
	if r := restarts(y, t); r > 0 && y.shape.fall.ok && math.Abs(math.Log(r/y.shape.fall.to)) > syncStep {
		to := y.shape.fall.to
		return &finding{aboutShape, Reason{words.Say("The peak of the target comes to rest on partial %s, that of yours near %s: its sync ratio is %s.",
			number(math.Round(r)), number(to), more(to, r, "higher", "lower")), 6 + math.Abs(math.Log(r/to))/syncStep}}
	}
	return nil
}

// describe says what can be seen of a shape in its partials.
func (s shape) describe() words.Message {
	switch s.family {
	case sine:
		return words.Say("only its first partial: a sine")
	case triangle:
		return words.Say("odd partials that fall by 12 dB an octave: a triangle")
	case sawtooth:
		return words.Say("every partial, falling by 6 dB an octave: a sawtooth")
	case pulse:
		if n := missing(s.value); n == 2 {
			return words.Say("odd partials only, falling by 6 dB an octave: a pulse of half duty")
		} else if n > 0 {
			return words.Say("every %s partial missing: a pulse of 1/%d duty", ordinals[n], n)
		}
		return words.Say("partials that come and go: a pulse of about %d %% duty", percent(s.value))
	case indexed, indexed2, indexed3, indexedHalf:
		return words.Say("partials like those of frequency modulation with an index of %s", number(s.value))
	}
	return words.Say("its strongest partials near number %s: hard sync", number(s.value))
}

// missing is the n of the partials that are missing from a pulse, where its
// duty is near 1/n; 0 elsewhere. Within 2 % of the duty the nth partial is 30
// dB and more under its neighbours.
func missing(duty float64) int {
	n := math.Round(1 / duty)
	if n >= 2 && n <= 10 && math.Abs(duty*n-1) < 0.02 {
		return int(n)
	}
	return 0
}

var dutyNames = []words.Message{2: words.Say("a half duty"), 3: words.Say("a third duty"), 4: words.Say("a quarter duty"), 5: words.Say("a fifth duty"),
	6: words.Say("a sixth duty"), 7: words.Say("a seventh duty"), 8: words.Say("an eighth duty"), 9: words.Say("a ninth duty"), 10: words.Say("a tenth duty")}

func compareDuty(target, yours float64) words.Message {
	t, y := missing(target), missing(yours)
	way := more(yours, target, "wider", "narrower")
	ys, ts := two(100*yours, 100*target)
	switch {
	case t > 0 && y > 0 && t != y:
		return words.Say("Every %s partial is missing from the target: %s; yours misses every %s: its pulse is %s.", ordinals[t], dutyNames[t], ordinals[y], way)
	case t > 0:
		return words.Say("Every %s partial is missing from the target: %s; the pulse of yours is %s, near %s %%.", ordinals[t], dutyNames[t], way, ys)
	case y > 0:
		return words.Say("Every %s partial is missing from yours: %s; its pulse is %s than the target's, near %s %%.", ordinals[y], dutyNames[y], way, ts)
	}
	return words.Say("The pulse of yours is %s: a duty near %s %% against %s %%.", way, ys, ts)
}

const syncStep = 0.023 // of the ratio (hearing.md 1.3, computed)

func compareSync(a, b shape, t, y *heard) (f []finding) {
	const step = syncStep
	if a.fall.ok || b.fall.ok {
		fa, fb := a.fall, b.fall
		switch {
		case !fb.ok:
			return []finding{{aboutShape, Reason{words.Say("The peak of the target falls from partial %s to %s, in yours it is there from the start: it starts too low or falls too fast.",
				number(fa.from), number(fa.to)), 4 + math.Abs(12*math.Log2(fa.from/fa.to))/2}}}
		case !fa.ok:
			return []finding{{aboutShape, Reason{words.Say("The peak of yours falls from partial %s to %s, in the target it is there from the start: yours starts too high or falls too slowly.",
				number(fb.from), number(fb.to)), 4 + math.Abs(12*math.Log2(fb.from/fb.to))/2}}}
		}
		ys, ts := two(fb.from, fa.from)
		verb := more(fa.from+fb.from, fa.to+fb.to, "falls", "rises")
		semis := 12 * math.Log2(fb.from/fa.from)
		f = append(f, finding{aboutShape, Reason{words.Say("The peak of yours %s from partial %s, the target's from partial %s: it starts too %s.", verb, ys, ts,
			more(fb.from, fa.from, "high", "low")), math.Abs(semis) / 2}})
		ys, ts = two(fb.to, fa.to)
		// Where it comes to rest is heard when it gets there, or where both are as slow.
		if settled := 0.4; fa.seconds < settled*t.seconds && fb.seconds < settled*y.seconds || math.Abs(math.Log(fb.seconds/fa.seconds)) < 0.2 {
			f = append(f, finding{aboutShape, Reason{words.Say("The peak of yours comes to rest near partial %s, the target's near %s: its sync ratio is %s.", ys, ts,
				more(fb.to, fa.to, "higher", "lower")), math.Abs(math.Log(fb.to/fa.to)) / step}})
		}
		if fa.seconds > 0 && fb.seconds > 0 {
			f = append(f, finding{aboutShape, Reason{words.Say("The peak of yours %s %s: its time is %s, the target's %s.", verb,
				more(fb.seconds, fa.seconds, "more slowly", "faster"), duration(fb.seconds), duration(fa.seconds)),
				math.Abs(math.Log(fb.seconds/fa.seconds)) / math.Log(1.15)}})
		}
		return
	}
	// A little above and a little below a whole ratio what is cut short is alike,
	// but for a sawtooth that is surely one.
	if n := math.Round(a.value); (a.family != synced || math.Max(a.left, b.left) > 0.7) && n >= 2 && math.Abs(a.value-n) < 0.12 && math.Abs(b.value-n) < 0.12 {
		return nil
	}
	ys, ts := two(b.value, a.value)
	return []finding{{aboutShape, Reason{words.Say("The peak of yours lies near partial %s, the target's near %s: its sync ratio is %s.", ys, ts,
		more(b.value, a.value, "higher", "lower")), math.Abs(math.Log(b.value/a.value)) / step}}}
}

func compareIndex(a, b shape) (f []finding) {
	if a.fall.ok && b.fall.ok {
		ys, ts := two(b.fall.from, a.fall.from)
		return []finding{
			{aboutShape, Reason{words.Say("Yours stays bright %s: its index falls within %s, the target's within %s.",
				more(b.fall.seconds, a.fall.seconds, "longer", "less long"), duration(b.fall.seconds), duration(a.fall.seconds)),
				math.Abs(math.Log(b.fall.seconds/a.fall.seconds)) / math.Log(1.15)}},
			{aboutShape, Reason{words.Say("Yours starts %s, as with an index of %s; the target as with %s.",
				more(b.fall.from, a.fall.from, "brighter", "duller"), ys, ts),
				math.Abs(b.fall.from-a.fall.from) / (0.15 + 0.02*(a.fall.from+b.fall.from)/2)}},
			{aboutShape, Reason{words.Say("The index of yours falls %s: it comes to rest near %s, the target's near %s.",
				more(b.fall.to, a.fall.to, "less far", "further"), number(math.Max(0, b.fall.to)), number(math.Max(0, a.fall.to))),
				math.Abs(b.fall.to-a.fall.to) / (0.1 + 0.02*(a.fall.to+b.fall.to)/2)}},
		}
	}
	if a.fall.ok || b.fall.ok {
		return // how the brightness moves says it better
	}
	step := 0.15 + 0.02*(a.value+b.value)/2
	ys, ts := two(b.value, a.value)
	return []finding{{aboutShape, Reason{words.Say("The partials of yours reach %s, as with an index of %s; the target's as with %s.",
		more(b.value, a.value, "higher", "less high"), ys, ts), math.Abs(b.value-a.value) / step}}}
}

// unlike is the rms difference of the first partials in dB, weighted as in fit.
func unlike(a, b partials) float64 {
	n := min(16, max(len(a.db), len(b.db)))
	var sum, weight float64
	for k := 1; k <= n; k++ {
		x, y := math.Max(floor, a.at(k)), math.Max(floor, b.at(k))
		w := weightOf(math.Max(x, y))
		sum += w * (x - y) * (x - y)
		weight += w
	}
	if weight == 0 {
		return 0
	}
	return math.Sqrt(sum / weight)
}

// compareOctaves speaks of a second tone an octave or more above.
func compareOctaves(t, y *heard) *finding {
	a, b := t.octave, y.octave
	if !a.ok && !b.ok || t.shape.ok && y.shape.ok || len(comparePulses(t, y)) > 0 {
		return nil
	}
	name := map[int]words.Message{2: words.Say("one octave"), 4: words.Say("two octaves"), 8: words.Say("three octaves")}
	if a.ok && b.ok && a.times != b.times {
		return &finding{aboutShape, Reason{words.Say("The second tone of yours lies %s above the pitch, the target's %s.", name[b.times], name[a.times]), 15}}
	}
	at := max(a.times, b.times)
	da, db := a.above(at), b.above(at)
	cost := math.Abs(da-db) / 1.2
	if !a.ok || !b.ok {
		return &finding{aboutShape, Reason{words.Say("The tone %s above the pitch is %s in yours, by %s dB.", name[at],
			more(db, da, "stronger", "weaker"), number(math.Abs(da-db))), cost}}
	}
	return &finding{aboutShape, Reason{words.Say("The tone %s above is %s in yours: by %s dB against the partials of the lower tone.", name[at],
		more(db, da, "stronger", "weaker"), number(math.Abs(da-db))), cost}}
}
