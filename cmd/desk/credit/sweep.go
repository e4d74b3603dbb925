package credit

import (
	"math"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// Errors are the distances from the target at which marks are taken, in
// just-noticeable steps.
var Errors = []float64{0.5, 1, 2, 3, 4, 6, 8, 12, 16, 32}

// A Sweep is one control of one target moved away from it in one direction.
type Sweep struct {
	Technique string
	Field     string
	Up        bool
	Target    synth.Sound
	Values    []float64 // of the control at Errors, as far as its range goes
}

// Settings returns the sound at each of the values.
func (s *Sweep) Settings() []synth.Sound {
	f, _ := synth.FieldByName(s.Field)
	out := make([]synth.Sound, len(s.Values))
	for i, v := range s.Values {
		out[i] = s.Target
		f.Set(&out[i], v)
	}
	return out
}

// Sweeps returns the sweeps of a target: for every control that is no choice,
// in both directions.
func (t *Technique) Sweeps(target synth.Sound) []Sweep {
	var all []Sweep
	for _, field := range t.Fields {
		f, _ := synth.FieldByName(field)
		if len(f.Choices) > 0 {
			continue
		}
		low, high := limits(f, &target)
		for _, up := range []bool{false, true} {
			s := Sweep{Technique: t.Name, Field: field, Up: up, Target: target}
			end := low
			if up {
				end = high
			}
			for _, e := range Errors {
				v, ok := mark.Away(field, target, e, end)
				if !ok {
					break
				}
				s.Values = append(s.Values, v)
			}
			if len(s.Values) >= 2 { // a single setting shows no course
				all = append(all, s)
			}
		}
	}
	return all
}

// limits are the ends of a sweep: the field's range, cut where a true
// equivalent of what was passed begins. A duty d sounds like 1 - d, beats of
// -c cents like those of c, a fainter B like a fainter A of the same kind, an oscillator synced at a ratio below 1 like itself
// at 1 (sound.md 1.2, 7.4).
func limits(f *synth.Field, target *synth.Sound) (low, high float64) {
	low, high = f.Min, f.Max
	switch f.Name {
	case "a.duty", "b.duty":
		high = 0.5
	case "b.cents":
		if target.Combine.How == synth.Mix {
			low = 0
		}
	case "combine.balance":
		a, b := target.A, target.B
		if a.Shape == b.Shape && a.Duty == b.Duty && a.Footage == b.Footage {
			if f.Get(target) < 0 {
				high = 0
			} else {
				low = 0
			}
		}
	case "combine.ratio":
		if target.Combine.How == synth.Sync {
			low = math.Max(low, 1)
		}
	case "envelope.a", "envelope.b":
		low = 0
	}
	return low, high
}
