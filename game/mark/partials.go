package mark

import (
	"math"
	"slices"

	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// A Partial is one audible line of the target, and what stands there in yours.
// 0 dB is the target's strongest partial; yours is brought to the same
// loudness first.
type Partial struct {
	Number int     // 1 and up; 0 where it is no multiple of the fundamental
	Hz     float64 // in the target
	Target float64 // dB
	Yours  float64 // dB; not less than partialFloor
	Within bool    // within one just-noticeable step of level
}

const (
	levelJND     = 1.0   // dB, the working unit of hearing 1.3
	partialRange = 50.0  // dB: how far under the strongest a partial may be heard (design choice)
	partialFloor = -90.0 // dB: stands for nothing there
	// prominence is the share of its own auditory filter that a partial must
	// have to be heard out: as strong as all the others in it together. Of a
	// sawtooth at 220 Hz this leaves the first 17 or so (design choice; textbooks
	// give the first 5 to 8 for the unaided ear).
	prominence = 0.5
	// reach is how far to either side of a partial, in distances to its
	// neighbours, what moves with vibrato, beats or noise counts as its own.
	reach = 0.45
)

// fundamental is the frequency in hertz that numbers the partials: that of A,
// or of the lower one of a mix.
func fundamental(s synth.Sound) float64 {
	a, b := s.Hz()
	if s.Combine.How == synth.Mix && s.Combine.Balance > -1 && s.B.Level > 0 && b < a*(1-1e-6) {
		if s.Combine.Balance >= 1 || s.A.Level == 0 || a/b > 1.1 {
			return b
		}
	}
	return a
}

// A place is a partial of a spectrum and the bins that belong to it.
type place struct {
	number   int
	hz       float64
	from, to int
}

// places finds the audible partials of power per bin (Hann).
func (g *grid) places(power []float64) []place {
	all := g.harmonics(power)
	if all == nil {
		all = g.inharmonic(power)
	}
	level := make([]float64, len(all))
	strongest := 0.0
	for i, p := range all {
		level[i] = sum(power[p.from:p.to])
		strongest = math.Max(strongest, level[i])
	}
	var audible []place
	for i, p := range all {
		filter := 0.0
		for j, q := range all {
			filter += level[j] * spectrum.Roex(q.hz, p.hz)
		}
		if level[i] > strongest*spectrum.Power(-partialRange) && level[i] >= prominence*filter {
			audible = append(audible, p)
		}
	}
	return audible
}

// harmonics cuts the spectrum into the multiples of the note; nil where most
// of the power lies elsewhere.
func (g *grid) harmonics(power []float64) []place {
	f0 := g.note
	var all []place
	near := 0.0
	for n := 1; ; n++ {
		hz := float64(n) * f0
		bins := func(width float64) (from, to int) {
			return int((hz - width*f0) / g.spacing), int((hz+width*f0)/g.spacing) + 1
		}
		from, to := bins(reach)
		if to > len(power) {
			break
		}
		own := sum(power[from:to])
		if a, b := bins(strayed + reach/4); own > 0 {
			close := sum(power[a:b])
			near += close
			if close >= own/2 {
				all = append(all, place{n, hz, from, to})
			}
		}
	}
	if near < 0.9*sum(power) {
		return nil
	}
	return all
}

// inharmonic finds the peaks of a spectrum whose lines are no multiples of the
// note. A peak stands alone where no other is stronger within half a semitone.
func (g *grid) inharmonic(power []float64) []place {
	f0 := g.note
	most := slices.Max(power) * spectrum.Power(-partialRange-10)
	var peaks []place
	for k := 2; k < len(power)-2; k++ {
		if power[k] < most {
			continue
		}
		half := max(2, int(float64(k)*0.03))
		from, to := max(0, k-half), min(len(power), k+half+1)
		if slices.Max(power[from:to]) == power[k] {
			hz := float64(k) * g.spacing
			peaks = append(peaks, place{numbered(hz, f0, 0), hz, from, to})
		}
	}
	for i := range peaks {
		width := reach * f0
		if i > 0 {
			width = math.Min(width, reach*(peaks[i].hz-peaks[i-1].hz))
		}
		if i+1 < len(peaks) {
			width = math.Min(width, reach*(peaks[i+1].hz-peaks[i].hz))
		}
		peaks[i].from = max(0, int((peaks[i].hz-width)/g.spacing))
		peaks[i].to = min(len(power), int((peaks[i].hz+width)/g.spacing)+1)
	}
	return peaks
}

// ticks compares yours with the target at the target's partials, both brought
// to the same loudness. nil is silence.
func (g *grid) ticks(places []place, target, yours *features) []Partial {
	top := 0.0
	for _, p := range places {
		top = math.Max(top, sum(target.power[p.from:p.to]))
	}
	out := make([]Partial, len(places))
	for i, p := range places {
		t, y := spectrum.PowerDB(sum(target.power[p.from:p.to])/top), partialFloor
		if yours != nil {
			y = math.Max(y, spectrum.PowerDB(sum(yours.power[p.from:p.to])/top))
		}
		out[i] = Partial{p.number, p.hz, t, y, math.Abs(t-y) <= levelJND}
	}
	return out
}

func sum(x []float64) float64 {
	s := 0.0
	for _, v := range x {
		s += v
	}
	return s
}
