package exact

import (
	"math"
	"math/cmplx"
)

// Lines are the lines of a spectrum at the frequencies 0, 1, 2, …
type Lines []complex128

// Add puts a line in; a negative frequency folds back, and what lies beyond the
// last is dropped.
func (l Lines) Add(at int, c complex128) {
	if at < 0 {
		at, c = -at, cmplx.Conj(c)
	}
	if at < len(l) {
		l[at] += c
	}
}

// Product returns n lines of x·(one + depth·y): x and y are the partials of two
// waveforms with the fundamentals a and b.
func Product(n, a, b int, x, y []complex128, one, depth float64) Lines {
	l := make(Lines, n)
	for i, p := range x {
		l.Add(i*a, complex(one, 0)*p)
		for j, q := range y {
			c := p * complex(depth/2, 0)
			l.Add(i*a+j*b, c*q)
			l.Add(i*a-j*b, c*cmplx.Conj(q))
		}
	}
	return l
}

// ModulatedSine returns n lines of sin(2πau + index·sin 2πbu), the sum of
// J_k(index)·sin 2π(a+kb)u (NIST DLMF 10.12; Chowning, JAES 21(7), 526-534,
// 1973). index is below 20.
func ModulatedSine(n, a, b int, index float64) Lines {
	l := make(Lines, n)
	for k := -60; k <= 60; k++ {
		l.Add(a+k*b, complex(0, -math.Jn(k, index)))
	}
	return l
}

// ModulatedSawtooth returns n lines of 2{φ} - 1 with φ = au + index/2π·sin
// 2πbu. Where the phase turns back the sum over Bessel functions hardly
// converges; the lines come from the derivative instead: 2φ' less an impulse
// of 2 at each crossing of a whole phase, in the direction of the crossing.
func ModulatedSawtooth(n, a, b int, index float64) Lines {
	phase := func(u float64) float64 {
		return float64(a)*u + index/(2*math.Pi)*math.Sin(2*math.Pi*float64(b)*u)
	}
	l := make(Lines, n)
	l.Add(b, complex(2*index*float64(b), 0)) // of 2φ'
	const steps = 1 << 20
	last := phase(0.5 / steps)
	for i := range steps {
		u := (float64(i) + 0.5) / steps
		next := phase(u + 1.0/steps)
		if sign := math.Floor(next) - math.Floor(last); sign != 0 {
			border := math.Max(math.Floor(next), math.Floor(last))
			lo, hi := u, u+1.0/steps
			for range 40 { // bisection
				if middle := (lo + hi) / 2; (phase(middle) < border) == (sign > 0) {
					lo = middle
				} else {
					hi = middle
				}
			}
			impulse := complex(-4*sign, 0) // 2 for the amplitude of a line
			turn := cmplx.Rect(1, -2*math.Pi*lo)
			for k := 1; k < n; k++ {
				impulse *= turn
				l[k] += impulse
			}
		}
		last = next
	}
	for k := 1; k < n; k++ {
		l[k] /= complex(0, 2*math.Pi*float64(k))
	}
	return l
}

// TriangleWidth returns n lines of a pulse at frequency a without its mean,
// whose duty is middle + depth·triangle at frequency b. The pulse is the
// difference of a sawtooth and one whose phase lags by the duty; the phase of
// partial k of that one moves by a triangle of peak θ = 2πk·depth, whose lines
// are ∫e^{-jθ·tri}e^{-j2πmv} dv in closed form (own derivation; sound.md 3). a
// is more than 4·depth·b, so that no phase runs backwards.
func TriangleWidth(n, a, b int, middle, depth float64) Lines {
	l := make(Lines, n)
	slowest := float64(a) - 4*math.Abs(depth)*float64(b) // frequency of the sawtooth that lags
	for k := 1; float64(k)*slowest < 4*float64(n); k++ {
		// -(2/πk) sin 2πkφ is a partial of a sawtooth; as a phasor 2j/πk.
		saw := complex(0, 2/(math.Pi*float64(k)))
		lag := cmplx.Rect(1, -2*math.Pi*float64(k)*middle)
		theta := 2 * math.Pi * float64(k) * depth
		for m := -(n + k*a) / b; m <= (n-k*a)/b; m++ {
			c := lag * triangleLine(theta, m)
			if m == 0 {
				c--
			}
			l.Add(k*a+m*b, saw*c)
		}
	}
	return l
}

// triangleLine is line m of e^{-jθ·tri(v)}. Over the rising half tri is 4v and
// over the falling one 2 - 4v, each a quarter either side of its middle at 0 and
// 1/2: two integrals of e^{-j2πxv} over half a period.
func triangleLine(theta float64, m int) complex128 {
	half := func(x float64) float64 { // ∫ cos 2πxv from -1/4 to 1/4
		if x == 0 {
			return 0.5
		}
		return math.Sin(math.Pi*x/2) / (math.Pi * x)
	}
	k := 2 * theta / math.Pi // 4θ/2π
	falling := half(float64(m) - k)
	if m%2 != 0 {
		falling = -falling // the middle of the falling half is at 1/2
	}
	return complex(half(float64(m)+k)+falling, 0)
}
