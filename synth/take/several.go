package take

import (
	"math"
	"slices"

	"partialcredit/synth/spectrum"
)

// melody says whether the pitch leaps: from one that stands for 90 ms to another
// that stands as long, within 60 ms, by more than 60 cents, and not by an octave
// or a twelfth, which a pulse that grows thin may seem to do. Most of the power
// must go to other lines: those of a modulation that falls stay while their
// levels, and with them the period, change. A leap or two, or more than two
// pitches, are notes; two pitches in turn are a vibrato. (Design choices.)
func (l *listener) melody() bool {
	const hop, frame, hold, gap = 0.01, 0.06, 9, 6
	var track []float64 // cents, NaN where there is no pitch
	for at := 0; at+int(frame*Rate) <= len(l.x); at += int(hop * Rate) {
		p := l.period(l.x[at : at+int(frame*Rate)])
		c := math.NaN()
		if p.clarity > 0.9 {
			c = 1200 * math.Log2(p.hz)
		}
		track = append(track, c)
	}
	var plateaus []float64
	leaps := 0
	for i := hold; i+gap+hold <= len(track); i++ {
		before, ok := standing(track[i-hold : i])
		after, sure := standing(track[i+gap : i+gap+hold])
		if !ok || !sure || math.Abs(after-before) < 60 || partialApart(after-before) {
			continue
		}
		part := func(from int) []spectrum.Line {
			return l.linesOf(int(float64(from)*hop*Rate), int((frame+hop*(hold-1))*Rate)&^1)
		}
		if remain(part(i-hold), part(i+gap)) > 0.5 {
			continue
		}
		leaps++
		for _, c := range []float64{before, after} {
			if !slices.ContainsFunc(plateaus, func(p float64) bool { return math.Abs(p-c) < 40 }) {
				plateaus = append(plateaus, c)
			}
		}
		i += gap + hold/2
	}
	return leaps == 1 || leaps == 2 || len(plateaus) > 2
}

// standing is the middle of a stretch of a track that stays within 20 cents.
func standing(track []float64) (cents float64, ok bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range track {
		if math.IsNaN(c) {
			return 0, false
		}
		low, high = math.Min(low, c), math.Max(high, c)
	}
	return (low + high) / 2, high-low < 20
}

// remain is the share of the power of lines that was there before: within 25
// cents of a line not more than 30 dB under the strongest.
func remain(before, after []spectrum.Line) float64 {
	top, stays := 0.0, 0.0
	for _, b := range before {
		top = math.Max(top, b.Amplitude)
	}
	for _, a := range after {
		if slices.ContainsFunc(before, func(b spectrum.Line) bool { return b.Amplitude > 0.03*top && math.Abs(b.Hz/a.Hz-1) < 0.0145 }) {
			stays += a.Amplitude * a.Amplitude
		}
	}
	if len(after) == 0 {
		return 1 // the lines of a low note cannot be told apart in so short a time
	}
	return stays / power(after)
}

// partialApart says whether an interval is that of a partial to the first.
func partialApart(cents float64) bool {
	ratio := math.Exp2(math.Abs(cents) / 1200)
	n := math.Round(ratio)
	return n >= 2 && math.Abs(1200*math.Log2(ratio/n)) < 30
}

// chord says whether the lines are those of two harmonic series or more that are
// not one, and are not sums and differences of two frequencies. It asks for three
// lines of each that are in no other, and that nearly all of the power is
// explained. Two that are a whole tone apart or less, octaves aside, may be the
// oscillators of one voice.
func (l *listener) chord() bool {
	lines := l.lines()
	total := power(lines)
	var series []float64
	left := lines
	for len(series) < 4 && power(left) > 0.02*total {
		f, rest := strongestSeries(left, lines)
		if f == 0 {
			break
		}
		series, left = append(series, f), rest
	}
	if len(series) < 2 || power(left) > 0.1*total {
		return false
	}
	// Against the strongest: sidebands of a fast LFO make series of the others.
	for _, f := range series[1:] {
		if !detuned(series[0], f) && !together(series[0], f, lines) {
			return true
		}
	}
	return false
}

// strongestSeries is the series on one of the lines left which explains most of
// their power: with partials 1, 2 and 3, or 1, 3 and 5, among all lines, and three
// lines that are left.
func strongestSeries(left, all []spectrum.Line) (f float64, rest []spectrum.Line) {
	most := 0.0
	for _, first := range left {
		if !has(all, 3*first.Hz) || !has(all, 2*first.Hz) && !has(all, 5*first.Hz) {
			continue
		}
		own, others := split(left, first.Hz)
		if p := power(own); len(own) >= 3 && p > most {
			most, f, rest = p, first.Hz, others
		}
	}
	return f, rest
}

func has(lines []spectrum.Line, hz float64) bool {
	return slices.ContainsFunc(lines, func(l spectrum.Line) bool { return math.Abs(l.Hz/hz-1) < 0.0035 })
}

func split(lines []spectrum.Line, f float64) (own, others []spectrum.Line) {
	for _, l := range lines {
		if member(l.Hz, f) {
			own = append(own, l)
		} else {
			others = append(others, l)
		}
	}
	return own, others
}

// detuned says whether two pitches are a whole tone apart or less, octaves aside:
// two oscillators of one voice, each out of tune by up to 100 cents.
func detuned(a, b float64) bool {
	octaves := math.Log2(a / b)
	return math.Abs(octaves-math.Round(octaves)) < 2.1/12
}

// together says whether lines at sums and differences of two pitches show that
// one modulates the other.
func together(a, b float64, lines []spectrum.Line) bool {
	found, looked := 0, 0
	for i := 1.0; i <= 3; i++ {
		for j := 1.0; j <= 3; j++ {
			for _, hz := range []float64{i*a + j*b, math.Abs(i*a - j*b)} {
				if hz < lowest || member(hz, a) || member(hz, b) {
					continue
				}
				looked++
				if has(lines, hz) {
					found++
				}
			}
		}
	}
	return looked > 0 && float64(found) > 0.3*float64(looked)
}
