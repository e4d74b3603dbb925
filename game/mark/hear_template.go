package mark

import (
	"math"
	"math/cmplx"
	"sync"
)

// A family is a set of harmonic spectra that differ in one number.
type family int

const (
	unknownShape family = iota
	sine
	triangle
	sawtooth
	pulse       // of a duty, 0.5 at most: a duty d sounds like 1 - d
	synced      // a sawtooth restarted: ratio of its frequency to the pitch
	syncedT     // a triangle restarted
	syncedS     // a sine restarted
	syncedP     // a square restarted
	indexed     // a sine whose phase is moved by a sine of its own pitch: the index
	indexed2    // of twice its pitch
	indexed3    // of three times its pitch
	indexedHalf // of half its pitch, which is then the pitch of the whole
	families
)

// A template is the spectrum of one member of a family.
type template struct {
	value float64 // duty, ratio or index
	levels
}

const (
	templatePartials = 16
	// floor is where levels of templates and sounds are cut for comparison, in
	// dB under the strongest (design choice: windows fill deeper nulls).
	floor = -40.0
)

// templates of every family, from the closed forms (sound.md section 1, W3C Web
// Audio for the plain shapes, own derivations checked there for sync).
var templates = sync.OnceValue(func() *[families][]template {
	var t [families][]template
	add := func(f family, value float64, amplitude func(n int) float64) {
		t[f] = append(t[f], newTemplate(value, amplitude))
	}
	add(sine, 0, func(n int) float64 { return b2f(n == 1) })
	add(triangle, 0, func(n int) float64 { return b2f(n%2 == 1) / float64(n*n) })
	add(sawtooth, 0, func(n int) float64 { return 1 / float64(n) })
	for d := 0.02; d < 0.501; d += 0.004 {
		add(pulse, d, func(n int) float64 { return math.Abs(math.Sin(math.Pi*float64(n)*d)) / float64(n) })
	}
	for r := 1.02; r < 9; r *= 1.012 {
		add(synced, r, syncedAmplitudes(r, sawSeries))
		add(syncedT, r, syncedAmplitudes(r, triangleSeries))
		add(syncedP, r, syncedAmplitudes(r, squareSeries))
		add(syncedS, r, syncedAmplitudes(r, sineSeries))
	}
	for b := 0.05; b < 10.02; b += 0.05 {
		add(indexed, b, func(n int) float64 { return indexedAmplitude(n, 1, 1, b) })
		add(indexed2, b, func(n int) float64 { return indexedAmplitude(n, 1, 2, b) })
		add(indexed3, b, func(n int) float64 { return indexedAmplitude(n, 1, 3, b) })
		add(indexedHalf, b, func(n int) float64 { return indexedAmplitude(n, 2, 1, b) })
	}
	return &t
})

func newTemplate(value float64, amplitude func(n int) float64) template {
	t := template{value: value, levels: levels{n: templatePartials}}
	top := math.Inf(-1)
	for n := range t.db {
		t.db[n] = 20 * math.Log10(math.Abs(amplitude(n+1))+1e-9)
		top = math.Max(top, t.db[n])
	}
	t.cut(top)
	return t
}

// indexedAmplitude is that of partial n of sin(c·θ + index·sin m·θ): J[k] for c
// + k·m = n, and less J[k] for c + k·m = -n, which folds back (sound.md 1.3).
func indexedAmplitude(n, c, m int, index float64) float64 {
	sum := 0.0
	if (n-c)%m == 0 {
		sum += math.Jn((n-c)/m, index)
	}
	if (n+c)%m == 0 {
		sum -= math.Jn(-(n+c)/m, index)
	}
	return math.Abs(sum)
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// The complex series of a slave that starts at phase 0.
func sawSeries(m int) complex128 {
	if m == 0 {
		return 0
	}
	return complex(0, 1/(math.Pi*float64(m)))
}

func triangleSeries(m int) complex128 {
	if m%2 == 0 {
		return 0
	}
	s := 4 / (math.Pi * math.Pi * float64(m*m))
	if (m%4+4)%4 == 3 {
		s = -s
	}
	return complex(0, -s)
}

func squareSeries(m int) complex128 {
	if m%2 == 0 {
		return 0
	}
	return complex(0, -2/(math.Pi*float64(m)))
}

func sineSeries(m int) complex128 {
	switch m {
	case 1:
		return complex(0, -0.5)
	case -1:
		return complex(0, 0.5)
	}
	return 0
}

// syncedAmplitudes gives |c[n]| of a slave with the series s restarted after r
// of its periods: c[n] = Σ s[m]·exp(-jπx)·sinc x with x = n - mr (periodic
// gating; sound.md 1.2). exp(-jπx)·sin πx does not change with n. For the
// sawtooth the closed form stands beside it in the test.
func syncedAmplitudes(r float64, s func(m int) complex128) func(n int) float64 {
	const reach = 60 // terms fall with 1/m² and more
	type term struct {
		at          float64    // mr
		series, top complex128 // s[m], and s[m]·exp(-jπx)·sin(πx)/π
	}
	var terms []term
	for m := -reach; m <= reach; m++ {
		if c := s(m); c != 0 {
			at := float64(m) * r
			sin, cos := math.Sincos(math.Pi * at)
			terms = append(terms, term{at, c, c * complex(-sin*cos/math.Pi, -sin*sin/math.Pi)})
		}
	}
	return func(n int) float64 {
		var sum complex128
		for _, t := range terms {
			x := float64(n) - t.at
			if math.Abs(x) < 1e-9 {
				sum += t.series
				continue
			}
			sum += complex(real(t.top)/x, imag(t.top)/x)
		}
		return cmplx.Abs(sum)
	}
}
