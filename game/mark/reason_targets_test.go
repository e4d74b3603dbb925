package mark

import (
	"math"
	"math/rand/v2"

	"partialcredit/synth"
)

// A technique makes random targets and names the controls that are set wrong.
type technique struct {
	name   string
	make   func(r *rand.Rand) synth.Sound
	fields []string
}

func uniform(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }
func even(r *rand.Rand, low, high float64) float64    { return low * math.Pow(high/low, r.Float64()) }

func base(r *rand.Rand, low, high int) synth.Sound {
	s := synth.Default()
	s.Note = float64(low + r.IntN(high-low+1))
	return s
}

var techniques = []technique{
	{"duty", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 76)
		s.A.Shape, s.A.Duty = synth.Pulse, uniform(r, 0.06, 0.48)
		return s
	}, []string{"a.duty"}},
	{"tune", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 76)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.A.Duty = uniform(r, 0.1, 0.5)
		return s
	}, []string{"a.cents", "a.footage"}},
	{"width", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 64)
		s.A.Shape, s.A.Duty = synth.Pulse, uniform(r, 0.3, 0.5)
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Duty = even(r, 0.6, 8), uniform(r, 0.1, 0.4)
		return s
	}, []string{"lfo.hz", "lfo.duty"}},
	{"vibrato", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 76)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Cents, s.LFO.Fade = even(r, 2, 9), even(r, 20, 120), uniform(r, 0, 0.8)
		return s
	}, []string{"lfo.hz", "lfo.cents", "lfo.fade"}},
	{"glide", func(r *rand.Rand) synth.Sound {
		s := base(r, 33, 57)
		s.A.Shape = synth.Shape([]int{0, 1, 4}[r.IntN(3)])
		s.Envelope.A, s.Envelope.Seconds = uniform(r, 5, 36), even(r, 0.03, 0.3)
		if r.IntN(2) == 0 {
			s.Amplitude.Decay, s.Amplitude.Sustain = even(r, 0.2, 0.6), 0
		}
		return s
	}, []string{"envelope.a", "envelope.seconds"}},
	{"beats", func(r *rand.Rand) synth.Sound {
		s := base(r, 40, 69)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.A.Duty = uniform(r, 0.2, 0.5)
		s.B.Shape, s.B.Duty = s.A.Shape, s.A.Duty
		s.Combine.How, s.Combine.Balance = synth.Mix, uniform(r, -0.3, 0.3)
		s.B.Cents = uniform(r, 4, 35)
		return s
	}, []string{"b.cents", "combine.balance"}},
	{"octaves", func(r *rand.Rand) synth.Sound {
		s := base(r, 40, 64)
		s.A.Shape, s.B.Shape = synth.Shape(r.IntN(2)), synth.Shape(r.IntN(2))
		s.B.Footage = []float64{4, 2}[r.IntN(2)]
		s.B.Cents = uniform(r, 0.5, 2)
		s.Combine.How, s.Combine.Balance = synth.Mix, uniform(r, -0.4, 0.4)
		return s
	}, []string{"b.footage", "combine.balance"}},
	{"ring", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 69)
		s.A.Shape, s.B.Shape = synth.Shape([]int{0, 4, 1}[r.IntN(3)]), synth.Sine
		s.Combine.How, s.Combine.Ratio = synth.Ring, even(r, 0.4, 5)
		return s
	}, []string{"combine.ratio"}},
	{"am", func(r *rand.Rand) synth.Sound {
		s := base(r, 57, 76)
		s.A.Shape, s.B.Shape = synth.Shape([]int{0, 4}[r.IntN(2)]), synth.Sine
		s.Combine.How, s.Combine.Ratio, s.Combine.Depth = synth.AM, even(r, 0.26, 3), uniform(r, 0.3, 1)
		return s
	}, []string{"combine.ratio", "combine.depth"}},
	{"tremolo", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 69)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Level = even(r, 1, 12), uniform(r, 0.3, 0.9)
		return s
	}, []string{"lfo.hz", "lfo.level"}},
	{"fm", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 60)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, uniform(r, 0.8, 5)
		s.Combine.Ratio = []float64{1, 1, 1.41, 2, 2.7, 3, 3.5}[r.IntN(7)]
		return s
	}, []string{"combine.index", "combine.ratio"}},
	{"bell", func(r *rand.Rand) synth.Sound {
		s := base(r, 48, 67)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, uniform(r, 2, 6)
		s.Combine.Ratio = []float64{1, 1.41, 2.7, 3.5}[r.IntN(4)]
		s.Envelope.Seconds, s.Envelope.Depth = even(r, 0.1, 0.6), 1
		s.Amplitude.Decay, s.Amplitude.Sustain = even(r, 0.8, 2), 0
		return s
	}, []string{"envelope.seconds", "combine.index"}},
	{"sync", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 57)
		s.A.Shape, s.B.Shape = synth.Sawtooth, synth.Shape([]int{0, 1, 3, 4}[r.IntN(4)])
		s.B.Duty = 0.5
		s.Combine.How, s.Combine.Ratio = synth.Sync, even(r, 1.2, 5)
		if s.B.Shape == synth.Pulse {
			s.Combine.Ratio = even(r, 2.2, 5) // below 1.5 a restarted square is a pulse, in every way
		}
		return s
	}, []string{"combine.ratio"}},
	{"sync sweep", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 52)
		s.A.Shape, s.B.Shape = synth.Sawtooth, synth.Sawtooth
		s.Combine.How, s.Combine.Ratio = synth.Sync, even(r, 1.2, 2.2)
		s.Envelope.B, s.Envelope.Seconds = uniform(r, 8, 20), even(r, 0.1, 0.6)
		return s
	}, []string{"envelope.b", "envelope.seconds", "combine.ratio"}},
}
