package synth

import (
	"math"
	"math/rand/v2"
	"testing"
)

// checkSane fails unless every sample is a number within full scale and every
// phase within [0, 1).
func checkSane(t *testing.T, what any, out, cycle []float32) {
	t.Helper()
	for i, x := range out {
		if !(math.Abs(float64(x)) <= 1) {
			t.Fatalf("%+v: sample %d is %v", what, i, x)
		}
	}
	for i, p := range cycle {
		if !(p >= 0 && p < 1) {
			t.Fatalf("%+v: phase %d is %v", what, i, p)
		}
	}
}

// play renders some of a voice, moves it to another sound, and renders on.
func play(t *testing.T, first, second Sound, rate float64) {
	t.Helper()
	out, cycle := make([]float32, 1500), make([]float32, 1500)
	v := NewVoice(first, rate)
	for range 2 {
		v.Render(out, cycle)
		checkSane(t, first, out, cycle)
		v.Set(second)
		v.Render(out[:333], cycle[:333])
		checkSane(t, second, out[:333], cycle[:333])
	}
	v.Release()
	v.Render(out, cycle)
	checkSane(t, second, out, cycle)
}

var hostile = []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, 1e300, -1e9, 0, math.SmallestNonzeroFloat64, math.Copysign(0, -1)}

func TestHostileSoundsAreHarmless(t *testing.T) {
	for _, bad := range hostile {
		for _, f := range Fields() {
			s := busy(FM)
			f.Set(&s, bad)
			play(t, s, busy(Sync), 48000)
			play(t, busy(Ring), s, 44100)
		}
		all := Default()
		for _, f := range Fields() {
			f.Set(&all, bad)
		}
		all.A.Shape, all.B.Shape, all.LFO.Shape, all.Combine.How = -1, 99, math.MaxInt, math.MinInt
		for _, rate := range []float64{48000, bad} {
			play(t, all, all, rate)
		}
	}
}

// Random sounds within the ranges, with every field at an end of its range in
// half of the cases: the loudest and fastest there is.
func TestExtremeSoundsStayWithinFullScale(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	sound := func() Sound {
		s := Default()
		for _, f := range Fields() {
			x := random.Float64()
			if random.IntN(2) == 0 {
				x = math.Round(x)
			}
			f.Set(&s, f.Clamp(f.Min+x*(f.Max-f.Min)))
		}
		return s
	}
	for range 300 {
		play(t, sound(), sound(), rates[random.IntN(2)])
	}
}

// The loudest there is: two narrow pulses in ring and amplitude modulation,
// with the LFO on their duty.
func TestLoudestSoundStaysWithinFullScale(t *testing.T) {
	for _, how := range hows {
		for _, character := range []float64{0, 1} {
			s := oscillators(how, Pulse, 0.03)
			s.Character, s.LFO.Duty, s.LFO.Hz, s.Seconds = character, 0.05, 20, 1
			out := Render(s, 48000)
			checkSane(t, how, out, nil)
			m := NewMeter(48000)
			m.Write(out)
			t.Logf("%v, character %v: peak %.3f", how, character, m.Peak())
		}
	}
}
