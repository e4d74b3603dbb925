package credit

import (
	"math"
	"math/rand/v2"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// A Counterexample is a setting that earns more than [flattered] marks although
// the ear finds it different.
type Counterexample struct {
	Technique     string
	Target, Yours synth.Sound
	Marks         float64
	Ear           float64 // dB, see [Different]
}

// flattered are the marks that no setting may earn that sounds different, and
// plainly how far apart in dB rms of excitation that is: the closest of the
// plain shapes, a sawtooth and a pulse of 25 % and a triangle and a sine, lie
// 3.4 and 4.7 dB apart (hearing.md 8(c)12).
const (
	flattered = 90.0
	plainly   = 3.4
)

// Search looks for the setting of any field that earns more than [flattered]
// marks of r and that the ear finds the most different. Two walks in just-noticeable
// steps climb towards what is further from the target and not too few marks,
// and may fall back less and less (simulated annealing): one from the target,
// one from a setting anywhere, in case another island of marks lies there.
func (t *Technique) Search(target synth.Sound, r *mark.Reference, tries int, seed uint64) Counterexample {
	random := rand.New(rand.NewPCG(seed, uint64(target.Note)))
	ear := NewEar()
	pattern := ear.Listen(target)
	best := Counterexample{Technique: t.Name, Target: target, Yours: target, Marks: 100}
	fields := searched()
	for _, start := range []synth.Sound{target, t.Anywhere(target, random)} {
		at, height := start, math.Inf(-1)
		for n := range tries / 2 {
			yours := at
			for range 1 + random.IntN(3) {
				f := &fields[random.IntN(len(fields))]
				if random.IntN(3) > 0 { // mostly what the exercise would give the learner
					f, _ = synth.FieldByName(t.Fields[random.IntN(len(t.Fields))])
				}
				stray(f, &yours, random)
			}
			m := r.Mark(yours, 1).Marks
			d := Different(pattern, ear.Listen(yours))
			if m > flattered && d > best.Ear {
				best.Yours, best.Marks, best.Ear = yours, m, d
			}
			h := math.Min(d, 2*plainly) - max(0, flattered-m)/10 // a decibel for ten marks
			if heat := 1 - 2*float64(n)/float64(tries); h > height-heat*random.Float64() {
				at, height = yours, h
			}
		}
	}
	return best
}

// searched are the fields that belong to the sound and not to the task.
func searched() (fields []synth.Field) {
	for _, f := range synth.Fields() {
		switch f.Name {
		case "note", "seconds", "seed":
		default:
			fields = append(fields, f)
		}
	}
	return fields
}

// stray moves a field by a tenth of a step to thirty steps, or to any choice.
func stray(f *synth.Field, s *synth.Sound, random *rand.Rand) {
	if len(f.Choices) > 0 {
		f.Set(s, float64(random.IntN(len(f.Choices))))
		return
	}
	steps := 0.1 * math.Pow(300, random.Float64())
	if random.IntN(2) == 0 {
		steps = -steps
	}
	f.Set(s, f.Clamp(f.Get(s)+steps*mark.Step(f.Name, *s)))
}

// Anywhere returns the target with every control of the technique at random
// within its range, as somebody who only guesses would set them.
func (t *Technique) Anywhere(target synth.Sound, random *rand.Rand) synth.Sound {
	for _, name := range t.Fields {
		f, _ := synth.FieldByName(name)
		low, high := limits(f, &target)
		v := low + (high-low)*random.Float64()
		if f.Log {
			v = low * math.Pow(high/low, random.Float64())
		}
		if len(f.Choices) > 0 {
			v = float64(random.IntN(len(f.Choices)))
		}
		f.Set(&target, v)
	}
	return target
}
