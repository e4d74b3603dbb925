package take

import (
	"math"
	"testing"

	"partialcredit/synth"
)

const rate = 48000

func sawtooth(k int) float64 { return 1 / float64(k) }

func note(number, seconds float64) []float32 {
	return series(sawtooth, 440*math.Exp2((number-69)/12), seconds, rate)
}

func join(parts ...[]float32) (all []float32) {
	for _, p := range parts {
		all = append(all, p...)
	}
	return
}

func add(parts ...[]float32) []float32 {
	out := make([]float32, len(parts[0]))
	for _, p := range parts {
		for i, v := range p {
			out[i] += v
		}
	}
	return out
}

func gain(x []float32, by float64) []float32 {
	out := make([]float32, len(x))
	for i, v := range x {
		out[i] = v * float32(by)
	}
	return out
}

// rounded has so many bits.
func rounded(x []float32, bits int) []float32 {
	full := math.Ldexp(1, bits-1)
	out := make([]float32, len(x))
	for i, v := range x {
		out[i] = float32(math.Max(-full, math.Min(full-1, math.Round(float64(v)*full))) / full)
	}
	return out
}

func white(seconds, rms float64) []float32 {
	d := dice(3)
	x := make([]float32, int(seconds*rate))
	for i := range x {
		x[i] = float32(rms * d.normal())
	}
	return x
}

// pink is white noise through the filter of P. Kellet (posted 1999, from memory),
// -3 dB an octave within 0.05 dB above 9 Hz at 44.1 kHz.
func pink(seconds, rms float64) []float32 {
	pole := []float64{0.99886, 0.99332, 0.96900, 0.86650, 0.55000, -0.7616}
	feed := []float64{0.0555179, 0.0750759, 0.1538520, 0.3104856, 0.5329522, -0.0168980}
	var b [6]float64
	last := 0.0
	x := white(seconds, 1)
	for i, w := range x {
		v := float64(w)
		sum := last + v*0.5362
		for k := range b {
			b[k] = pole[k]*b[k] + v*feed[k]
			sum += b[k]
		}
		last = v * 0.115926
		x[i] = float32(sum * rms / 4)
	}
	return x
}

// brown is a random walk that leaks at 5 Hz.
func brown(seconds, rms float64) []float32 {
	x := white(seconds, 1)
	sum := 0.0
	for i, w := range x {
		sum += float64(w) - sum*2*math.Pi*5/rate
		x[i] = float32(sum * rms / 30)
	}
	return x
}

func sound(t *testing.T, description string) []float32 {
	t.Helper()
	s, err := synth.Parse([]byte(`{"version": 1, "seconds": 2, ` + description + `}`))
	if err != nil {
		t.Fatal(err)
	}
	return gain(synth.Render(s, rate), 0.3)
}

func sineOf(hz, seconds, amplitude float64) []float32 {
	return gain(series(func(k int) float64 { return map[bool]float64{true: 1}[k == 1] }, hz, seconds, rate), amplitude*math.Sqrt2/0.2)
}

// What a recordist is told, and what is let through.
func TestRecordings(t *testing.T) {
	nothing := make([]float32, rate/2)
	for _, c := range []struct {
		name string
		x    []float32
		want error
	}{
		{"a note", between(note(57, 1), rate, 0), nil},
		{"a note with hiss", between(note(57, 1), rate, 0.001), nil},
		{"a note with mains hum at -40 dB", add(between(note(57, 1), rate, 0), sineOf(50, 1.6, 0.001)), nil},
		{"a note on DC", add(between(note(57, 1), rate, 0), dc(1.6, 0.2)), nil},
		{"a note cut at both ends", note(57, 1)[2000:40000], nil},
		{"a low note", between(note(24, 1.5), rate, 0.001), nil},
		{"a high note", between(note(96, 1), rate, 0.001), nil},
		{"a short note", between(note(57, 0.15), rate, 0.0005), nil},

		{"nothing", nil, ErrSilence},
		{"zeros", nothing, ErrSilence},
		{"DC", dc(1, 0.5), ErrSilence},
		{"hiss at -70 dB", white(1, 0.0003), ErrSilence},
		{"a note at -70 dB", between(gain(note(57, 1), 0.003), rate, 0), ErrSilence},

		{"white noise", white(2, 0.1), ErrNoise},
		{"pink noise", pink(2, 0.1), ErrNoise},
		{"brown noise", brown(2, 0.1), ErrNoise},
		{"white noise for a moment", between(white(0.3, 0.1), rate, 0), ErrNoise},
		{"pink noise for a moment", between(pink(0.3, 0.1), rate, 0), ErrNoise},
		{"a note under as much noise", between(note(57, 1), rate, 0.2), ErrNoise},

		{"a sine clipped by 1 dB", rounded(between(sineOf(220, 1, 1.12), rate, 0), 16), ErrClipped},
		{"a sine clipped by 12 dB", rounded(between(sineOf(220, 1, 4), rate, 0), 24), ErrClipped},
		{"a sawtooth clipped by 3 dB", rounded(between(gain(note(45, 1), 8), rate, 0), 16), ErrClipped},
		{"a low sine just below full scale", rounded(between(sineOf(32.7, 1, 0.9999), rate, 0), 16), nil},
		{"a low sine of 8 bits just below full scale", rounded(between(sineOf(32.7, 1, 0.995), rate, 0), 8), nil},
		{"a square of two levels at full scale", rounded(between(square(110, 1), rate, 0), 16), nil},

		{"a click", between(note(57, 0.03), rate, 0), ErrShort},
		{"two notes with a rest", join(nothing, note(57, 0.7), nothing, note(60, 0.7), nothing), ErrSeveral},
		{"the same note twice with a rest", join(nothing, note(57, 0.7), nothing, note(57, 0.7), nothing), ErrSeveral},
		{"two notes bound", join(nothing, note(57, 0.7), note(60, 0.7), nothing), ErrSeveral},
		{"a semitone", join(nothing, note(57, 0.7), note(58, 0.7), nothing), ErrSeveral},
		{"two sines bound", join(nothing, sineOf(220, 0.7, 0.3), sineOf(330, 0.7, 0.3), nothing), ErrSeveral},
		{"a scale", join(nothing, note(57, 0.3), note(59, 0.3), note(61, 0.3), note(62, 0.3), nothing), ErrSeveral},
		{"a minor third", between(add(note(57, 1), note(60, 1)), rate, 0.001), ErrSeveral},
		{"a tritone", between(add(note(57, 1), note(63, 1)), rate, 0.001), ErrSeveral},
		{"a major triad", between(add(note(57, 1), note(61, 1), note(64, 1)), rate, 0.001), ErrSeveral},
		{"a tempered fifth of squares", between(add(squares(57, 2), squares(64, 2)), rate, 0.001), ErrSeveral},

		// One sound, however it moves.
		{"beats", sound(t, `"combine": {"how": "mix"}, "b": {"cents": 12}`), nil},
		{"wide beats", sound(t, `"combine": {"how": "mix"}, "a": {"cents": -80}, "b": {"cents": 90}`), nil},
		{"an octave a little out", sound(t, `"combine": {"how": "mix"}, "b": {"footage": 4, "cents": 12}`), nil},
		{"vibrato", sound(t, `"lfo": {"hz": 6, "cents": 100}`), nil},
		{"a wide slow vibrato", sound(t, `"lfo": {"hz": 1, "cents": 1200}`), nil},
		{"a vibrato of the shape of a square", sound(t, `"lfo": {"shape": "square", "hz": 4, "cents": 100}`), nil},
		{"a siren of the shape of a sawtooth", sound(t, `"lfo": {"shape": "sawtooth", "hz": 3, "cents": 700}`), nil},
		{"a fall of the pitch", sound(t, `"envelope": {"seconds": 0.05, "a": 36}`), nil},
		{"a slow fall of the pitch", sound(t, `"envelope": {"seconds": 1, "a": 24}`), nil},
		{"a moving duty", sound(t, `"a": {"shape": "pulse"}, "lfo": {"hz": 1, "duty": 0.45}`), nil},
		{"a fast moving duty", sound(t, `"note": 45, "a": {"shape": "pulse", "duty": 0.3}, "lfo": {"hz": 12, "duty": 0.2}`), nil},
		{"tremolo", sound(t, `"lfo": {"hz": 5, "level": 1}`), nil},
		{"tremolo of the shape of a square", sound(t, `"lfo": {"shape": "square", "hz": 4, "level": 1}`), nil},
		{"ring modulation", sound(t, `"combine": {"how": "ring", "ratio": 2.37}, "a": {"shape": "sine"}, "b": {"shape": "sine"}`), nil},
		{"ring modulation of bright waves", sound(t, `"combine": {"how": "ring", "ratio": 1.37}`), nil},
		{"amplitude modulation", sound(t, `"combine": {"how": "am", "ratio": 0.62, "depth": 1}`), nil},
		{"frequency modulation", sound(t, `"combine": {"how": "fm", "ratio": 1.41, "index": 8}, "a": {"shape": "sine"}, "b": {"shape": "sine"}`), nil},
		{"frequency modulation of bright waves", sound(t, `"combine": {"how": "fm", "ratio": 3.7, "index": 5}`), nil},
		{"sync, swept", sound(t, `"combine": {"how": "sync", "ratio": 1.5}, "envelope": {"seconds": 0.5, "b": 30}`), nil},
		{"a bell", sound(t, `"combine": {"how": "fm", "ratio": 3.5, "index": 5}, "envelope": {"seconds": 0.4, "depth": 1}, "amplitude": {"decay": 0.5, "sustain": 0}`), nil},
		{"an old circuit", sound(t, `"character": 1`), nil},
	} {
		k, err := Find(c.x, rate)
		if err != c.want {
			t.Errorf("%s: got %v, want %v", c.name, err, c.want)
		}
		if (k == nil) == (err == nil) {
			t.Errorf("%s: %v and %v", c.name, k, err)
		}
	}
}

func dc(seconds, level float64) []float32 {
	x := make([]float32, int(seconds*rate))
	for i := range x {
		x[i] = float32(level)
	}
	return x
}

func square(hz, seconds float64) []float32 {
	x := make([]float32, int(seconds*rate))
	for i := range x {
		x[i] = 1
		if math.Mod(float64(i)*hz/rate, 1) > 0.5 {
			x[i] = -1
		}
	}
	return x
}

func squares(number, seconds float64) []float32 {
	return series(waves[1].partial, 440*math.Exp2((number-69)/12), seconds, rate)
}
