package credit

import (
	"math"
	"math/rand/v2"

	"partialcredit/synth"
)

// A Technique makes random targets of one kind and names the controls that a
// learner may be given with them.
type Technique struct {
	Name   string
	Fields []string
	target func(r random) synth.Sound
}

// Techniques are all that the voice can do, each within the range in which
// its controls can be heard (sound.md 8.5; design choices).
var Techniques = []Technique{
	{"shape", []string{"a.shape"}, func(r random) synth.Sound {
		return r.note(36, 76)
	}},
	{"duty", []string{"a.duty"}, func(r random) synth.Sound {
		s := r.note(36, 76)
		s.A.Shape, s.A.Duty = synth.Pulse, r.uniform(0.06, 0.48)
		return s
	}},
	{"tune", []string{"a.cents", "a.footage"}, func(r random) synth.Sound {
		s := r.note(36, 76)
		s.A.Duty = r.uniform(0.1, 0.5)
		return s
	}},
	{"width", []string{"lfo.hz", "lfo.duty", "a.duty"}, func(r random) synth.Sound {
		s := r.note(36, 64)
		s.A.Shape, s.A.Duty = synth.Pulse, r.uniform(0.3, 0.5)
		s.LFO.Shape = r.swing()
		s.LFO.Hz, s.LFO.Duty = r.even(0.6, 8), r.uniform(0.1, 0.4)
		return s
	}},
	{"vibrato", []string{"lfo.hz", "lfo.cents", "lfo.fade"}, func(r random) synth.Sound {
		s := r.note(45, 76)
		s.LFO.Shape = r.swing()
		s.LFO.Hz, s.LFO.Cents, s.LFO.Fade = r.even(2, 9), r.even(20, 120), r.uniform(0, 0.8)
		return s
	}},
	{"tremolo", []string{"lfo.hz", "lfo.level"}, func(r random) synth.Sound {
		s := r.note(45, 69)
		s.LFO.Shape = r.swing()
		s.LFO.Hz, s.LFO.Level = r.even(1, 12), r.uniform(0.3, 0.9)
		return s
	}},
	{"glide", []string{"envelope.a", "envelope.seconds"}, func(r random) synth.Sound {
		s := r.note(33, 57)
		s.A.Shape = oneOf(r, synth.Triangle, synth.Sawtooth, synth.Sine)
		s.Envelope.A, s.Envelope.Seconds = r.uniform(5, 36), r.even(0.03, 0.3)
		if r.IntN(2) == 0 {
			s.Amplitude.Decay, s.Amplitude.Sustain = r.even(0.2, 0.6), 0
		}
		return s
	}},
	{"beats", []string{"b.cents", "combine.balance"}, func(r random) synth.Sound {
		s := r.note(40, 69)
		s.A.Duty = r.uniform(0.2, 0.5)
		s.B.Shape, s.B.Duty = s.A.Shape, s.A.Duty
		s.Combine.How, s.Combine.Balance = synth.Mix, r.uniform(-0.3, 0.3)
		a, _ := s.Hz()
		s.B.Cents = 1200 * math.Log2(1+r.even(0.5, 8)/a) // beats a second
		return s
	}},
	{"octaves", []string{"b.footage", "combine.balance", "b.level"}, func(r random) synth.Sound {
		s := r.note(40, 64)
		s.A.Shape, s.B.Shape = oneOf(r, synth.Triangle, synth.Sawtooth), oneOf(r, synth.Triangle, synth.Sawtooth)
		s.B.Footage = oneOf(r, 4.0, 2)
		s.B.Cents = r.uniform(0.5, 2)
		s.B.Level = r.uniform(0.4, 1)
		s.Combine.How, s.Combine.Balance = synth.Mix, r.uniform(-0.4, 0.4)
		return s
	}},
	{"two pulses", []string{"a.duty", "b.duty"}, func(r random) synth.Sound {
		s := r.note(40, 64)
		s.A.Shape, s.B.Shape = synth.Pulse, synth.Pulse
		s.A.Duty, s.B.Duty = r.uniform(0.08, 0.45), r.uniform(0.08, 0.45)
		s.B.Footage, s.B.Cents = 4, r.uniform(0.5, 2)
		s.Combine.How = synth.Mix
		return s
	}},
	{"ring", []string{"combine.ratio"}, func(r random) synth.Sound {
		s := r.note(45, 69)
		s.A.Shape, s.B.Shape = oneOf(r, synth.Triangle, synth.Sine, synth.Sawtooth), synth.Sine
		s.Combine.How, s.Combine.Ratio = synth.Ring, r.even(0.4, 5)
		return s
	}},
	{"ring sweep", []string{"envelope.b", "envelope.seconds", "combine.ratio"}, func(r random) synth.Sound {
		s := r.note(45, 69)
		s.A.Shape, s.B.Shape = oneOf(r, synth.Triangle, synth.Sine), synth.Sine
		s.Combine.How, s.Combine.Ratio = synth.Ring, r.even(0.5, 3)
		s.Envelope.B, s.Envelope.Seconds = r.uniform(6, 24), r.even(0.08, 0.5)
		return s
	}},
	{"am", []string{"combine.ratio", "combine.depth"}, func(r random) synth.Sound {
		s := r.note(57, 76)
		s.A.Shape, s.B.Shape = oneOf(r, synth.Triangle, synth.Sine), synth.Sine
		s.Combine.How, s.Combine.Ratio, s.Combine.Depth = synth.AM, r.even(0.26, 3), r.uniform(0.3, 1)
		return s
	}},
	{"fm", []string{"combine.index", "combine.ratio"}, func(r random) synth.Sound {
		s := r.note(36, 60)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, r.uniform(0.8, 5)
		s.Combine.Ratio = oneOf(r, 1, 1, 1.41, 2, 2.7, 3, 3.5)
		return s
	}},
	{"bell", []string{"envelope.seconds", "combine.index", "envelope.depth"}, func(r random) synth.Sound {
		s := r.note(48, 67)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, r.uniform(2, 6)
		s.Combine.Ratio = oneOf(r, 1, 1.41, 2.7, 3.5)
		s.Envelope.Seconds, s.Envelope.Depth = r.even(0.1, 0.6), 1
		s.Amplitude.Decay, s.Amplitude.Sustain = r.even(0.8, 2), 0
		return s
	}},
	{"sync", []string{"combine.ratio"}, func(r random) synth.Sound {
		s := r.note(36, 57)
		s.A.Shape, s.B.Shape = synth.Sawtooth, oneOf(r, synth.Triangle, synth.Sawtooth, synth.Pulse, synth.Sine)
		s.B.Duty = 0.5
		s.Combine.How, s.Combine.Ratio = synth.Sync, r.even(1.2, 5)
		if s.B.Shape == synth.Pulse {
			s.Combine.Ratio = r.even(2.2, 5) // below 1.5 a restarted square is a pulse, in every way
		}
		return s
	}},
	{"sync sweep", []string{"envelope.b", "envelope.seconds", "combine.ratio"}, func(r random) synth.Sound {
		s := r.note(36, 52)
		s.A.Shape, s.B.Shape = synth.Sawtooth, synth.Sawtooth
		s.Combine.How, s.Combine.Ratio = synth.Sync, r.even(1.2, 2.2)
		s.Envelope.B, s.Envelope.Seconds = r.uniform(8, 20), r.even(0.1, 0.6)
		return s
	}},
	{"loudness", []string{"amplitude.attack", "amplitude.decay", "amplitude.sustain"}, func(r random) synth.Sound {
		s := r.note(45, 69)
		s.A.Duty = r.uniform(0.1, 0.5)
		s.Amplitude.Attack, s.Amplitude.Decay = r.even(0.02, 0.4), r.even(0.1, 0.6)
		s.Amplitude.Sustain = r.uniform(0.1, 0.6)
		return s
	}},
}

// Target returns target number n of the technique, the same for the same seed.
func (t *Technique) Target(seed uint64, n int) synth.Sound {
	mixed := uint64(n)
	for _, c := range t.Name {
		mixed = mixed*131 + uint64(c)
	}
	return t.target(random{rand.New(rand.NewPCG(seed, mixed))})
}

type random struct{ *rand.Rand }

func (r random) uniform(low, high float64) float64 { return low + (high-low)*r.Float64() }

// even draws so that equal ratios are equally likely.
func (r random) even(low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }

// note is a plain sound of any shape at a note of the range.
func (r random) note(low, high int) synth.Sound {
	s := synth.Default()
	s.Note = float64(low + r.IntN(high-low+1))
	s.A.Shape = synth.Shape(r.IntN(5))
	return s
}

// swing is the shape of an LFO that swings to and fro.
func (r random) swing() synth.LFOShape { return oneOf(r, synth.LFOTriangle, synth.LFOSine) }

func oneOf[T any](r random, of ...T) T { return of[r.IntN(len(of))] }
