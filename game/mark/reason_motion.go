package mark

import (
	"math"

	"partialcredit/game/words"
)

// yoursMoves says what moves in yours, and how often.
func (m motion) yoursMoves(often words.Message) words.Message {
	switch {
	case m.lone || m.kind == tremolo:
		return words.Say("The level of yours swells %s a second", often)
	case m.kind == beats:
		return words.Say("Yours beats %s a second", often)
	}
	return words.Say("The partials of yours swell one after another %s a second", often)
}

// targetMoves says it of the target.
func (m motion) targetMoves(often words.Message) words.Message {
	switch {
	case m.lone || m.kind == tremolo:
		return words.Say("The level of the target swells %s a second", often)
	case m.kind == beats:
		return words.Say("The target beats %s a second", often)
	}
	return words.Say("The partials of the target swell one after another %s a second", often)
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
	if (t.octave.ok || y.octave.ok) && math.Max(a.hz, b.hz) < 0.4 && (a.kind == still || b.kind == still) {
		return // what beats so slowly are two tones an octave apart: which is stronger says it better
	}
	switch {
	case moving(a) && b.kind == still:
		return []finding{{aboutMotion, Reason{words.Say("%s; yours stands still.", a.targetMoves(times(a.hz))), (4 + 12*depth(a)) * math.Min(1, math.Sqrt(a.hz/0.5))}}}
	case moving(b) && a.kind == still:
		return []finding{{aboutMotion, Reason{words.Say("%s; the target stands still.", b.yoursMoves(times(b.hz))), (4 + 12*depth(b)) * math.Min(1, math.Sqrt(b.hz/0.5))}}}
	case moving(a) && b.kind == slow && a.hz > b.hz:
		return []finding{{aboutMotion, Reason{a.advise(-1, words.Say("%s; yours moves more slowly, less than %s", a.targetMoves(times(a.hz)), times(b.hz))), rateSteps(a.hz, b.hz/2)}}}
	case moving(b) && a.kind == slow && b.hz > a.hz:
		return []finding{{aboutMotion, Reason{b.advise(1, words.Say("%s; the target moves more slowly, less than %s", b.yoursMoves(times(b.hz)), times(a.hz))), rateSteps(b.hz, a.hz/2)}}}
	case !moving(a) || !moving(b):
		return
	}
	ys, ts := two(b.hz, a.hz)
	rate := words.Say("%s, the target %s", b.yoursMoves(words.Say("%s times", ys)), ts)
	f = append(f, finding{aboutMotion, Reason{b.advise(b.hz-a.hz, rate), rateSteps(a.hz, b.hz)}})
	if g := compareGaps(t, y); g != nil {
		return append(f, *g)
	}
	if w := compareFolded(t, y); w != nil {
		return []finding{*w}
	}
	if a.kind != b.kind {
		f = append(f, finding{aboutMotion, Reason{words.Say("In the target %s, in yours %s.", a.manner(), b.manner()), 8}})
		return
	}
	switch b.kind {
	case beats:
		if (t.octave.ok || y.octave.ok) && a.hz < 0.4 {
			break // other partials beat, which the octaves explain
		}
		da, db := 20*math.Log10(a.depth+1e-3), 20*math.Log10(b.depth+1e-3)
		f = append(f, finding{aboutMotion, Reason{words.Say("The beats of yours are %s: its fainter tone is %s dB under the other, the target's %s dB.",
			more(b.depth, a.depth, "deeper", "shallower"), number(math.Max(0, -db)), number(math.Max(0, -da))), math.Abs(da-db) / 2}})
	case tremolo:
		text := words.Say("The level of yours swings less: by %d %% against %d %%.", percent(b.depth), percent(a.depth))
		if b.depth > a.depth {
			text = words.Say("The level of yours swings further: by %d %% against %d %%.", percent(b.depth), percent(a.depth))
		}
		f = append(f, finding{aboutMotion, Reason{text,
			math.Abs(a.depth-b.depth) / math.Max(0.05, 0.15*(a.depth+b.depth)/2)}})
	case width:
		if t.shape.family == pulse && y.shape.family == pulse && t.shape.left < 3.5 && y.shape.left < 3.5 {
			f = append(f, compareWidth(t.shape, y.shape)...)
		}
	}
	return
}

// compareGaps speaks of a pulse that moves so far that it is gone for a part of
// every swing. A wider movement and a narrower centre both make it so, and
// cannot be told apart.
func compareGaps(t, y *heard) *finding {
	a, b := t.motion, y.motion
	pulsed := func(h *heard) bool { return h.motion.kind == width && h.shape.family == pulse }
	if !pulsed(t) && !pulsed(y) || a.kind == beats || b.kind == beats || rateSteps(a.hz, b.hz) > 3 || math.Abs(t.gaps-y.gaps) < 0.02 {
		return nil
	}
	text := words.Say("The pulse of yours vanishes for %d %% of the time, that of the target for %d %%: its width moves further, or is narrower on the whole.", percent(y.gaps), percent(t.gaps))
	if y.gaps < t.gaps {
		text = words.Say("The pulse of yours vanishes for %d %% of the time, that of the target for %d %%: its width moves less, or is wider on the whole.", percent(y.gaps), percent(t.gaps))
	}
	return &finding{aboutMotion, Reason{text, 4 + math.Abs(t.gaps-y.gaps)/0.02}}
}

// compareFolded speaks of a width that swings about a half: it then sounds alike
// on either side, and everything comes twice as often.
func compareFolded(t, y *heard) *finding {
	a, b := t.motion, y.motion
	if a.kind != width || b.kind != width || t.shape.family != pulse || y.shape.family != pulse {
		return nil
	}
	twice := func(m, n *heard) bool {
		r := m.motion.hz / n.motion.hz
		return r > 1.94 && r < 2.06 && m.shape.high > 0.47 && m.shape.high-m.shape.low < 0.85*(n.shape.high-n.shape.low)
	}
	switch {
	case twice(y, t):
		return &finding{aboutMotion, Reason{words.Say("The partials of yours swell twice where those of the target swell once: the width of its pulse swings about a half and is wider on the whole."), 8}}
	case twice(t, y):
		return &finding{aboutMotion, Reason{words.Say("The partials of yours swell once where those of the target swell twice: the width of its pulse does not swing about a half and is narrower on the whole."), 8}}
	}
	return nil
}

// compareWidth speaks of how far the width of a pulse moves, and where it
// mostly is.
func compareWidth(t, y shape) []finding {
	const step = 0.02 // of the period (see dutyStep)
	reach, centre := (y.high-y.low-t.high+t.low)/2, y.value-t.value
	cost := math.Abs(reach) / step
	if math.Min(t.high, y.high) > 0.465 { // it swings past a half: only its thinnest tells how far, and its middle says little
		thin := math.Abs(math.Log(y.low/t.low)) / 0.15
		if (y.low < t.low) != (reach > 0) {
			thin, reach = thin-cost, t.low-y.low
		}
		cost = math.Max(cost, thin)
		if math.Abs(centre)/step < 2*cost {
			centre = 0
		}
	}
	far := words.Say("The width of the pulse moves less in yours: between %d and %d %% of the period, the target's between %d and %d %%.", percent(y.low), percent(y.high), percent(t.low), percent(t.high))
	if reach > 0 {
		far = words.Say("The width of the pulse moves further in yours: between %d and %d %% of the period, the target's between %d and %d %%.", percent(y.low), percent(y.high), percent(t.low), percent(t.high))
	}
	return []finding{
		{aboutMotion, Reason{far, cost}},
		{aboutMotion, Reason{words.Say("The pulse of yours is %s on the whole: its width moves about %d %% of the period, the target's about %d %%.",
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
	text := words.Say("The partials of yours swell too slowly to be counted; the target stands still.")
	switch {
	case a > b:
		text = words.Say("The partials of the target swell too slowly to be counted; yours stands still.")
	case b > a && t.shape.ok && modulates(t.shape.family):
		text = words.Say("The partials of yours swell too slowly to be counted; the target stands still: the ratio of yours is not quite whole.")
	}
	return &finding{aboutMotion, Reason{text, math.Max(a, b) / 0.7}}
}

// drifts says whether a movement too slow to be counted is worth saying.
func drifts(t, y *heard) bool {
	d := compareDrift(t, y)
	return d != nil && d.Cost > 2
}

// moves says whether pitch or brightness run through the sound one way.
func (h *heard) moves() bool { return h.glide.ok || h.sweep.ok || h.shape.ok && h.shape.fall.ok }

func percent(v float64) int { return int(math.Round(100 * v)) }

// advise ends a sentence with which way to turn, where there is one.
func (m motion) advise(faster float64, sentence words.Message) words.Message {
	switch {
	case m.kind != beats || m.lone:
		return words.Say("%s.", sentence)
	case faster > 0:
		return words.Say("%s: move the detune nearer to zero.", sentence)
	}
	return words.Say("%s: move the detune further from zero.", sentence)
}

// manner says how it moves.
func (m motion) manner() words.Message {
	switch m.kind {
	case beats:
		return words.Say("two tones beat")
	case tremolo:
		return words.Say("the whole level moves")
	}
	return words.Say("the partials swell one after another")
}

// asTremolo takes the beats of two lone tones, the fainter ρ times the stronger,
// for a level that falls from 1 + ρ to 1 - ρ.
func (m motion) asTremolo() motion {
	if m.kind == beats {
		m.kind, m.depth = tremolo, 2*m.depth/(1+m.depth)
	}
	return m
}
