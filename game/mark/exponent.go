package mark

import "math"

// An exponent raises numbers to one power, by tables of that power of octaves
// and of 128ths of an octave's span and the binomial series between them: within
// 1e-13 of math.Pow, which takes many times as long in WebAssembly.
type exponent struct {
	octave [2048]float64 // 2^((i-1023)·p); 0 for what is below the smallest normal number
	middle [128]float64  // (1 + (i+½)/128)^p
	per    [128]float64  // 1/(1 + (i+½)/128)
	series [4]float64    // (1 + r)^p = 1 + s0·r·(1 + s1·r·(1 + s2·r·(1 + s3·r)))
}

func newExponent(p float64) *exponent {
	e := &exponent{series: [4]float64{p, (p - 1) / 2, (p - 2) / 3, (p - 3) / 4}}
	for i := 1; i < len(e.octave); i++ {
		e.octave[i] = math.Exp2(float64(i-1023) * p)
	}
	for i := range e.middle {
		m := 1 + (float64(i)+0.5)/128
		e.middle[i], e.per[i] = math.Pow(m, p), 1/m
	}
	return e
}

// of returns x to the power, x ≥ 0 and finite.
func (e *exponent) of(x float64) float64 {
	b := math.Float64bits(x)
	i := b >> 45 & 127
	r := math.Float64frombits(b&(1<<52-1)|1023<<52)*e.per[i] - 1
	s := &e.series
	return e.octave[b>>52&2047] * e.middle[i] * (1 + s[0]*r*(1+s[1]*r*(1+s[2]*r*(1+s[3]*r))))
}

// The exponents in use: that of loudness on power (Stevens, common practice), and
// those of the method (marking.md: fitted on rendered sounds).
var (
	onPower         = newExponent(0.3) // of loudness
	fineCompression = newExponent(0.35)
	faintCounts     = newExponent(0.6) // of amplitude: faint lines count, but less
)
