// Package speed measures how fast the voice renders. It is a package of its own so that the same
// can run natively and as WebAssembly.
package speed

import (
	"time"

	"partialcredit/synth"
)

// A Result is how many times faster than it sounds a voice is rendered.
type Result struct {
	Name  string
	Times float64
}

// rate is the sample rate in hertz.
const rate = 48000

// voices are what is measured: everything moves in each of them. The first is what issue 3 calls
// the full voice.
var voices = []struct {
	name  string
	how   synth.How
	shape synth.Shape
}{
	{"sync of sawtooths", synth.Sync, synth.Sawtooth},
	{"sync of pulses", synth.Sync, synth.Pulse},
	{"sync of sines", synth.Sync, synth.Sine},
	{"one sawtooth", synth.OnlyA, synth.Sawtooth},
	{"two sawtooths", synth.Mix, synth.Sawtooth},
	{"two pulses", synth.Mix, synth.Pulse},
	{"ring modulation of sawtooths", synth.Ring, synth.Sawtooth},
	{"fm of sines", synth.FM, synth.Sine},
	{"fm of pulses", synth.FM, synth.Pulse},
}

// turns is how often each voice is measured.
const turns = 40

// Measure renders each voice forty times for a fortieth of so many seconds and returns the best:
// what else runs on the machine can only slow it down.
func Measure(seconds float64) []Result {
	var results []Result
	for _, voice := range voices {
		s := synth.Default()
		s.A.Shape, s.B.Shape = voice.shape, voice.shape
		s.B.Cents, s.Combine.How, s.Combine.Ratio = 7, voice.how, 2.5
		s.LFO.Duty, s.LFO.Cents, s.LFO.Level = 0.3, 10, 0.2
		s.Envelope.B, s.Amplitude.Sustain, s.Seconds = 12, 0.5, 10
		best := 0.0
		for range turns {
			best = max(best, times(s, seconds/turns))
		}
		results = append(results, Result{voice.name, best})
	}
	return results
}

// times renders notes of s for so many seconds of time.
func times(s synth.Sound, seconds float64) float64 {
	block := make([]float32, 512)
	v := synth.NewVoice(s, rate)
	samples, start := 0, time.Now()
	for {
		for range 16 {
			v.Render(block, nil)
			samples += len(block)
		}
		if v.Done() {
			v = synth.NewVoice(s, rate)
		}
		if passed := time.Since(start).Seconds(); passed >= seconds {
			return float64(samples) / rate / passed
		}
	}
}
