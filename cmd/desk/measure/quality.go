package measure

import (
	"math"
	"math/cmplx"
	"slices"
)

const (
	aliasTop   = 20000.0 // Hz: what can be heard
	partialTop = 18000.0
	// weakest is how weak a partial may be against the strongest and still be judged by itself:
	// the rest answers to the energy of the aliases.
	weakest = 1e-4
	// silent is what rounding makes of an exact partial that is none.
	silent = 1e-9
)

// A Quality is how far a sound is from what it should be, in decibels.
type Quality struct {
	Alias   float64 // energy of all that should not be there below 20 kHz, against the signal
	Partial float64 // greatest error of a partial below 18 kHz
}

// perfect is the quality that nothing has made worse.
var perfect = Quality{Alias: math.Inf(-1)}

// worse returns the worse of either.
func (q Quality) worse(r Quality) Quality {
	return Quality{math.Max(q.Alias, r.Alias), math.Max(q.Partial, r.Partial)}
}

// energies splits the energy below top Hz into that of the partials and that of the rest but the
// mean.
func energies(c []complex128, t tone, top float64) (signal, rest float64) {
	for k := 1; k < len(c) && t.at(k) <= top; k++ {
		e := real(c[k])*real(c[k]) + imag(c[k])*imag(c[k])
		if k%t.p == 0 {
			signal += e
		} else {
			rest += e
		}
	}
	return signal, rest
}

// judge compares a steady tone with its exact partials, which reach to 20 kHz. Where there are none
// below, as of a slave that is a multiple of a high master, aliases are set against a sine at full
// level. relative leaves the level of the fundamental out: the browser's own waveforms have another.
func judge(x []float64, t tone, want []complex128, relative bool) Quality {
	c := spectrum(x)
	signal, alias := energies(c, t, aliasTop)
	if slices.IndexFunc(want, func(p complex128) bool { return cmplx.Abs(p) > silent }) < 0 {
		return Quality{Alias: 10 * math.Log10(alias+signal)}
	}
	scale, strongest := 1.0, 0.0
	if relative {
		scale = cmplx.Abs(want[1]) / cmplx.Abs(c[t.p])
	}
	for k := 1; k < len(want) && t.at(k*t.p) < partialTop; k++ {
		strongest = math.Max(strongest, cmplx.Abs(want[k]))
	}
	q := Quality{Alias: 10 * math.Log10(alias/signal)}
	for k := 1; k < len(want) && t.at(k*t.p) < partialTop; k++ {
		if w := cmplx.Abs(want[k]); w > weakest*strongest && w > silent {
			q.Partial = math.Max(q.Partial, math.Abs(20*math.Log10(scale*cmplx.Abs(c[k*t.p])/w)))
		}
	}
	return q
}

// distance compares a modulated tone with its exact lines: the energy of the difference below 20
// kHz against that of the lines, in decibels. Wherever lines lie close, it holds both what is too
// much and what is wrong. Where there are none, it is set against a sine at full level. coupled says
// that x has passed the filter against the mean.
func distance(x []float64, t tone, want []complex128, coupled bool) float64 {
	c := spectrum(x)
	signal, wrong := 0.0, 0.0
	for k := 1; t.at(k) <= aliasTop; k++ {
		w := want[k]
		if coupled {
			w *= t.coupling(k)
		}
		signal += real(w)*real(w) + imag(w)*imag(w)
		d := c[k] - w
		wrong += real(d)*real(d) + imag(d)*imag(d)
	}
	if signal < 1e-12 {
		signal = 1
	}
	return 10 * math.Log10(wrong/signal)
}
