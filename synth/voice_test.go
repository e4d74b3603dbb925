package synth

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// busy is a sound in which everything moves.
func busy(how How) Sound {
	s := oscillators(how, Pulse, 0.3)
	s.B.Shape, s.B.Cents, s.Combine.Ratio = Triangle, 7, 1.5
	s.LFO = LFO{Shape: LFOTriangle, Hz: 6, Duty: 0.2, Cents: 40, Level: 0.4, Fade: 0.1}
	s.Envelope = Envelope{Seconds: 0.1, A: 5, B: 12, Depth: 0.5}
	s.Amplitude = Amplitude{Attack: 0.01, Decay: 0.2, Sustain: 0.5, Release: 0.05}
	s.Character, s.Seconds = 0.5, 0.3
	return s
}

var hows = []How{OnlyA, Mix, Ring, AM, FM, Sync}

func TestAnySplitGivesTheSameBits(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for _, how := range hows {
		for _, rate := range rates {
			s := busy(how)
			whole, cycle := make([]float32, 20000), make([]float32, 20000)
			NewVoice(s, rate).Render(whole, cycle)
			split, splitCycle := make([]float32, len(whole)), make([]float32, len(whole))
			v := NewVoice(s, rate)
			for i := 0; i < len(split); {
				n := min(random.IntN(200), len(split)-i)
				if random.IntN(2) == 0 {
					v.Render(split[i:i+n], splitCycle[i:i+n])
				} else {
					v.Render(split[i:i+n], nil)
					copy(splitCycle[i:i+n], cycle[i:])
				}
				i += n
			}
			if !slices.Equal(whole, split) || !slices.Equal(cycle, splitCycle) {
				t.Errorf("%v at %v Hz: another split, other bits", how, rate)
			}
			if got := Render(s, rate); !slices.Equal(got, whole[:len(got)]) {
				t.Errorf("%v at %v Hz: Render gives other bits than a Voice", how, rate)
			}
		}
	}
}

func TestRenderAllocatesNothing(t *testing.T) {
	block, cycle := make([]float32, 480), make([]float32, 480)
	for _, how := range hows {
		s := busy(how)
		s.Seconds = 10
		v := NewVoice(s, 48000)
		shape := 0
		if n := testing.AllocsPerRun(50, func() {
			shape++
			s.A.Shape, s.B.Duty = Shape(shape%5), 0.1+0.01*float64(shape%50)
			v.Set(s)
			v.Render(block, cycle)
		}); n != 0 {
			t.Errorf("%v: %v allocations for a block", how, n)
		}
	}
}

func TestSeedRepeatsExactlyAndCharacterZeroIgnoresIt(t *testing.T) {
	of := func(character, seed float64) []float32 {
		s := oscillators(Mix, Sawtooth, 0.5)
		s.Seconds, s.Character, s.Seed = 0.5, character, seed
		return Render(s, 48000)
	}
	if !slices.Equal(of(1, 7), of(1, 7)) {
		t.Error("the same seed gives another sound")
	}
	if slices.Equal(of(1, 7), of(1, 8)) {
		t.Error("another seed gives the same sound")
	}
	if !slices.Equal(of(0, 7), of(0, 8)) {
		t.Error("the seed matters without character")
	}
}

// With character the shapes are bent, and still free of aliases; the pitch
// stays within the wander.
func TestCharacter(t *testing.T) {
	for _, shape := range []Shape{Triangle, Sawtooth, FallingSawtooth, Pulse, Sine} {
		p, hz := coherent(1760, 48000, fftLength)
		s := oscillators(OnlyA, shape, 0.3)
		exact := spectrum(steady(s, 48000, hz, 0, fftLength))
		s.Character = 1
		bent := spectrum(steady(s, 48000, hz, 0, fftLength))
		signal, alias := energies(bent, p, 20000, 48000)
		if a := powerDecibels(alias / signal); !(a < -100) { // as without character
			t.Errorf("%v: aliases at %.1f dB", shape, a)
		}
		if e := errorBelow(bent, exact, 20000, 48000); !(e > -40 && e < -10) { // own choice: a little
			t.Errorf("%v: bent by %.1f dB", shape, e)
		}
	}
	s := oscillators(Sync, Sine, 0.5)
	s.Combine.Ratio, s.Character = 2.4, 1
	p, hz := coherent(1760, 48000, fftLength)
	signal, alias := energies(spectrum(steady(s, 48000, hz, hz, fftLength)), p, 20000, 48000)
	if a := powerDecibels(alias / signal); !(a < -100) {
		t.Errorf("synced sine: aliases at %.1f dB", a)
	}
	low, high := 0.0, 0.0
	for _, w := range newWanders(1) {
		for i := range 1000 {
			c := w.cents(float64(i) / 10)
			low, high = math.Min(low, c), math.Max(high, c)
		}
	}
	if low < -wanderCents || high > wanderCents || low > -3 || high < 3 {
		t.Errorf("the pitch wanders from %v to %v cents", low, high)
	}
}

func TestNoteEndsInTime(t *testing.T) {
	s := Default()
	s.Seconds, s.Amplitude.Release = 0.2, 0.1
	out := Render(s, 48000)
	if want := 14400; len(out) != want { // 0.3 s
		t.Errorf("%d samples, want %d", len(out), want)
	}
	if out[0] != 0 || math.Abs(float64(out[len(out)-1])) > 1e-5 {
		t.Errorf("starts at %v, ends at %v", out[0], out[len(out)-1])
	}
	v := NewVoice(s, 48000)
	block := make([]float32, 4800)
	v.Render(block, nil)
	v.Release()
	v.Render(block[:4799], nil)
	if v.Done() {
		t.Error("done before the end of the release")
	}
	v.Render(block[:1], nil)
	if !v.Done() {
		t.Error("not done after the release")
	}
	v.Render(block, nil)
	if diff := cmp.Diff(make([]float32, len(block)), block); diff != "" {
		t.Errorf("not silent afterwards: %s", diff)
	}
}

// A note that is shortened to less than it has lasted ends through its release
// from now on.
func TestShortenedNoteReleases(t *testing.T) {
	s := oscillators(OnlyA, Sine, 0.5)
	v := NewVoice(s, 48000)
	block := make([]float32, 24000)
	v.Render(block, nil)
	s.Seconds, s.Amplitude.Release = 0.2, 0.1
	v.Set(s)
	v.Render(block[:4784], nil)
	if v.Done() {
		t.Error("done before the end of the release")
	}
	if got := peak(block[2300:2500]) / unit; math.Abs(got-0.5) > 0.1 { // half way down
		t.Errorf("level %.3f half way", got)
	}
	v.Render(block[:16], nil)
	if !v.Done() {
		t.Error("not done after the release")
	}
}

// The phase that triggers stands at the same place of the waveform: a rising
// sawtooth is 2φ - 1 at phase φ, away from its edge.
func TestCycleIsThePhaseOfWhatIsHeard(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*Sound)
		hz     float64
	}{
		{"A alone", func(s *Sound) { s.Combine.How = OnlyA }, 220},
		{"B an octave lower", func(s *Sound) { s.B.Footage, s.A.Level = 16, 0 }, 110},
		{"only A is heard", func(s *Sound) { s.B.Footage, s.Combine.Balance = 16, -1 }, 220},
		{"A for equal pitches", func(s *Sound) { s.B.Level = 0; s.B.Cents = -5 }, 220},
		{"a start phase", func(s *Sound) { s.Combine.How, s.A.Phase = OnlyA, 0.3 }, 220},
		{"with vibrato", func(s *Sound) { s.Combine.How, s.LFO.Cents = OnlyA, 100 }, 0},
		{"with a fall", func(s *Sound) { s.Combine.How, s.Envelope.A = OnlyA, 24 }, 0},
		{"A lower but silent", func(s *Sound) { s.A.Footage, s.A.Level = 16, 0 }, 220},
		{"synced: A", func(s *Sound) { s.Combine.How, s.Combine.Ratio = Sync, 1 }, 220},
	} {
		s := oscillators(Mix, Sawtooth, 0.5)
		c.change(&s)
		out, cycle := make([]float32, 24000), make([]float32, 24000)
		NewVoice(s, 48000).Render(out, cycle)
		worst, wraps := 0.0, 0
		for i := 9600; i < len(out); i++ {
			p := float64(cycle[i])
			if p < 0 || p >= 1 {
				t.Fatalf("%s: phase %v", c.what, p)
			}
			if p > 0.3 && p < 0.7 {
				worst = math.Max(worst, math.Abs(float64(out[i])/unit-(2*p-1)))
			}
			if cycle[i] < cycle[i-1] {
				wraps++
			}
		}
		// The ripple of a sawtooth cut off at 20 kHz, and what the filter against
		// the mean bends: a few hundredths.
		if worst > 0.05 {
			t.Errorf("%s: the sawtooth is %v off its phase", c.what, worst)
		}
		if want := c.hz * 0.3; want > 0 && math.Abs(float64(wraps)-want) > 1 {
			t.Errorf("%s: %d periods, want %v", c.what, wraps, want)
		}
	}
}
