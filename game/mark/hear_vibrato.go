package mark

import "math"

// fitVibrato finds the periodic part of a pitch track in cents. The rate is
// that of the sinusoid, 0.3 to 20 Hz, which takes most out of the second half
// of the track, where a fade-in has ended; depth is the peak deviation there.
// The fade-in is the time of the straight rise from 0 to the full depth that
// fits the depth over time best.
func fitVibrato(y, w []float64, hop float64) (v vibrato) {
	n := len(y)
	length := float64(n) * hop
	if length < 0.25 {
		return
	}
	half := n / 2
	late, lateW := y[half:], w[half:]
	var total, sw float64
	mean := weightedMean(late, lateW)
	for i, c := range late {
		total += lateW[i] * (c - mean) * (c - mean)
		sw += lateW[i]
	}
	if sw == 0 || total/sw < 1 { // under one cent rms
		return
	}
	share := func(hz float64) float64 {
		_, _, left := fitSine(late, lateW, hop, hz)
		return 1 - left/total
	}
	best, hz := 0.0, 0.0
	step := 0.2 / length
	for f := 0.3; f < 20; f += step {
		if s := share(f); s > best {
			best, hz = s, f
		}
	}
	for d := step / 2; hz > 0 && d > 1e-4*hz; d /= 2 {
		for _, f := range []float64{hz - d, hz + d} {
			if s := share(f); f > 0 && s > best {
				best, hz = s, f
			}
		}
	}
	// A triangle or a sine gives 0.98 or more, a sawtooth 0.61, a square 0.81.
	if best < 0.5 || hz*length < 1.2 {
		return
	}
	// Depth cycle by cycle.
	span := max(4, int(1/hz/hop))
	var times, depths []float64
	for from := 0; from+span <= n; from += max(1, span/4) {
		s, c, _ := fitSine(y[from:from+span], w[from:from+span], hop, hz)
		if math.IsNaN(s) {
			continue
		}
		times = append(times, (float64(from)+float64(span)/2)*hop)
		depths = append(depths, math.Hypot(s, c))
	}
	if len(depths) < 3 {
		return
	}
	full, fade, least := 0.0, 0.0, math.Inf(1)
	for f := 0.0; f <= 0.8*length; f += length / 200 {
		var sdr, srr float64
		for i, d := range depths {
			r := math.Min(1, times[i]/math.Max(f, 1e-9))
			sdr += d * r
			srr += r * r
		}
		a := sdr / srr
		err := 0.0
		for i, d := range depths {
			r := math.Min(1, times[i]/math.Max(f, 1e-9))
			err += (d - a*r) * (d - a*r)
		}
		if err < least {
			least, full, fade = err, a, f
		}
	}
	if fade*hz < 1.3 {
		fade = 0 // within the first cycle it cannot be told
	}
	v = vibrato{hz: hz, cents: full, fade: fade}
	// ±7 cents can be heard at 440 Hz (hearing.md 1.5); beyond an octave the track
	// has strayed (design choice).
	v.ok = full > 5 && full < 1400 && hz < 19.8
	return
}

// fitSine fits mean + s·sin + c·cos at hz by weighted least squares; left is
// the weighted sum of squares that remains.
func fitSine(y, w []float64, hop, hz float64) (s, c, left float64) {
	var k1, ks, kc, kss, ksc, kcc, k1v, ksv, kcv, total float64 // weighted sums of products
	sn, cs := 0.0, 1.0
	ds, dc := math.Sincos(2 * math.Pi * hz * hop)
	w = w[:len(y)]
	for i, v := range y {
		k := w[i]
		s, c := k*sn, k*cs
		k1 += k
		ks += s
		kc += c
		kss += s * sn
		ksc += s * cs
		kcc += c * cs
		k1v += k * v
		ksv += s * v
		kcv += c * v
		total += k * v * v
		sn, cs = sn*dc+cs*ds, cs*dc-sn*ds
	}
	right := [3]float64{k1v, ksv, kcv}
	x, ok := solve3([3][4]float64{{k1, ks, kc, k1v}, {ks, kss, ksc, ksv}, {kc, ksc, kcc, kcv}})
	if !ok {
		return math.NaN(), math.NaN(), total
	}
	left = total
	for r := range 3 {
		left -= x[r] * right[r]
	}
	return x[1], x[2], math.Max(0, left)
}

// solve3 solves three linear equations by elimination with row exchange.
func solve3(m [3][4]float64) (x [3]float64, ok bool) {
	for c := range 3 {
		p := c
		for r := c + 1; r < 3; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[p][c]) {
				p = r
			}
		}
		m[c], m[p] = m[p], m[c]
		if math.Abs(m[c][c]) < 1e-12 {
			return x, false
		}
		for r := range 3 {
			if r != c {
				f := m[r][c] / m[c][c]
				for k := c; k < 4; k++ {
					m[r][k] -= f * m[c][k]
				}
			}
		}
	}
	for c := range 3 {
		x[c] = m[c][3] / m[c][c]
	}
	return x, true
}
