package synth

import (
	"math"
	"testing"
)

// pitches follows the phase of a voice and returns its frequency in hertz
// every 10 ms, as the mean over a tick.
func pitchTrack(s Sound, rate float64) []float64 {
	out, cycle := make([]float32, int(s.Seconds*rate)), make([]float32, int(s.Seconds*rate))
	NewVoice(s, rate).Render(out, cycle)
	var hz []float64
	for i := 0; i+16 < len(cycle); i += int(rate / 100) {
		d := 0.0
		for j := i; j < i+16; j++ {
			d += wrap(float64(cycle[j+1]) - float64(cycle[j]))
		}
		hz = append(hz, d/16*rate)
	}
	return hz
}

// at10ms is the middle of the measurement i of pitchTrack in seconds.
func at10ms(i int) float64 { return float64(i)*0.01 + 8/48000.0 }

// The phase is kept in 24 bits: 1.2e-7 cycles over 16 samples are 4e-4 Hz.
const pitchTolerance = 1e-5 // relative, at 220 Hz and more, with some margin

// exp(-t/T) times the semitones, on top of the pitch: the definition.
func TestPitchFallsExponentially(t *testing.T) {
	for _, c := range []struct{ semitones, seconds float64 }{{24, 0.1}, {-12, 0.3}, {48, 0.05}} {
		s := oscillators(OnlyA, Sawtooth, 0.5)
		s.Seconds, s.Envelope.A, s.Envelope.Seconds = 1, c.semitones, c.seconds
		for i, hz := range pitchTrack(s, 48000) {
			want := 220 * math.Exp2(c.semitones/12*math.Exp(-at10ms(i)/c.seconds))
			if math.Abs(hz/want-1) > 1e-4 { // straight lines within a tick, a mean over 16 samples
				t.Fatalf("%+v: %v Hz at %.3f s, want %v", c, hz, at10ms(i), want)
			}
		}
	}
}

// B is swept alone, with the ratio on top.
func TestFallOfB(t *testing.T) {
	s := oscillators(Mix, Sawtooth, 0.5)
	s.Seconds, s.A.Level, s.Envelope.B, s.B.Footage = 0.5, 0, -7, 16
	for i, hz := range pitchTrack(s, 48000) {
		want := 110 * math.Exp2(-7.0/12*math.Exp(-at10ms(i)/s.Envelope.Seconds))
		if math.Abs(hz/want-1) > 1e-4 {
			t.Fatalf("%v Hz at %.3f s, want %v", hz, at10ms(i), want)
		}
	}
}

// The peak deviation of a vibrato is what the description says, in cents to
// either side, at its rate; it grows in a straight line over the fade-in.
func TestVibrato(t *testing.T) {
	for _, c := range []struct {
		shape LFOShape
		wave  func(p float64) float64 // the definitions in doc.go
	}{
		{LFOSine, func(p float64) float64 { return math.Sin(2 * math.Pi * p) }},
		{LFOTriangle, func(p float64) float64 { return 2 / math.Pi * math.Asin(math.Sin(2*math.Pi*p)) }},
		{LFOSawtooth, func(p float64) float64 { return 2*(p-math.Floor(p)) - 1 }},
		{LFOSquare, func(p float64) float64 { return math.Copysign(1, math.Sin(2*math.Pi*p)) }},
	} {
		s := oscillators(OnlyA, Sine, 0.5)
		s.Seconds = 2
		s.LFO = LFO{Shape: c.shape, Hz: 3.3, Cents: 70, Fade: 0.8, Phase: 0.1}
		for i, hz := range pitchTrack(s, 48000) {
			p := 0.1 + 3.3*at10ms(i)
			if jump := math.Mod(p, 0.5); c.shape > LFOTriangle && (jump < 0.005 || jump > 0.495) {
				continue // within a tick of a jump, which takes a tick
			}
			cents := 70 * math.Min(1, at10ms(i)/0.8) * c.wave(p)
			if got := 1200 * math.Log2(hz/220); math.Abs(got-cents) > 0.3 { // a corner is cut by a tick: 4·3.3·70/3000 cents
				t.Fatalf("%v: %.3f cents at %.3f s, want %.3f", c.shape, got, at10ms(i), cents)
			}
		}
	}
}

// envelopeOf returns the amplitude of a sine of 880 Hz over time: the greatest
// sample of each 10 ms.
func envelopeOf(change func(*Sound)) []float64 {
	s := oscillators(OnlyA, Sine, 0.5)
	s.Note = 81
	change(&s)
	x := wide(Render(s, 48000))
	var peaks []float64
	for i := 0; i+480 <= len(x); i += 480 {
		peak := 0.0
		for _, y := range x[i : i+480] {
			peak = math.Max(peak, math.Abs(y))
		}
		peaks = append(peaks, peak)
	}
	return peaks
}

// The level swings between 1 and 1 - depth, the depth growing over the fade-in
// of one second.
func TestLevelSwings(t *testing.T) {
	peaks := envelopeOf(func(s *Sound) {
		s.LFO = LFO{Shape: LFOTriangle, Hz: 1, Level: 0.6, Fade: 1}
		s.Amplitude.Attack = 0.002
	})
	for i := 1; i < 150; i++ {
		p := (float64(i) + 0.5) / 100
		want := 1 - 0.6*math.Min(p, 1)*(1-2/math.Pi*math.Asin(math.Sin(2*math.Pi*p)))/2
		if math.Abs(peaks[i]-want) > 0.015 { // 0.6·4/2 per second over 10 ms, and between samples
			t.Errorf("%.3f at %.2f s, want %.3f", peaks[i], p, want)
		}
	}
}

// Raised-cosine attack, exponential decay to the sustained level, raised-cosine
// release: the definitions in sound.go.
func TestAmplitudeEnvelope(t *testing.T) {
	a := Amplitude{Attack: 0.2, Decay: 0.15, Sustain: 0.4, Release: 0.3}
	peaks := envelopeOf(func(s *Sound) { s.Seconds, s.Amplitude = 1, a })
	for i, got := range peaks {
		at := float64(i) / 100
		want := func(x float64) float64 {
			switch {
			case x < 0.2:
				return (1 - math.Cos(math.Pi*x/0.2)) / 2
			case x < 1:
				return 0.4 + 0.6*math.Exp(-(x-0.2)/0.15)
			}
			return (0.4 + 0.6*math.Exp(-(x-0.2)/0.15)) * (1 + math.Cos(math.Pi*(x-1)/0.3)) / 2
		}
		low, high := math.Min(want(at), want(at+0.01)), math.Max(want(at), want(at+0.01))
		if got < low-0.01 || got > high+0.005 { // between two samples of the sine: 0.7 %
			t.Errorf("%.4f at %.2f s, want %.4f to %.4f", got, at, low, high)
		}
	}
}

// The share of the modulation depth that falls away: a frequency modulation
// whose index falls to half, read from the first sideband over the carrier.
func TestModulationFalls(t *testing.T) {
	s := oscillators(FM, Sine, 0.5)
	s.Note, s.Combine.Ratio, s.Combine.Index, s.Seconds = 93, 0.25, 1.2, 2
	s.Envelope.Depth, s.Envelope.Seconds = 0.5, 0.4
	x := wide(Render(s, 48000))
	for _, at := range []float64{0.1, 0.4, 1, 1.8} {
		const n = 1536 // 32 ms, 14 periods of the modulator
		from := int(at*48000) - n/2
		carrier, side := amplitude(x[from:from+n], 1760/48000.0), amplitude(x[from:from+n], 2200/48000.0)
		index := 1.2 * (1 - 0.5*(1-math.Exp(-at/0.4)))
		want := math.J1(index) / math.J0(index)
		if got := side / carrier; math.Abs(got/want-1) > 0.01 { // the index moves by 0.04 within the window
			t.Errorf("at %v s: %.4f, want %.4f", at, got, want)
		}
	}
}
