package mark

import "math"

// pulses are two, the second an octave above the first.
type pulses struct {
	lower, upper float64 // duties, 0.5 at most
	left         float64 // the greater of their misfits in dB
	ok           bool
}

// hearPulses hears two pulses an octave apart in the powers of partials. The odd partials are those of the
// lower one alone and give its duty, and with it what is its own in the even
// ones; the rest of these, once their beats are taken out, is the upper
// one's.
func hearPulses(power []float64) (p pulses) {
	count := len(power)
	if count < 8 {
		return
	}
	var scale, left float64
	p.lower, scale, p.left = fitPulse(count, 1, 2, func(n int) float64 { return power[n-1] })
	p.upper, _, left = fitPulse(count/2, 1, 1, func(n int) float64 {
		own := scale * pulsePower(2*n, p.lower)
		return math.Max(power[2*n-1]-own, 0.02*own)
	})
	p.left = math.Max(p.left, left)
	p.ok = p.left < 2
	return
}

// pulsePower is that of partial n of a pulse (sound.md 1.2), to a factor.
func pulsePower(n int, duty float64) float64 {
	v := math.Sin(math.Pi*float64(n)*duty) / float64(n)
	return v * v
}

// fitPulse finds the duty whose partials first, first + by, .. up to count lie
// nearest to the given powers in dB, the factor between them, and by how much
// it misses.
func fitPulse(count, first, by int, power func(n int) float64) (duty, scale, left float64) {
	top := 0.0
	for n := first; n <= count; n += by {
		top = math.Max(top, power(n))
	}
	level := func(p float64) float64 { return math.Max(floor, 10*math.Log10(p/top+1e-12)) }
	misfit := func(d float64) (shift, err float64) {
		best := 0.0
		for n := first; n <= count; n += by {
			best = math.Max(best, pulsePower(n, d))
		}
		var sum, weight, square float64
		for n := first; n <= count; n += by {
			x := level(power(n))
			y := math.Max(floor, 10*math.Log10(pulsePower(n, d)/best+1e-12))
			w := weightOf(math.Max(x, y))
			e := math.Max(-15, math.Min(15, x-y))
			sum += w * e
			square += w * e * e
			weight += w
		}
		shift = sum / weight
		return math.Pow(10, shift/10) * top / best, square/weight - shift*shift
	}
	least := math.Inf(1)
	try := func(d float64) {
		if s, e := misfit(d); e < least && d > 0.01 && d <= 0.5 {
			least, duty, scale = e, d, s
		}
	}
	for d := 0.02; d <= 0.5; d += 0.004 {
		try(d)
	}
	for step := 0.002; step > 0.0002; step /= 2 {
		d := duty
		try(d - step)
		try(d + step)
	}
	return duty, scale, math.Sqrt(math.Max(0, least))
}
