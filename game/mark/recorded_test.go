package mark_test

import (
	"math"

	"partialcredit/synth"
)

// recorded is a sound as a recording of it would be: at 44.1 kHz with 16 bits,
// after half a second of noise at -60 dB, at another level and from other start
// phases.
func recorded(s synth.Sound, gain float64) (samples []float32, rate float64) {
	rate = 44100
	s.A.Phase, s.B.Phase, s.LFO.Phase = 0.31, 0.77, 0.43
	return onTape(synth.Render(s, rate), rate, gain), rate
}

func onTape(note []float32, rate, gain float64) []float32 {
	out := make([]float32, int(0.5*rate)+len(note)+int(0.4*rate))
	copy(out[int(0.5*rate):], note)
	top := float32(0)
	for _, v := range out {
		top = max(top, v, -v)
	}
	dice := uint32(1)
	for i, v := range out {
		noise := 0.0
		for range 2 {
			dice = dice*1664525 + 1013904223
			noise += float64(dice)/(1<<32) - 0.5
		}
		x := float64(v/top)*gain + 0.001*math.Sqrt(6)*noise
		out[i] = float32(math.Round(x*32768) / 32768)
	}
	return out
}

// again is the same sound, recorded from yet other phases and at 48 kHz.
func again(s synth.Sound) []float32 {
	s.A.Phase, s.B.Phase, s.LFO.Phase = 0.6, 0.15, 0.9
	return onTape(synth.Render(s, 48000), 48000, 0.3)
}
