package mark

import (
	"fmt"
	"math"
)

// moves says what moves, as a verb.
func (m motion) moves(whose string) string {
	if m.lone {
		return "The level of " + whose2(whose) + " swells"
	}
	switch m.kind {
	case beats:
		return whose + " beats"
	case tremolo:
		return "The level of " + whose2(whose) + " swells"
	}
	return "The partials of " + whose2(whose) + " swell one after another"
}

func whose2(s string) string {
	if s == "Yours" {
		return "yours"
	}
	return "the target"
}

func compareMotion(t, y *heard) (f []finding) {
	a, b := t.motion, y.motion
	if a.lone && b.lone { // beats of two sines and a tremolo of one are the same sound
		a, b = a.asTremolo(), b.asTremolo()
	}
	moving := func(m motion) bool { return m.kind == beats || m.kind == tremolo || m.kind == width }
	depth := func(m motion) float64 { return math.Min(1, m.depth) }
	if d := compareDrift(t, y); d != nil {
		return []finding{*d}
	}
	switch {
	case moving(a) && b.kind == still:
		return []finding{{aboutMotion, Reason{fmt.Sprintf("%s %s a second; yours stands still.", a.moves("The target"), times(a.hz)), (4 + 12*depth(a)) * math.Min(1, math.Sqrt(a.hz/0.5))}}}
	case moving(b) && a.kind == still:
		return []finding{{aboutMotion, Reason{fmt.Sprintf("%s %s a second; the target stands still.", b.moves("Yours"), times(b.hz)), (4 + 12*depth(b)) * math.Min(1, math.Sqrt(b.hz/0.5))}}}
	case moving(a) && b.kind == slow && a.hz > b.hz:
		return []finding{{aboutMotion, Reason{fmt.Sprintf("%s %s a second; yours moves more slowly, less than %s.%s", a.moves("The target"), times(a.hz), times(b.hz), advice(a, -1)), rateSteps(a.hz, b.hz/2)}}}
	case moving(b) && a.kind == slow && b.hz > a.hz:
		return []finding{{aboutMotion, Reason{fmt.Sprintf("%s %s a second; the target moves more slowly, less than %s.%s", b.moves("Yours"), times(b.hz), times(a.hz), advice(b, 1)), rateSteps(b.hz, a.hz/2)}}}
	case !moving(a) || !moving(b):
		return
	}
	ys, ts := two(b.hz, a.hz)
	rate := fmt.Sprintf("%s %s times a second, the target %s%s", b.moves("Yours"), ys, ts, advice(b, b.hz-a.hz))
	if advice(b, 1) == "" {
		rate += "."
	}
	f = append(f, finding{aboutMotion, Reason{rate, rateSteps(a.hz, b.hz)}})
	if a.kind != b.kind {
		say := map[motionKind]string{beats: "two tones beat", tremolo: "the whole level moves", width: "the partials swell one after another"}
		f = append(f, finding{aboutMotion, Reason{fmt.Sprintf("In the target %s, in yours %s.", say[a.kind], say[b.kind]), 8}})
		return
	}
	switch b.kind {
	case beats:
		if (t.octave.ok || y.octave.ok) && a.hz < 0.4 {
			break // other partials beat, which the octaves explain
		}
		da, db := 20*math.Log10(a.depth+1e-3), 20*math.Log10(b.depth+1e-3)
		f = append(f, finding{aboutMotion, Reason{fmt.Sprintf("The beats of yours are %s: its fainter tone is %s dB under the other, the target's %s dB.",
			more(b.depth, a.depth, "deeper", "shallower"), number(-db), number(-da)), math.Abs(da-db) / 2}})
	case tremolo:
		f = append(f, finding{aboutMotion, Reason{fmt.Sprintf("The level of yours swings %s: by %d %% against %d %%.",
			more(b.depth, a.depth, "further", "less"), percent(b.depth), percent(a.depth)),
			math.Abs(a.depth-b.depth) / math.Max(0.05, 0.15*(a.depth+b.depth)/2)}})
	case width:
		if t.shape.family == pulse && y.shape.family == pulse && t.shape.left < 3.5 && y.shape.left < 3.5 {
			f = append(f, compareWidth(t.shape, y.shape)...)
		}
	}
	return
}

// compareWidth speaks of how far the width of a pulse moves, and where it
// mostly is.
func compareWidth(t, y shape) []finding {
	const step = 0.02 // of the period (see dutyStep)
	reach, centre := (y.high-y.low-t.high+t.low)/2, y.value-t.value
	return []finding{
		{aboutMotion, Reason{fmt.Sprintf("The width of the pulse moves %s in yours: between %d and %d %% of the period, the target's between %d and %d %%.",
			more(reach, 0, "further", "less"), percent(y.low), percent(y.high), percent(t.low), percent(t.high)), math.Abs(reach) / step}},
		{aboutMotion, Reason{fmt.Sprintf("The pulse of yours is %s on the whole: its width moves about %d %% of the period, the target's about %d %%.",
			more(centre, 0, "wider", "narrower"), percent(y.value), percent(t.value)), math.Abs(centre) / step}},
	}
}

// compareDrift speaks of partials that move more slowly than can be counted in
// one sound only.
func compareDrift(t, y *heard) *finding {
	a, b := t.drift, y.drift
	const stands = 0.5 // dB
	uncounted := func(h *heard) bool { return h.motion.kind == still || h.motion.kind == slow }
	if !uncounted(t) || !uncounted(y) || t.moves() || y.moves() || math.Min(a, b) > stands {
		return nil
	}
	moving, standing, m := "The partials of yours", "the target stands still", b
	if a > b {
		moving, standing, m = "The partials of the target", "yours stands still", a
	}
	text := fmt.Sprintf("%s swell too slowly to be counted; %s", moving, standing)
	if b > a && t.shape.ok && modulates(t.shape.family) {
		text += ": the ratio of yours is not quite whole"
	}
	return &finding{aboutMotion, Reason{text + ".", m / 0.7}}
}

// moves says whether pitch or brightness run through the sound one way.
func (h *heard) moves() bool { return h.glide.ok || h.sweep.ok || h.shape.fall.ok }

func percent(v float64) int { return int(math.Round(100 * v)) }

// advice says which way to turn, where the sentence leaves room for it.
func advice(m motion, faster float64) string {
	if m.kind != beats || m.lone {
		return ""
	}
	if faster > 0 {
		return ": move the detune nearer to zero."
	}
	return ": move the detune further from zero."
}

// asTremolo takes the beats of two lone tones, the fainter ρ times the stronger,
// for a level that falls from 1 + ρ to 1 - ρ.
func (m motion) asTremolo() motion {
	if m.kind == beats {
		m.kind, m.depth = tremolo, 2*m.depth/(1+m.depth)
	}
	return m
}
