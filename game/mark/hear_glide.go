package mark

import (
	"math"
	"slices"
)

// A glide is an exponential movement of the pitch towards its steady value,
// semitones·exp(-t/seconds).
type glide struct {
	semitones float64 // where it starts, re the steady pitch
	seconds   float64 // time constant
	ok        bool
	sure      bool // its start was followed, so that the numbers can be trusted
}

// A vibrato is a periodic movement of the pitch.
type vibrato struct {
	hz    float64
	cents float64 // peak deviation when fully there
	fade  float64 // seconds until it is fully there
	ok    bool
}

// readTrack takes the glide and the vibrato from a pitch track, and corrects
// the steady pitch.
func readTrack(t *track, p *pitch) (g glide, v vibrato) {
	n := len(t.cents)
	if n < 8 {
		return
	}
	weights := make([]float64, n)
	for i, c := range t.clarity {
		if c > 0.6 && i > 0 && i < n-4 {
			weights[i] = c * c * c
		}
	}
	amount, seconds, end, left := fitFall(t.cents, weights, t.hop)
	middle := quantile(believed(t.cents, weights), 0.5)
	t.middle = t.base * math.Exp2(middle/1200)
	rest := make([]float64, n)
	for i := range rest {
		rest[i] = t.cents[i] - end - amount*math.Exp(-(float64(i)+0.5)*t.hop/seconds)
	}
	// A glide must be audible (hearing.md 1.1: 0.1 ERB, some 40 cents), start
	// above what is left over, and be mostly past by the end.
	length := float64(n) * t.hop
	steady := t.base * math.Exp2(end/1200) // far out where the fall is not over when the sound ends
	if steady > lowestHz && steady < highestHz && math.Abs(amount) > 30 && math.Abs(amount) > 1.5*left && (seconds < 0.5*length || math.Abs(amount) > 400) && seconds < length && seconds > 0.008 {
		first := 0
		for first < n-1 && weights[first] == 0 {
			first++
		}
		g = glide{semitones: amount / 100, seconds: seconds, ok: true, sure: float64(first)*t.hop < 0.6*seconds+0.008}
	} else {
		end = middle
		for i := range rest {
			rest[i] = t.cents[i] - end
		}
	}
	v = fitVibrato(rest, weights, t.hop)
	p.hz = t.base * math.Exp2(end/1200)
	base := t.base
	t.base = p.hz
	switch {
	case v.ok: // the track as it was measured
		for i := range t.cents {
			t.cents[i] -= 1200 * math.Log2(p.hz/base)
		}
	case g.ok: // its smooth part
		for i := range t.cents {
			t.cents[i] = amount * math.Exp(-(float64(i)+0.5)*t.hop/g.seconds)
		}
	default:
		clear(t.cents)
	}
	return
}

// fitFall fits end + amount·exp(-t/seconds) to values by weighted least
// squares; left is the weighted rms of what remains. The time constant is
// searched on a logarithmic grid, 5 ms to 4 s, and refined. Values at time
// (i + 1/2)·hop.
func fitFall(y, w []float64, hop float64) (amount, seconds, end, left float64) {
	try := func(tau float64) (a, c, err float64) {
		var sw, se, see, sy, sey, syy float64
		e, ratio := math.Exp(-0.5*hop/tau), math.Exp(-hop/tau)
		for i, v := range y {
			k := w[i]
			sw += k
			se += k * e
			see += k * e * e
			sy += k * v
			sey += k * e * v
			syy += k * v * v
			e *= ratio
		}
		det := sw*see - se*se
		if sw == 0 || det <= 1e-12*sw*sw {
			return 0, 0, math.Inf(1)
		}
		a = (sw*sey - se*sy) / det
		c = (sy - a*se) / sw
		return a, c, math.Max(0, syy-a*sey-c*sy) / sw
	}
	// Refused are falls that would lie mostly outside what was heard: a time
	// constant longer than the sound, or an amount far beyond the values.
	most := 1e-9
	if len(y) > 0 {
		most += 1.6 * (slices.Max(y) - slices.Min(y))
	}
	plausible := func(amount, tau float64) bool { return tau < float64(len(y))*hop && math.Abs(amount) <= most }
	best := math.Inf(1)
	const factor = 1.15
	grid := 0.005
	for tau := grid; tau < 4; tau *= factor {
		if a, c, err := try(tau); err < best && plausible(a, tau) {
			best, amount, end, seconds = err, a, c, tau
		}
	}
	for f := math.Sqrt(factor); f > 1.002 && seconds > 0; f = math.Sqrt(f) {
		for _, tau := range []float64{seconds / f, seconds * f} {
			if a, c, err := try(tau); err < best && plausible(a, tau) {
				best, amount, end, seconds = err, a, c, tau
			}
		}
	}
	if seconds == 0 {
		seconds = 1
	}
	return amount, seconds, end, math.Sqrt(best)
}

// believed are the values with a weight.
func believed(y, w []float64) (kept []float64) {
	for i, v := range y {
		if w[i] > 0 {
			kept = append(kept, v)
		}
	}
	return
}

func weightedMean(y, w []float64) float64 {
	var sum, sw float64
	for i, v := range y {
		sum += w[i] * v
		sw += w[i]
	}
	if sw == 0 {
		return 0
	}
	return sum / sw
}
