package sheet_test

import (
	"math"
	"math/cmplx"

	"partialcredit/synth"
	"partialcredit/synth/exact"
	"partialcredit/synth/spectrum"
)

// grid is how many lines there are from 0 to the pitch as written: enough for
// every ratio of the course with two decimals, at 32 feet too.
const grid = 400

// reach is how far the exact lines go in hertz.
const reach = 8000.0

// known returns the exact lines of a sound from package exact, which shares no
// code with package synth; false where none are known to it.
func known(s synth.Sound) ([]spectrum.Line, bool) {
	if still := synth.Default(); s.Envelope != still.Envelope || s.Amplitude != still.Amplitude || s.Character != 0 {
		return nil, false
	}
	hz, hzB := s.Hz()
	if moved(s) {
		return movedWidth(s, hz)
	}
	if s.Combine.How == synth.Mix && s.A.Cents != s.B.Cents {
		return append(series(s.A, hz), series(s.B, hzB)...), true
	}
	if s.A.Cents != 0 || s.B.Cents != 0 {
		return nil, false
	}
	a, b := int(math.Round(grid*8/s.A.Footage)), int(math.Round(grid*8/s.A.Footage*hzB/hz))
	written := hz * s.A.Footage / 8
	n := int(grid * reach / written)
	l := make(exact.Lines, n)
	add := func(f int, partials []complex128, gain float64) {
		for k := 1; k < len(partials); k++ {
			l.Add(k*f, complex(gain, 0)*partials[k])
		}
	}
	switch c := s.Combine; c.How {
	case synth.OnlyA:
		add(a, partials(s.A, n/a), 1)
	case synth.Mix:
		add(a, partials(s.A, n/a), math.Min(1, 1-c.Balance))
		add(b, partials(s.B, n/b), math.Min(1, 1+c.Balance))
	case synth.Ring:
		l = exact.Product(n, a, b, partials(s.A, 3*n/a), partials(s.B, 3*n/b), 0, 1)
	case synth.AM:
		l = exact.Product(n, a, b, partials(s.A, 3*n/a), partials(s.B, 3*n/b), 1, c.Depth)
	case synth.Sync:
		add(a, wave(s.B).Synced(float64(b)/float64(a)).Partials(n/a), 1)
	case synth.FM:
		if s.A.Shape != synth.Sine || s.B.Shape != synth.Sine || s.B.Phase != 0 {
			return nil, false
		}
		l = exact.ModulatedSine(n, a, b, c.Index*s.B.Level)
	}
	var lines []spectrum.Line
	for k := 1; k < n; k++ { // what stands still is not heard
		lines = append(lines, spectrum.Line{Hz: float64(k) / grid * written, Amplitude: cmplx.Abs(l[k])})
	}
	return lines, true
}

func moved(s synth.Sound) bool { return s.LFO.Duty != 0 || s.LFO.Cents != 0 || s.LFO.Level != 0 }

func wave(o synth.Osc) exact.Wave { return exact.Named(o.Shape.String(), o.Duty) }

// partials are those of an oscillator with its level and start phase.
func partials(o synth.Osc, n int) []complex128 {
	c := wave(o).Partials(n)
	for k := range c {
		c[k] *= cmplx.Rect(o.Level, 2*math.Pi*float64(k)*o.Phase)
	}
	return c
}

func series(o synth.Osc, hz float64) (lines []spectrum.Line) {
	for k, p := range partials(o, int(reach/hz)) {
		if k > 0 {
			lines = append(lines, spectrum.Line{Hz: float64(k) * hz, Amplitude: cmplx.Abs(p)})
		}
	}
	return
}

// movedWidth knows a pulse whose duty a sawtooth carries from 0 to 1: it is the
// difference of a sawtooth and one that lags by the duty, a whole period in
// every period of the LFO, which makes its frequency lower by just that of the
// LFO (own derivation; sound.md 3 of the project's references has the first
// step).
func movedWidth(s synth.Sound, hz float64) ([]spectrum.Line, bool) {
	l := s.LFO
	if s.Combine.How != synth.OnlyA || s.A.Shape != synth.Pulse || s.A.Duty != 0.5 || l.Duty != 0.5 ||
		l.Shape != synth.LFOSawtooth || l.Cents != 0 || l.Level != 0 || l.Fade != 0 {
		return nil, false
	}
	sawtooth := synth.Default().A
	return append(series(sawtooth, hz), series(sawtooth, hz-l.Hz)...), true
}
