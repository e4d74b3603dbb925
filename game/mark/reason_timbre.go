package mark

import (
	"math"

	"partialcredit/game/words"
)

// camStep is one just-noticeable step of brightness in Cam: the centroid by 5
// % (hearing.md 1.3, low confidence), which is 0.6 Cam or so at 2 kHz on a
// power scale; the compressed centroid used here moves less (design choice).
const camStep = 0.25

// compareSweep speaks of how the brightness moves through the note: when it is
// half way from where the sweeping sound starts to where it ends.
func compareSweep(t, y *heard) (f []finding) {
	s := t.sweep
	if !s.ok {
		s = y.sweep
	}
	if !s.ok || (t.glide.ok || y.glide.ok) && t.tuned() && y.tuned() {
		return
	}
	if t.shape.ok && y.shape.ok && resets(t.shape.family) && resets(y.shape.family) {
		return // the peak says it better
	}
	falls := s.from > s.to
	mid := (s.from + s.to) / 2
	a, b := t.bright.crosses(mid, falls), y.bright.crosses(mid, falls)
	settled := func(h *heard) bool { return h.sweep.ok && h.sweep.seconds < h.seconds/4 }
	rests := settled(t) && settled(y)
	if t.sweep.ok && y.sweep.ok && (rests || math.Abs(t.sweep.to-y.sweep.to) < 1.5) {
		b = y.bright.crosses((y.sweep.from+y.sweep.to)/2, falls) // its own half way
	}
	stays, gone := more(s.from, s.to, "bright", "dull"), more(s.from, s.to, "dull", "bright")
	text := words.Say("Yours stays %s %s: its brightness is half way down after %s, the target's after %s.", stays,
		more(b, a, "longer", "less long"), duration(b), duration(a))
	switch {
	case b > 0.85*y.seconds:
		text = words.Say("Yours stays %s longer: the brightness of the target is half way down after %s, that of yours hardly changes.", stays, duration(a))
	case b <= y.bright.first:
		text = words.Say("Yours is %s from the start; the target only after %s.", gone, duration(a))
	case a <= t.bright.first:
		text = words.Say("The target is %s from the start; yours only after %s.", gone, duration(b))
	case a > 0.85*t.seconds:
		text = words.Say("Yours stays %s less long: its brightness is half way down after %s, that of the target hardly changes.", stays, duration(b))
	}
	pace := math.Min(12, math.Abs(math.Log(b/a))/math.Log(1.15))
	rest := math.Abs(t.sweep.to-y.sweep.to) / camStep
	// What falls less far gets half way sooner: where it comes to rest then decides.
	if agree := (y.sweep.to > t.sweep.to) == ((b > a) == falls); !rests || rest < 1 || agree || pace > 3*rest {
		f = append(f, finding{aboutSweep, Reason{text, pace}})
	}
	// Between very different times the start that the fits point back to is not sure.
	if t.sweep.ok && y.sweep.ok && math.Abs(math.Log(b/a)) < math.Ln2 {
		start := math.Min(math.Abs(y.sweep.from-t.sweep.from), 1.5*math.Abs(y.bright.start()-t.bright.start()))
		f = append(f, finding{aboutSweep, Reason{words.Say("Yours starts %s than the target.", more(y.sweep.from, t.sweep.from, "brighter", "duller")), start / camStep}})
		if last := len(f) - 1; last > 0 && f[last].Cost > 3*f[last-1].Cost {
			f = f[last:] // a shorter way takes another time
		}
	}
	if rests {
		f = append(f, finding{aboutSweep, Reason{words.Say("Yours comes to rest %s than the target: it falls %s.",
			more(y.sweep.to, t.sweep.to, "brighter", "duller"), more(y.sweep.to, t.sweep.to, "less far", "further")),
			math.Abs(y.sweep.to-t.sweep.to) / camStep}})
	}
	return
}

func compareLength(t, y *heard) (f []finding) {
	// A filled interval of a second is told from one 6 % longer (Abel 1972).
	d := math.Abs(y.seconds-t.seconds) / (0.06 * math.Pow(t.seconds, 0.588))
	return []finding{{aboutLength, Reason{words.Say("Yours is heard for %s, the target for %s: it dies away %s.",
		duration(y.seconds), duration(t.seconds), more(y.seconds, t.seconds, "later", "sooner")), d / 4}}}
}

func compareTimbre(t, y *heard) (f []finding) {
	d := y.cam - t.cam
	return []finding{{aboutTimbre, Reason{words.Say("Yours is %s than the target: its high partials are %s.",
		more(d, 0, "brighter", "duller"), more(d, 0, "stronger", "weaker")), math.Min(8, math.Abs(d)/camStep)}}}
}
