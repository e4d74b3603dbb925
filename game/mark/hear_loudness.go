package mark

import (
	"math"
	"slices"
)

// loudness is how the level rises at the start and falls to where it is held.
type loudness struct {
	attack float64 // seconds to the loudest
	decay  float64 // time constant of the fall in seconds
	held   float64 // the level it falls to, re the loudest
	left   float64 // seconds from the loudest to the end
	ok     bool
}

// levelHop is the time in seconds between levels (design choice).
const levelHop = 0.004

// loudness fits the level over time with a rise of the shape of half a cosine
// and an exponential fall to a level that is held: y = held·u + fallen·v, where
// u and v rise alike and v then falls. The two times are searched on grids of
// equal ratios and refined, the two levels follow by least squares. It is sure
// where this explains the level: one that moves in another way is left to
// others to speak of. Known weakness: levels are means over a period of the
// pitch, so that a rise or fall within one is measured a little too long.
func (a *analysis) loudness(hz float64) (l loudness) {
	y := a.levels(hz)
	if n := int(0.06 / levelHop); len(y) > 3*n { // the release
		y = y[:len(y)-n]
	}
	top := 0.0
	for _, v := range y {
		top = math.Max(top, v)
	}
	if len(y) < 25 || top == 0 {
		return
	}
	length := float64(len(y)) * levelHop
	best := math.Inf(1)
	var held, fallen float64
	try := func(attack, decay float64) {
		if attack < 0.002 || attack > length || decay < 0.004 || decay > 12 {
			return
		}
		if h, f, err := fitLevels(y, attack, decay); err < best {
			best, held, fallen = err, h, f
			l.attack, l.decay = attack, decay
		}
	}
	const coarse = 1.35
	for attack := 0.003; attack < length; attack *= coarse {
		for decay := 0.005; decay < 10; decay *= coarse {
			try(attack, decay)
		}
	}
	for f := math.Sqrt(coarse); f > 1.005; f = math.Sqrt(f) {
		for last := math.Inf(1); best < last; { // the two hang together: along a valley
			last = best
			attack, decay := l.attack, l.decay
			for _, x := range []float64{1 / f, 1, f} {
				for _, z := range []float64{1 / f, 1, f} {
					try(attack*x, decay*z)
				}
			}
		}
	}
	if held+fallen <= 0 {
		return loudness{}
	}
	l.held = held / (held + fallen)
	l.left = length - l.attack
	l.ok = math.Sqrt(best/float64(len(y))) < 0.02*top
	return
}

// fitLevels gives the held and the fallen level for two times, neither below
// 0, and the sum of the squared errors.
func fitLevels(y []float64, attack, decay float64) (held, fallen, err float64) {
	var uu, uv, vv, uy, vy, yy float64
	v, ratio := 0.0, math.Exp(-levelHop/decay)
	for i, x := range y {
		t := (float64(i) + 0.5) * levelHop
		u := 1.0
		switch {
		case t < attack:
			u = 0.5 - 0.5*math.Cos(math.Pi*t/attack)
			v = u
		case t < attack+levelHop:
			v = math.Exp(-(t - attack) / decay)
		default:
			v *= ratio
		}
		uu += u * u
		uv += u * v
		vv += v * v
		uy += u * x
		vy += v * x
		yy += x * x
	}
	if det := uu*vv - uv*uv; det > 1e-9*uu*vv {
		held, fallen = (uy*vv-vy*uv)/det, (vy*uu-uy*uv)/det
	} else {
		held = uy / uu
	}
	switch {
	case held < 0:
		held, fallen = 0, vy/vv
	case fallen < 0:
		held, fallen = uy/uu, 0
	}
	return held, fallen, yy - held*uy - fallen*vy
}

// levels are root mean squares over whole periods of the pitch, at least 5 ms;
// over 20 ms where there is none.
func (a *analysis) levels(hz float64) []float64 {
	span := 0.02
	if hz > 0 {
		span = math.Ceil(0.005*hz) / hz
	}
	x := a.x[a.start:a.end]
	sums := make([]float64, len(x)+1)
	for i, v := range x {
		sums[i+1] = sums[i] + float64(v)*float64(v)
	}
	var y []float64
	half, hop := int(span*a.rate/2), levelHop*a.rate
	for t := hop / 2; t < float64(len(x)); t += hop {
		from, to := max(0, int(t)-half), min(len(x), int(t)+half)
		y = append(y, math.Sqrt((sums[to]-sums[from])/float64(2*half)))
	}
	return slices.Clip(y)
}
