package mark

import (
	"math"
	"testing"
)

// A steady pitch is heard to half a cent, whatever the partials; also where the
// first is missing.
func TestHearPitch(t *testing.T) {
	for _, c := range []struct {
		name      string
		f0        float64
		count     int
		amplitude func(n int) float64
	}{
		{"sawtooth 110", 110, 60, saw},
		{"sawtooth 61.7", 61.7, 90, saw},
		{"sine 440", 440, 1, saw},
		{"square 329.6", 329.63, 30, func(n int) float64 { return b2f(n%2 == 1) / float64(n) }},
		{"missing fundamental 220", 220, 12, func(n int) float64 { return b2f(n > 2) / float64(n) }},
		{"lower octave 20 dB down", 220, 20, func(n int) float64 { return (b2f(n%2 == 0) + 0.1*b2f(n%2 == 1)) / float64(n) }},
		{"sawtooth 1318", 1318.51, 16, saw},
	} {
		h := hear(&kit, additive(2, c.count, steadyHz(c.f0), still1(c.amplitude)), Rate, 0)
		if !h.pitch.ok {
			t.Errorf("%s: no pitch", c.name)
			continue
		}
		within(t, c.name+" in cents", 1200*math.Log2(h.pitch.hz/c.f0), 0, 0.5)
		if h.glide.ok || h.vibrato.ok || h.motion.kind != still {
			t.Errorf("%s: something moves: %s", c.name, h)
		}
	}
}

// Shapes by their closed forms (sound.md 1.1 and 1.2): pulse partials
// |sin πnd|/n with nulls at n = m/d, the synced sawtooth |σ + S[n]|/n.
func TestHearShape(t *testing.T) {
	pulseOf := func(d float64) func(int) float64 {
		return func(n int) float64 { return math.Abs(math.Sin(math.Pi*float64(n)*d)) / float64(n) }
	}
	for _, c := range []struct {
		name      string
		amplitude func(n int) float64
		family    family
		value     float64
		tolerance float64
	}{
		{"sine", func(n int) float64 { return b2f(n == 1) }, sine, 0, 0},
		{"triangle", func(n int) float64 { return b2f(n%2 == 1) / float64(n*n) }, triangle, 0, 0},
		{"sawtooth", saw, sawtooth, 0, 0},
		{"half", pulseOf(0.5), pulse, 0.5, 0.002},
		{"quarter", pulseOf(0.25), pulse, 0.25, 0.002},
		{"three quarters", pulseOf(0.75), pulse, 0.25, 0.002},
		{"tenth", pulseOf(0.1), pulse, 0.1, 0.002},
		{"0.37", pulseOf(0.37), pulse, 0.37, 0.002},
		{"sync 2.5", syncedSaw(2.5), synced, 2.5, 0.01},
		{"sync 3.7", syncedSaw(3.7), synced, 3.7, 0.015},
		{"fm index 1", func(n int) float64 { return math.Abs(math.Jn(n-1, 1) - math.Jn(-n-1, 1)) }, indexed, 1, 0.02},
		{"fm index 3", func(n int) float64 { return math.Abs(math.Jn(n-1, 3) - math.Jn(-n-1, 3)) }, indexed, 3, 0.02},
	} {
		h := hear(&kit, additive(1.5, 60, steadyHz(164.8), still1(c.amplitude)), Rate, 0)
		if !h.shape.ok || h.shape.family != c.family {
			t.Errorf("%s is heard as %s", c.name, h)
			continue
		}
		within(t, c.name, h.shape.value, c.value, c.tolerance)
	}
}

// syncedSaw is the closed form of the synced sawtooth (sound.md 1.2), with which
// the gating sum of the templates must agree.
func syncedSaw(r float64) func(int) float64 {
	k := math.Ceil(r) - 1
	return func(n int) float64 {
		re, im := r-k, 0.0
		for j := 1.0; j <= k; j++ {
			s, c := math.Sincos(2 * math.Pi * float64(n) * j / r)
			re, im = re+c, im-s
		}
		return 2 / (math.Pi * float64(n)) * math.Hypot(re, im)
	}
}

func TestSyncedAmplitudes(t *testing.T) {
	for _, r := range []float64{1.5, 2.5, 3.7} {
		for n := 1; n <= 16; n++ {
			within(t, "synced sawtooth", 2*syncedAmplitudes(r, sawSeries)(n), syncedSaw(r)(n), 0.006) // the sum is cut at 60 terms
		}
	}
	// Computed in sound.md 1.2.
	for i, want := range []float64{0.303152, 0.707355, 0.578745, 0.163236} {
		within(t, "synced sine 2.5", 2*syncedAmplitudes(2.5, sineSeries)(i+1), want, 1e-5)
	}
}

// Lines of products (sound.md 1.3): ring 440 x 300 has 140 and 740 Hz and no
// carrier, amplitude modulation sidebands of m/2.
func TestHearTones(t *testing.T) {
	tones := func(lines map[float64]float64) []float32 {
		x := make([]float32, 2*Rate)
		for hz, a := range lines {
			y := additive(2, 1, steadyHz(hz), still1(func(int) float64 { return a }))
			for i := range x {
				x[i] += y[i]
			}
		}
		return x
	}
	h := hear(&kit, tones(map[float64]float64{140: 0.5, 740: 0.5}), Rate, 440)
	if h.tones.how != ringed || !h.tones.ok {
		t.Errorf("ring: heard as %s", h)
	}
	within(t, "ring", h.tones.b, 300, 0.5)
	h = hear(&kit, tones(map[float64]float64{440: 1, 440 - 272.8: 0.4, 440 + 272.8: 0.4}), Rate, 440)
	if h.tones.how != modulated || !h.tones.ok {
		t.Errorf("am: heard as %s", h)
	}
	within(t, "am", h.tones.b, 272.8, 0.5)
	within(t, "am sidebands, m/2", h.tones.pair/h.tones.carrier, 0.4, 0.01)
	fm := map[float64]float64{}
	for n := -6; n <= 6; n++ {
		fm[math.Abs(220+float64(n)*311)] += math.Jn(n, 2)
	}
	h = hear(&kit, tones(fm), Rate, 220)
	if h.tones.how != spread || !h.tones.ok {
		t.Errorf("fm: heard as %s", h)
	}
	within(t, "fm", h.tones.b, 311, 0.5)
}

func TestSilence(t *testing.T) {
	silence, sound := hear(&kit, make([]float32, Rate), Rate, 0), hear(&kit, additive(1, 10, steadyHz(220), still1(saw)), Rate, 0)
	for _, c := range []struct {
		target, yours *heard
		want          string
	}{{sound, silence, "Yours is silent."}, {silence, sound, "The target is silent; yours is not."}} {
		if r := reasons(c.target, c.yours); len(r) != 1 || r[0].Text.String() != c.want {
			t.Errorf("%v, want %q", r, c.want)
		}
	}
	if r := reasons(silence, silence); len(r) != 0 {
		t.Error(r)
	}
	for _, x := range [][]float32{nil, {1}, make([]float32, 10), {float32(math.NaN()), 1, 0}} {
		if h := hear(&kit, x, Rate, 0); !h.silent {
			t.Errorf("%v is heard", x)
		}
	}
}
