package sheet_test

import (
	"math"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// What the course says to be the same to the ear has the same spectrum, and what
// it says to be different has not: by the exact lines where they are known, and
// by what the sounds themselves show. The ear hears a partial change by 1 dB
// (the working unit of hearing.md 1.3), so half of that is the same, and
// several are not.
const (
	mostSame   = 0.5   // dB
	leastApart = 6.0   // dB
	faintest   = -40.0 // dB under the strongest line: what lies lower is not compared
)

func TestPairsAreWhatTheyAreSaidToBe(t *testing.T) {
	pairs, same, exactly := 0, 0, 0
	for _, s := range sheet.Course() {
		for _, e := range s.Exercises {
			if e.Kind != sheet.Same {
				continue
			}
			equal := 0
			for _, p := range e.Pairs {
				one, other := p.One, p.Other
				if e.Notes != nil {
					one.Note = math.Round((e.Notes[0] + e.Notes[1]) / 2)
					other.Note = one.Note
				}
				check := func(judge string, apart float64) {
					if p.Same && apart > mostSame {
						t.Errorf("%s: %s: %s finds %.2f dB between what is said to be the same", e.ID, p.Name, judge, apart)
					}
					if !p.Same && apart < leastApart {
						t.Errorf("%s: %s: %s finds only %.2f dB between what is said to differ", e.ID, p.Name, judge, apart)
					}
					t.Logf("%-18s %-5v %6.2f dB by %s: %s", e.ID, p.Same, apart, judge, p.Name)
				}
				check("the sound", measured(one, other))
				a, known1 := known(one)
				b, known2 := known(other)
				if known1 && known2 {
					check("the exact lines", between(a, b, 0.01))
					exactly++
				}
				pairs++
				if p.Same {
					equal++
				}
			}
			same += equal
			if 5*equal < 2*len(e.Pairs) || 5*equal > 3*len(e.Pairs) {
				t.Errorf("%s: %d of %d pairs are the same; it should be about half", e.ID, equal, len(e.Pairs))
			}
		}
	}
	t.Logf("%d pairs, %d of them the same, %d known exactly", pairs, same, exactly)
	if 2*exactly < pairs {
		t.Errorf("only %d of %d pairs are judged by exact lines", exactly, pairs)
	}
}

// The judge hears what it must.
func TestPairsAreJudged(t *testing.T) {
	plain := synth.Default()
	for _, c := range []struct {
		what   string
		change func(*synth.Sound)
		least  float64 // dB
	}{
		{"the duty of 0.52", func(s *synth.Sound) { s.A.Shape, s.A.Duty = synth.Pulse, 0.52 }, 1},
		{"8 cents", func(s *synth.Sound) { s.A.Cents = 8 }, 30},
		{"a tremolo of 3 dB", func(s *synth.Sound) { s.LFO.Level = 0.3 }, 10},
		{"a decay", func(s *synth.Sound) { s.Amplitude.Sustain, s.Amplitude.Decay = 0, 0.3 }, 6},
	} {
		one, other := plain, plain
		if c.what == "the duty of 0.52" {
			one.A.Shape = synth.Pulse
		}
		c.change(&other)
		if got := measured(one, other); got < c.least {
			t.Errorf("%s: the judge finds %.2f dB, at least %v are there", c.what, got, c.least)
		}
	}
}

const rate = 48000

// measured is the largest difference in decibels between two sounds made equal
// in power: of their lines where both go on unchanged, else of their bands and
// of their course in time.
func measured(one, other synth.Sound) float64 {
	if steady(one) && steady(other) {
		seconds := math.Max(resolving(one), resolving(other))
		return between(lines(one, seconds), lines(other, seconds), 2/seconds)
	}
	a, b := synth.Render(one, rate), synth.Render(other, rate)
	return math.Max(largest(bands(a), bands(b)), largest(course(a), course(b)))
}

func steady(s synth.Sound) bool {
	return s.Envelope.A == 0 && s.Envelope.B == 0 && s.Envelope.Depth == 0 && s.Amplitude.Sustain == 1 && s.Amplitude.Attack <= 0.01
}

// resolving is how many seconds part the lines of a sound: a line is eight bins
// wide, and the slowest movement of the course parts them by 1 Hz.
func resolving(s synth.Sound) float64 {
	switch {
	case moved(s) && s.LFO.Hz < 2.5, s.Combine.How == synth.Mix && s.A.Cents != s.B.Cents:
		return 8
	case moved(s):
		return 4
	}
	return 1
}

func lines(s synth.Sound, seconds float64) []spectrum.Line {
	const before = rate / 4 // the start of the note
	n := int(seconds * rate)
	s.Seconds = seconds + 0.5
	x := synth.Render(s, rate)[before : before+n]
	X := spectrum.NewReal(n).Coefficients(x, spectrum.BlackmanHarris.Samples(n))
	return spectrum.Peaks(nil, X, n, rate, spectrum.BlackmanHarris, 1e-6)
}

// between is the largest difference of level of any line that either sound has,
// at equal powers; what the other lacks within so many hertz counts as faintest.
func between(a, b []spectrum.Line, within float64) float64 {
	return math.Max(oneWay(a, b, within), oneWay(b, a, within))
}

func oneWay(a, b []spectrum.Line, within float64) (most float64) {
	scale := math.Sqrt(power(a) / power(b))
	strongest := 0.0
	for _, l := range a {
		strongest = math.Max(strongest, l.Amplitude)
	}
	least := spectrum.Amplitude(faintest) * strongest
	for _, l := range a {
		if l.Amplitude < least || l.Hz < 20 {
			continue
		}
		found := least
		for _, m := range b {
			if math.Abs(m.Hz-l.Hz) <= within {
				found = math.Max(found, scale*m.Amplitude)
			}
		}
		most = math.Max(most, math.Abs(spectrum.DB(found/l.Amplitude)))
	}
	return most
}

func power(lines []spectrum.Line) (sum float64) {
	for _, l := range lines {
		sum += l.Amplitude * l.Amplitude
	}
	return
}

// bands are the powers in bands of one Cam, course in twentieths of a second.
func bands(samples []float32) []float64 {
	n := spectrum.FastLength(len(samples))
	powers := make([]float64, 40)
	for k, c := range spectrum.NewReal(n).Coefficients(samples, nil) {
		if i := int(spectrum.Cam(float64(k) * rate / float64(n))); i < len(powers) {
			powers[i] += real(c)*real(c) + imag(c)*imag(c)
		}
	}
	return powers
}

func course(samples []float32) []float64 {
	powers := make([]float64, len(samples)*20/rate)
	for i, v := range samples[:len(powers)*rate/20] {
		powers[i*20/rate] += float64(v) * float64(v)
	}
	return powers
}

func largest(a, b []float64) (most float64) {
	sumA, sumB, strongest := 0.0, 0.0, 0.0
	n := min(len(a), len(b))
	for i := range n {
		sumA, sumB = sumA+a[i], sumB+b[i]
	}
	for i := range n {
		strongest = math.Max(strongest, math.Max(a[i]/sumA, b[i]/sumB))
	}
	floor := spectrum.Power(faintest) * strongest
	for i := range n {
		most = math.Max(most, math.Abs(spectrum.PowerDB(math.Max(a[i]/sumA, floor)/math.Max(b[i]/sumB, floor))))
	}
	return
}
