package mark

import (
	"math"
	"testing"
)

// Two tones beat as often as their frequencies differ: 440 Hz + 10 cents at
// 2.548894 Hz (W3C detune formula; identity sin a + sin b), 110 + 8 at 0.509484.
func TestHearBeats(t *testing.T) {
	for _, c := range []struct {
		f0, cents, fainter float64
		count              int
		want               float64
	}{
		{440, 10, 1, 1, 2.548894},
		{440, 10, 1, 20, 2.548894},
		{220, 7, 0.5, 30, 0.891340},
		{110, 8, 0.7, 40, 0.509484},
		{220, 40, 1, 30, 5.142},
	} {
		low := additive(3, c.count, steadyHz(c.f0), still1(saw))
		high := additive(3, c.count, steadyHz(c.f0*math.Exp2(c.cents/1200)), still1(func(n int) float64 { return c.fainter * saw(n) }))
		for i := range low {
			low[i] += high[i]
		}
		h := hear(&kit, low, Rate, 0)
		if h.motion.kind != beats {
			t.Errorf("%v: heard as %s", c, h)
			continue
		}
		within(t, "beats", h.motion.hz, c.want, 0.02*c.want)
		within(t, "fainter tone in dB", 20*math.Log10(h.motion.depth), 20*math.Log10(c.fainter), 1.5)
	}
}

// A level that swings between 1 and 1 - L, as synth.LFO.Level says.
func TestHearTremolo(t *testing.T) {
	for _, c := range []struct{ hz, swing float64 }{{1.2, 0.5}, {4, 0.7}, {7.3, 0.3}, {15, 0.8}} {
		h := hear(&kit, additive(3, 30, steadyHz(196), func(n int, t float64) float64 {
			return saw(n) * (1 - c.swing*(0.5-0.5*math.Cos(2*math.Pi*c.hz*t)))
		}), Rate, 0)
		if h.motion.kind != tremolo {
			t.Errorf("%v: heard as %s", c, h)
			continue
		}
		within(t, "rate", h.motion.hz, c.hz, 0.02*c.hz)
		within(t, "depth", h.motion.depth, c.swing, 0.04)
	}
}

// Vibrato of ±cents, with a straight fade-in, and glides semitones·exp(-t/τ).
func TestHearPitchMovement(t *testing.T) {
	for _, c := range []struct{ hz, cents, fade float64 }{{5.5, 60, 0}, {5.5, 20, 0.6}, {3, 100, 0}, {8, 35, 1}, {6, 200, 0.3}} {
		h := hear(&kit, additive(3, 20, func(n int, t float64) float64 {
			depth := c.cents
			if t < c.fade {
				depth *= t / c.fade
			}
			return float64(n) * 220 * math.Exp2(depth*math.Sin(2*math.Pi*c.hz*t)/1200)
		}, still1(saw)), Rate, 0)
		if !h.vibrato.ok || h.motion.kind == width || h.motion.kind == tremolo {
			t.Errorf("%v: heard as %s", c, h)
			continue
		}
		within(t, "vibrato rate", h.vibrato.hz, c.hz, 0.01*c.hz)
		within(t, "vibrato depth", h.vibrato.cents, c.cents, 0.06*c.cents)
		within(t, "fade-in", h.vibrato.fade, c.fade, 0.12)
	}
	for _, c := range []struct{ semitones, seconds float64 }{{12, 0.1}, {24, 0.06}, {5, 0.3}, {-7, 0.15}, {36, 0.05}} {
		h := hear(&kit, additive(1.5, 12, func(n int, t float64) float64 {
			return float64(n) * 82.4 * math.Exp2(c.semitones*math.Exp(-t/c.seconds)/12)
		}, still1(saw)), Rate, 0)
		if !h.glide.ok {
			t.Errorf("%v: heard as %s", c, h)
			continue
		}
		within(t, "glide in semitones", h.glide.semitones, c.semitones, 0.3+0.04*math.Abs(c.semitones))
		within(t, "time constant", h.glide.seconds, c.seconds, 0.1*c.seconds)
		within(t, "pitch at rest in cents", 1200*math.Log2(h.pitch.hz/82.4), 0, 8)
	}
}

// A level that rises as half a cosine and falls exponentially to where it is
// held, as synth.Amplitude says.
func TestHearLoudness(t *testing.T) {
	for _, c := range []struct{ attack, decay, held float64 }{{0.05, 0.2, 0.3}, {0.4, 0.1, 0.6}, {0.02, 0.5, 0.05}, {1.3, 0.1, 0.5}, {0.1, 1, 0}} {
		h := hear(&kit, additive(2.5, 12, steadyHz(196), func(n int, t float64) float64 {
			if t < c.attack {
				return saw(n) * (0.5 - 0.5*math.Cos(math.Pi*t/c.attack))
			}
			return saw(n) * (c.held + (1-c.held)*math.Exp(-(t-c.attack)/c.decay))
		}), Rate, 0)
		if !h.loudness.ok {
			t.Errorf("%v: heard as %s", c, h)
			continue
		}
		within(t, "attack", h.loudness.attack, c.attack, 0.006+0.05*c.attack)
		within(t, "decay", h.loudness.decay, c.decay, 0.1*c.decay)
		within(t, "level held", h.loudness.held, c.held, 0.03)
	}
}
