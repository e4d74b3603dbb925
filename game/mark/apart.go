package mark

import (
	"math"
	"strings"

	"partialcredit/synth"
)

// Apart returns how many just-noticeable steps lie between two sounds: 0
// where only what is not heard differs. Differences of one kind in both
// oscillators count once, differences of different kinds add as independent
// cues do, as the root of the sum of their squares (hearing.md 8(a)3). The
// steps are those at the target.
func Apart(target, yours synth.Sound) float64 {
	t, y := reduced(target), reduced(yours)
	steps := apart(t, y)
	if y.Combine.How == synth.Mix {
		steps = math.Min(steps, apart(t, exchanged(y)))
	}
	return steps
}

// apart compares reduced sounds, A with A and B with B.
func apart(t, y synth.Sound) float64 {
	var kinds []string // in the order of the fields, so that the sum is the same to the last bit
	most := map[string]float64{}
	add := func(kind string, steps float64) {
		if _, known := most[kind]; !known {
			kinds = append(kinds, kind)
		}
		most[kind] = math.Max(most[kind], steps)
	}
	for _, f := range synth.Fields() {
		from, to := f.Get(&t), f.Get(&y)
		if from == to {
			continue
		}
		kind := strings.TrimPrefix(strings.TrimPrefix(f.Name, "a."), "b.")
		if f.Name == "envelope.b" {
			kind = "envelope.a"
		}
		if t.Combine.How == synth.Mix && y.Combine.How == synth.Mix {
			switch f.Name {
			case "a.cents", "b.cents", "a.level", "b.level", "combine.balance":
				continue // see below
			}
		}
		add(kind, Steps(f.Name, t, from, to))
	}
	if t.Combine.How == synth.Mix && y.Combine.How == synth.Mix {
		add("level", math.Abs(levelOf(&t)-levelOf(&y)))
		pitch, interval := detuned(&t, &y)
		add("cents", pitch)
		add("interval", interval)
	}
	sum := 0.0
	for _, kind := range kinds {
		sum += most[kind] * most[kind]
	}
	return math.Sqrt(sum)
}

// levelOf is the level of B against A in steps, 0 where they are equal.
func levelOf(s *synth.Sound) float64 {
	a, b := gains(s)
	most := math.Max(a, b)
	return levelSteps(a/most) - levelSteps(b/most)
}

// levelSteps is the integral of 1/levelStep from v to 1.
func levelSteps(v float64) float64 {
	step := math.Pow(10, 1.0/20) - 1
	if v < quietest {
		return (math.Log(1/quietest) + 1 - v/quietest) / step
	}
	return math.Log(1/v) / step
}

// detuned compares the tuning of two mixes: the pitch of the whole, and the
// interval between its oscillators, which is heard by its beats or as an
// interval, whichever says more.
func detuned(t, y *synth.Sound) (pitch, interval float64) {
	a, b := y.A.Cents-t.A.Cents, y.B.Cents-t.B.Cents
	pitch = math.Abs(a+b) / 2 / pitchStep
	beats := rateSteps(beating(t.Hz()), beating(y.Hz()))
	return pitch, math.Max(beats, math.Abs(b-a)/pitchStep)
}
