package mark

import (
	"math"

	"partialcredit/game/words"
)

// pitched says whether a sound has one pitch that can be spoken of: it repeats,
// its partials are multiples, and it is not better explained by the sums and
// differences of two frequencies.
func (h *heard) pitched() bool {
	return h.pitch.ok && h.inharmonic < 0.2 && (h.shape.ok || !h.tones.ok) && (h.pitch.filled >= 0.45 || h.partial.at(1) > -26)
}

// tuned says whether the movement of the pitch can be spoken of.
func (h *heard) tuned() bool { return h.pitch.ok && (h.pitched() || !h.tones.ok) }

// unsettled says whether the pitch still glides when the sound ends.
func (h *heard) unsettled() bool { return h.glide.ok && h.glide.seconds > 0.4*h.seconds }

// hangs says whether yours stays on the way on which the target glides to its
// place, so slowly that it does not seem to glide.
func hangs(t, y *heard) bool {
	if !t.glide.ok || y.glide.ok || !t.pitch.ok || !y.pitch.ok {
		return false
	}
	way := 12 * math.Log2(y.pitch.hz/t.pitch.hz) / t.glide.semitones
	return way > 0.3 && way < 1.1
}

func comparePitch(t, y *heard) (f []finding) {
	if !t.pitched() || !y.pitched() {
		return
	}
	if hangs(t, y) || restarts(t, y) > 0 || restarts(y, t) > 0 || t.unsettled() || y.unsettled() {
		return
	}
	cents := 1200 * math.Log2(y.pitch.hz/t.pitch.hz)
	octaves := math.Round(cents / 1200)
	rest := cents - 1200*octaves
	if octaves != 0 && math.Abs(rest) < 250 {
		n := int(math.Abs(octaves))
		far := octavesApart(n)
		text := words.Say("Yours is %s lower than the target: its footage is %s.", far, longer(n))
		switch {
		case octaves > 0 && t.octave.ok && t.octave.times == 1<<n:
			text = words.Say("The lower tone of the target cannot be heard in yours: the tone %s above is stronger in yours.", far)
		case octaves < 0 && y.octave.ok && y.octave.times == 1<<n && !t.octave.ok && t.shape.ok:
			text = words.Say("Yours is %s lower than the target: it has a second tone %s below, which the target has not.", far, far)
		case octaves > 0:
			text = words.Say("Yours is %s higher than the target: its footage is %s.", far, shorter(n))
		}
		f = append(f, finding{aboutOctave, Reason{text, 20 + 10*float64(n)}})
		cents = rest
	}
	// Practised listeners: 5 cents (hearing.md 1.1).
	cost := math.Abs(cents) / pitchStep
	if t.sweep.ok || y.sweep.ok || t.shape.fall.ok || y.shape.fall.ok || t.motion.kind == width || y.motion.kind == width {
		cost /= 5 // what moves the partials turns their phases too
	}
	if t.motion.kind == beats || y.motion.kind == beats {
		cost /= 2 // the pitch of two tones is that between them, and less sharp (design choice)
	}
	text := words.Say("Yours is %s cents %s.", number(math.Abs(cents)), more(cents, 0, "sharp", "flat"))
	if math.Abs(cents) > 120 {
		text = words.Say("Yours is %s semitones too %s.", several(math.Abs(cents)/100), more(cents, 0, "high", "low"))
	}
	return append(f, finding{aboutPitch, Reason{text, cost}})
}

func compareGlide(t, y *heard) (f []finding) {
	if !t.tuned() || !y.tuned() || !t.glide.ok && !y.glide.ok {
		return
	}
	step := func(v float64) float64 { return 0.4 + 0.04*math.Abs(v) }
	where := func(st float64) string { return more(st, 0, "above", "below") }
	switch a, b := t.glide, y.glide; {
	case a.ok && !a.sure || b.ok && !b.sure:
		return // too fast to be followed from its start
	case hangs(t, y):
		return []finding{{aboutGlide, Reason{words.Say("The pitch of yours %s more slowly: all through the note it stays near where the target starts.", more(a.semitones, 0, "falls", "rises")), 15}}}
	case !b.ok:
		f = append(f, finding{aboutGlide, Reason{words.Say("The pitch of the target starts %s semitones %s and glides to its place; yours stands still.",
			several(math.Abs(a.semitones)), where(a.semitones)), math.Abs(a.semitones) / step(a.semitones/2)}})
	case !a.ok:
		f = append(f, finding{aboutGlide, Reason{words.Say("The pitch of yours starts %s semitones %s and glides to its place; the target stands still.",
			several(math.Abs(b.semitones)), where(b.semitones)), math.Abs(b.semitones) / step(b.semitones/2)}})
	case a.semitones*b.semitones < 0:
		f = append(f, finding{aboutGlide, Reason{words.Say("The pitch of yours starts %s semitones %s, the target's %s semitones %s.",
			several(math.Abs(b.semitones)), where(b.semitones), several(math.Abs(a.semitones)), where(a.semitones)),
			math.Abs(a.semitones-b.semitones) / step(a.semitones)}})
	default:
		ys, ts := two(math.Abs(b.semitones), math.Abs(a.semitones))
		pace := math.Abs(math.Log(b.seconds/a.seconds)) / math.Log(1.15)
		start := unfollowed(math.Abs(a.semitones-b.semitones)/step((a.semitones+b.semitones)/2), pace, b.semitones, a.semitones, b.seconds, a.seconds)
		from := words.Say("Yours falls from %s semitones above, the target from %s.", ys, ts)
		if a.semitones < 0 {
			from = words.Say("Yours rises from %s semitones below, the target from %s.", ys, ts)
		}
		f = append(f, finding{aboutGlide, Reason{from, start}})
		f = append(f, finding{aboutGlide, Reason{words.Say("The pitch of yours %s %s: its time is %s, the target's %s.", more(a.semitones, 0, "falls", "rises"),
			more(b.seconds, a.seconds, "more slowly", "faster"), duration(b.seconds), duration(a.seconds)), pace}})
	}
	return
}

func compareVibrato(t, y *heard) (f []finding) {
	a, b := t.vibrato, y.vibrato
	if !t.tuned() || !y.tuned() || !a.ok && !b.ok {
		return
	}
	step := func(v float64) float64 { return math.Max(7, 0.15*v) } // hearing.md 8(a)2
	// A pitch that could not be followed does not stand still: some of its power
	// then lies beside the partials.
	const stray = 0.1
	switch {
	case !b.ok && y.inharmonic > stray, !a.ok && t.inharmonic > stray:
		return
	case !b.ok:
		return []finding{{aboutVibrato, Reason{words.Say("The pitch of the target swings by %s cents, %s a second; yours stands still: it needs vibrato.",
			number(a.cents), times(a.hz)), 2 + a.cents/step(a.cents/2)}}}
	case !a.ok:
		return []finding{{aboutVibrato, Reason{words.Say("The pitch of yours swings by %s cents, %s a second; the target stands still.",
			number(b.cents), times(b.hz)), 2 + b.cents/step(b.cents/2)}}}
	}
	yc, tc := two(b.cents, a.cents)
	far := words.Say("The vibrato of yours is narrower: %s cents against %s.", yc, tc)
	if b.cents > a.cents {
		far = words.Say("The vibrato of yours is wider: %s cents against %s.", yc, tc)
	}
	f = append(f, finding{aboutVibrato, Reason{far, math.Abs(math.Log(b.cents/a.cents)) * (a.cents + b.cents) / 2 / step((a.cents+b.cents)/2)}})
	yr, tr := two(b.hz, a.hz)
	f = append(f, finding{aboutVibrato, Reason{words.Say("The vibrato of yours is %s: %s times a second against %s.",
		more(b.hz, a.hz, "faster", "slower"), yr, tr), rateSteps(a.hz, b.hz)}})
	if growing := 0.75; a.fade > growing*t.seconds || b.fade > growing*y.seconds {
		// What it would have grown to is not heard.
		if a.fade > growing*t.seconds && b.fade > growing*y.seconds {
			return f[1:]
		}
		text := words.Say("The vibrato of yours grows until the end; the target's is fully there after %s.", duration(a.fade))
		if a.fade > b.fade {
			text = words.Say("The vibrato of yours is fully there sooner: after %s; the target's grows until the end.", duration(b.fade))
		}
		return append(f[1:], finding{aboutVibrato, Reason{text, 8}})
	}
	fade := math.Abs(a.fade-b.fade) / (0.1 + 0.15*(a.fade+b.fade)/2)
	text := words.Say("The vibrato of yours is fully there %s: after %s, the target's after %s.", more(b.fade, a.fade, "later", "sooner"), duration(b.fade), duration(a.fade))
	return append(f, finding{aboutVibrato, Reason{text, 0.8 * fade}})
}
