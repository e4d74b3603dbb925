package mark

import "math"

// A track is the pitch over time.
type track struct {
	hop     float64   // seconds between values
	cents   []float64 // re the steady pitch
	clarity []float64
	base    float64 // the steady pitch in Hz
	middle  float64 // the median pitch in Hz
}

// at is the pitch in Hz at a time in seconds from the start of the sound.
func (t *track) at(seconds float64) float64 {
	i := seconds / t.hop
	k := int(i)
	switch {
	case len(t.cents) == 0:
		return t.base
	case i <= 0:
		return t.base * math.Exp2(t.cents[0]/1200)
	case k >= len(t.cents)-1:
		return t.base * math.Exp2(t.cents[len(t.cents)-1]/1200)
	}
	f := i - float64(k)
	return t.base * math.Exp2((t.cents[k]*(1-f)+t.cents[k+1]*f)/1200)
}

// lagSamples is the least number of samples in a lag that is measured: the
// parabola through three values of a smooth function is then good to about a
// cent (design choice, measured by the test of the vibrato).
const lagSamples = 48

// thinned is a sound at a lower rate.
type thinned struct {
	x    []float64
	rate float64
}

// track follows the pitch from where it is clearest towards both ends, every 5
// ms. At each place it compares stretches of the sound one period apart and
// looks for the best period within a third of an octave of the last one, so
// that it cannot jump by an octave. Known weakness: it averages over about two
// periods.
func (a *analysis) track(p pitch) *track {
	t := &track{hop: 0.005, base: p.hz}
	if !p.ok {
		return t
	}
	// Low notes need no more than the low partials: average neighbours down,
	// less where the pitch is higher.
	levels := []thinned{{a.sounding(), a.rate}}
	for levels[0].rate/p.hz > 2*lagSamples && len(levels) < 6 {
		l := levels[0]
		levels = append([]thinned{{halved(l.x), l.rate / 2}}, levels...)
	}
	n := int(float64(a.end-a.start) / a.rate / t.hop)
	if n < 4 {
		return t
	}
	t.cents = make([]float64, n)
	t.clarity = make([]float64, n)
	look := func(i int, hz float64) (found, clarity float64) {
		l := levels[len(levels)-1]
		for _, v := range levels {
			if v.rate/hz >= lagSamples*0.9 {
				l = v
				break
			}
		}
		lag, c := period(l.x, (float64(i)+0.5)*t.hop*l.rate, l.rate/hz)
		return l.rate / lag, c
	}
	begin, best := n*6/10, 0.0
	for _, at := range []int{n * 5 / 10, n * 6 / 10, n * 7 / 10, n * 8 / 10, n * 9 / 10} {
		if hz, c := look(at, p.hz); c > best {
			best, begin = c, at
			t.cents[at] = 1200 * math.Log2(hz/p.hz)
		}
	}
	follow := func(from, to, by int) {
		hz := p.hz * math.Exp2(t.cents[begin]/1200)
		ratio := 1.0
		for i := from; i != to; i += by {
			next, c := look(i, hz*ratio)
			t.clarity[i] = c
			if c > 0.5 {
				ratio = math.Max(0.7, math.Min(1.4, next/hz))
				hz = next
			} else {
				ratio = 1
			}
			t.cents[i] = 1200 * math.Log2(hz/p.hz)
		}
	}
	follow(begin, -1, -1)
	follow(begin, n, 1)
	return t
}

// period is the lag nearest to guess, in samples, at which x repeats best
// around the place at, and how well it does (see findPitch).
func period(x []float64, at, guess float64) (lag, clarity float64) {
	times := math.Ceil(lagSamples / guess) // of a high note compare several periods
	from, to := int(guess*times*0.8), int(guess*times*1.26)+1
	if times > 1 {
		from, to = int(guess*(times-0.4)), int(guess*(times+0.4))+1
	}
	n := max(16, int(guess*times))
	start := int(at) - (n+int(guess*times))/2
	start = max(0, min(start, len(x)-n-to-1))
	if start+n+to >= len(x) || from < 2 || start < 0 {
		return guess, 0
	}
	var values [512]float64
	if to-from+1 > len(values) {
		return guess, 0
	}
	square := func(i int) float64 { return x[i] * x[i] }
	a := x[start : start+n]
	var energy, other float64 // of a, and of the same length a lag later
	for i := range a {
		energy += square(start + i)
		other += square(start + from + i)
	}
	best, where := 0.0, -1
	for l := from; l <= to; l++ {
		v := 2 * dot(a, x[start+l:]) / (energy + other + 1e-30)
		other += square(start+l+n) - square(start+l)
		values[l-from] = v
		// Of two that are nearly as good, the one nearer to the guess.
		v -= 0.2 * math.Abs(math.Log2(float64(l)/(guess*times)))
		if v > best {
			best, where = v, l
		}
	}
	if where <= from || where >= to {
		return guess, 0
	}
	shift := peakShift(values[:to-from+1], where-from)
	return (float64(where) + shift) / times, values[where-from]
}

// dot is the sum of products of a with as many values of b. Four at once
// halve its time.
func dot(a, b []float64) float64 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float64
	for len(a) >= 4 {
		s0 += a[0] * b[0]
		s1 += a[1] * b[1]
		s2 += a[2] * b[2]
		s3 += a[3] * b[3]
		a, b = a[4:], b[4:]
	}
	for i, v := range a {
		s0 += v * b[i]
	}
	return s0 + s1 + (s2 + s3)
}

// halved keeps every second value, averaged with its neighbours so that what
// folds back is weak.
func halved(x []float64) []float64 {
	y := make([]float64, len(x)/2)
	for i := range y {
		if v := x[2*i:]; len(v) > 2 {
			y[i] = (v[0] + 2*v[1] + v[2]) / 4
		} else {
			y[i] = (v[0] + 2*v[1]) / 3
		}
	}
	return y
}
