package synth

import (
	"math"
	"testing"
)

// splatter returns the energy above 6 kHz in dB under the whole, through the
// window, of the 2048 samples about a move after 3600 samples. What it is more
// than that of either sound is a click or zipper noise.
func splatter(from, to Sound, moves int) float64 {
	const rate, start, length = 48000, 3600, 2048
	x := make([]float32, start+length)
	v := NewVoice(from, rate)
	v.Render(x[:start], nil)
	for i := range moves { // a hand on a control: some moves, 10 ms apart
		step := from
		for _, f := range Fields() {
			a, b := f.Get(&from), f.Get(&to)
			if glides(&f) {
				a += (b - a) * float64(i+1) / float64(moves)
			} else {
				a = b
			}
			f.Set(&step, a)
		}
		v.Set(step)
		v.Render(x[start+480*i:start+480*(i+1)], nil)
	}
	v.Render(x[start+480*moves:], nil)
	c := spectrum(blackmanHarris(wide(x[start-length/2 : start+length/2])))
	whole, high := 0.0, 0.0
	for k := range c {
		e := real(c[k])*real(c[k]) + imag(c[k])*imag(c[k])
		whole += e
		if k*rate/length > 6000 {
			high += e
		}
	}
	return powerDecibels(high / whole)
}

// Every control, moved over its whole range at once and in steps as by a hand.
// Without gliding the energy above 6 kHz is at -30 to -60 dB. The bounds are
// ours: 70 dB under the sound, where what the window leaves is -92; and where
// one of the two sounds has more up there by itself (sync), 6 dB above that.
func TestMovesDoNotClick(t *testing.T) {
	for _, how := range hows {
		base := oscillators(how, Sine, 0.5)
		base.Note, base.B.Cents, base.Combine.Ratio, base.Seconds = 57, 3, 1.5, 2
		base.LFO = LFO{Shape: LFOSine, Hz: 4, Cents: 30, Level: 0.2}
		base.Combine.Index = 2
		for _, f := range Fields() {
			switch f.Name {
			case "a.shape", "b.shape": // the others have partials of their own
				continue
			case "combine.ratio":
				if how == Sync { // on the way the resets cut deeper than at either end
					continue
				}
			}
			for _, moves := range []int{1, 3} {
				to := base
				end := f.Max
				if f.Get(&base) == f.Max {
					end = f.Min
				}
				switch f.Name {
				case "note":
					end = 69
				case "a.footage", "b.footage":
					end = 3
				case "combine.ratio":
					end = 3
				case "combine.index":
					end = 4
				case "combine.how":
					end = float64((how + 1) % 6)
				case "envelope.a", "envelope.b":
					end = 48
				case "seconds":
					end = 0.1 // the release starts early
				case "amplitude.attack", "amplitude.release":
					end = 0.3
				}
				f.Set(&to, end)
				e := splatter(base, to, moves)
				if e <= -70 {
					continue
				}
				if own := math.Max(splatter(base, base, 1), splatter(to, to, 1)); e > own+6 {
					t.Errorf("%v: %s to %v in %d moves: %.1f dB, by itself %.1f", how, f.Name, end, moves, e, own)
				}
			}
		}
	}
}

// A shape goes over without a jump: no difference between neighbouring samples
// exceeds what the steeper of the two shapes has by itself.
func TestShapesGoOverWithoutAJump(t *testing.T) {
	steepest := func(x []float32) float64 {
		worst := 0.0
		for i := 1; i < len(x); i++ {
			worst = math.Max(worst, math.Abs(float64(x[i]-x[i-1])))
		}
		return worst
	}
	for a := Triangle; a <= Sine; a++ {
		for b := Triangle; b <= Sine; b++ {
			s := oscillators(OnlyA, a, 0.3)
			v := NewVoice(s, 48000)
			x := make([]float32, 9600)
			v.Render(x[:4800], nil)
			s.A.Shape = b
			v.Set(s)
			v.Render(x[4800:], nil)
			before, during, after := steepest(x[2400:4800]), steepest(x[4800:6400]), steepest(x[7200:])
			if during > 1.02*math.Max(before, after) {
				t.Errorf("%v to %v: a jump of %v, on its own at most %v", a, b, during, math.Max(before, after))
			}
		}
	}
}

// After the glide the voice sounds as if it had been there from the start.
func TestMovesArrive(t *testing.T) {
	from, to := oscillators(Mix, Sawtooth, 0.5), oscillators(Sync, Pulse, 0.2)
	to.Note, to.A.Footage, to.B.Level, to.Combine.Ratio = 60, 4, 0.5, 2.3
	v := NewVoice(from, 48000)
	x := make([]float32, 24000)
	v.Render(x[:4800], nil)
	v.Set(to)
	v.Render(x, nil)
	want := make([]float32, len(x))
	NewVoice(to, 48000).Render(want, nil)
	hz, _ := to.Hz()
	for n := 1.0; n < 6; n++ {
		got, want := amplitude(wide(x[8000:]), n*hz/48000), amplitude(wide(want[8000:]), n*hz/48000)
		checkAmplitude(t, "partial", got, want, 0.05, 0)
	}
}

// A note starts and ends without a click: the attack and release of a low
// sine leave nothing above 6 kHz. Bounds ours, as above; the shortest attack
// of 2 ms is a quick tap and has some.
func TestStartAndEndDoNotClick(t *testing.T) {
	for _, c := range []struct{ attack, release, bound float64 }{{0.002, 0.005, -60}, {0.01, 0.03, -75}} {
		s := oscillators(OnlyA, Sine, 0.5)
		s.Note, s.Seconds, s.A.Phase = 57, 0.2, 0.25
		s.Amplitude.Attack, s.Amplitude.Release = c.attack, c.release
		x := append(make([]float64, 4800), wide(Render(s, 48000))...)
		x = append(x, make([]float64, 32768-len(x))...)
		sp := spectrum(x)
		whole, _ := energies(sp, 1, 24000, 48000)
		low, _ := energies(sp, 1, 6000, 48000)
		if e := powerDecibels((whole - low) / whole); e > c.bound {
			t.Errorf("attack %v, release %v: %.1f dB above 6 kHz", c.attack, c.release, e)
		}
	}
}
