package synth

import "testing"

// The full voice: both oscillators, LFO, envelope, sync.
func BenchmarkVoice(b *testing.B) {
	const rate = 48000
	for _, c := range []struct {
		name  string
		how   How
		shape Shape
	}{
		{"sawtooth alone", OnlyA, Sawtooth},
		{"sine alone", OnlyA, Sine},
		{"two sawtooths", Mix, Sawtooth},
		{"two pulses", Mix, Pulse},
		{"sync of sawtooths", Sync, Sawtooth},
		{"sync of pulses", Sync, Pulse},
		{"sync of sines", Sync, Sine},
		{"ring of sawtooths", Ring, Sawtooth},
		{"fm of sines", FM, Sine},
		{"fm of pulses", FM, Pulse},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := Default()
			s.A.Shape, s.B.Shape = c.shape, c.shape
			s.B.Cents = 7
			s.Combine.How, s.Combine.Ratio = c.how, 2.5
			s.Seconds = 10
			s.LFO.Duty, s.LFO.Cents, s.LFO.Level = 0.3, 10, 0.2
			s.Envelope.B = 12
			s.Amplitude.Sustain = 0.5
			v := NewVoice(s, rate)
			block := make([]float32, 512)
			for b.Loop() {
				v.Render(block, nil)
				if v.Done() {
					v.start(s)
				}
			}
			seconds := float64(b.N) * float64(len(block)) / rate
			b.ReportMetric(seconds/b.Elapsed().Seconds(), "x-real-time")
			b.ReportMetric(0, "ns/op")
		})
	}
}
