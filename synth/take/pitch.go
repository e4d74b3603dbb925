package take

import (
	"math"

	"partialcredit/synth/spectrum"
)

// A listener listens to the note of a take.
type listener struct {
	kit      *spectrum.Kit
	x        []float32
	from, to int // its steady part
}

// A pitch is a frequency and how well the sound repeats after its period.
type pitch struct{ hz, clarity float64 }

// sure is the clarity from which on one pitch is heard (design choice).
const sure = 0.6

// The pitches that are looked for, in hertz: an octave and a half beyond the notes
// of the program at either end, for oscillators of other footages.
const (
	lowest  = 20.0
	highest = 6000.0
)

// same is the share of the best repetition from which on a shorter period is
// taken instead: 1 - 2p where what repeats only after the longer one has the
// share p of the power, here 23 dB less than the rest (design choice).
const same = 0.99

// pitch is that of the steady part: of the clearest of several stretches of it,
// then sharpened by its partials.
func (l *listener) pitch() pitch {
	var best pitch
	length := l.to - l.from
	// Long stretches resolve low notes and weak lower octaves; short ones follow
	// vibrato.
	for _, seconds := range []float64{0.3, 0.12, 0.05} {
		n := min(int(seconds*Rate), length)
		for _, at := range []float64{0.9, 0.6, 0.35} {
			from := l.from + int(at*float64(length-n))
			if p := l.period(l.x[from : from+n]); p.clarity > best.clarity+0.02 {
				best = p
			}
		}
		if best.clarity > 0.95 {
			break
		}
	}
	if best.clarity > sure {
		lines := l.lines()
		best.hz = sharpen(octave(best.hz, lines), lines)
	}
	return best
}

// period finds the pitch of a short stretch, where it repeats (see
// [spectrum.Kit.Repeats]). Against a choice of an octave: the first peak that is nearly as
// high as the highest.
func (l *listener) period(x []float32) pitch {
	n := len(x)
	longest := min(int(Rate/lowest), n*2/3)
	shortest := int(Rate / highest)
	if longest <= shortest+2 {
		return pitch{}
	}
	repeats := l.kit.Repeats(x, longest)
	if repeats == nil {
		return pitch{}
	}
	first := 1
	for first < longest && repeats[first] > 0 {
		first++
	}
	first = max(first, shortest)
	deepest := 0.0
	for t := first; t < longest; t++ {
		if repeats[t] > repeats[t-1] && repeats[t] >= repeats[t+1] {
			_, height := vertex(repeats, t)
			deepest = math.Max(deepest, height)
		}
	}
	for t := first; t < longest; t++ {
		if repeats[t] > repeats[t-1] && repeats[t] >= repeats[t+1] {
			if shift, height := vertex(repeats, t); height >= same*deepest {
				return pitch{Rate / (float64(t) + shift), math.Min(1, height)}
			}
		}
	}
	return pitch{}
}

// vertex is that of the parabola through three values about a local maximum.
func vertex(y []float64, i int) (shift, height float64) {
	if d := y[i-1] - 2*y[i] + y[i+1]; d < 0 {
		shift = math.Max(-0.5, math.Min(0.5, (y[i-1]-y[i+1])/(2*d)))
	}
	return shift, y[i] - (y[i-1]-y[i+1])*shift/4
}
