package measure

import (
	"fmt"
	"math"
	"slices"

	"partialcredit/synth"
	"partialcredit/synth/exact"
)

// A modulation is two oscillators of which one moves the other, or a pulse whose duty an LFO moves.
// ratio is that of the frequencies of the oscillators; amount is the index, or the peak deviation of
// the duty.
type modulation struct {
	how           synth.How // OnlyA where the LFO moves the duty
	shapeA        synth.Shape
	shapeB        synth.Shape
	ratio, amount float64
	lfo           synth.LFOShape
	line          int // of the LFO; each is 2.7 to 2.9 Hz
}

// duty is that of the pulses among operands.
const duty = 0.25

// modulations are all that is measured, by kind.
func modulations() []modulation {
	var m []modulation
	operands := [][2]synth.Shape{
		{synth.Sine, synth.Sine}, {synth.Sawtooth, synth.Sine}, {synth.Pulse, synth.Sine},
		{synth.Sawtooth, synth.Sawtooth}, {synth.Pulse, synth.Sawtooth}, {synth.Triangle, synth.Pulse},
	}
	for _, how := range []synth.How{synth.Ring, synth.AM} {
		for _, o := range operands {
			for _, ratio := range []float64{0.25, 1.37, 8} {
				m = append(m, modulation{how: how, shapeA: o[0], shapeB: o[1], ratio: ratio, amount: 1})
			}
		}
	}
	for _, carrier := range []synth.Shape{synth.Sine, synth.Sawtooth} {
		for _, ratio := range []float64{0.25, 1, 2.5, 8} {
			for _, index := range []float64{0.5, 2, 5, 10} {
				m = append(m, modulation{how: synth.FM, shapeA: carrier, shapeB: synth.Sine, ratio: ratio, amount: index})
			}
		}
	}
	for _, line := range []int{1, 4} {
		for _, depth := range []float64{0.1, 0.25, 0.45} {
			m = append(m, modulation{shapeA: synth.Pulse, amount: depth, lfo: synth.LFOTriangle, line: line})
		}
	}
	for _, depth := range []float64{0.1, 0.25, 0.45} {
		m = append(m, modulation{shapeA: synth.Pulse, amount: depth, lfo: synth.LFOTriangle, line: 3})
	}
	return append(m, modulation{shapeA: synth.Pulse, amount: 0.5, lfo: synth.LFOSawtooth, line: 6})
}

// kind names the row of the table.
func (m modulation) kind() string {
	switch {
	case m.lfo == synth.LFOSawtooth:
		return "pulse width by a sawtooth at 17 Hz over the whole period"
	case m.line != 0:
		corners := "on instants of control"
		if m.line&(m.line-1) != 0 {
			corners = "anywhere"
		}
		return fmt.Sprintf("pulse width by a triangle at %.0f Hz, corners %s", 2.8*float64(m.line), corners)
	case m.how == synth.FM:
		return fmt.Sprintf("fm of a %v by a sine", m.shapeA)
	case m.shapeB == synth.Sine:
		return fmt.Sprintf("%v of a %v and a sine", m.how, m.shapeA)
	}
	return fmt.Sprintf("%v of a %v and a %v", m.how, m.shapeA, m.shapeB)
}

// within says that the operands lie within the limits that package synth states for frequency
// modulation at 48 kHz; they go with the sample rate.
func (m modulation) within(t tone) bool {
	a, b, scale := t.hz(), m.ratio*t.hz(), t.rate/48000
	switch {
	case m.how != synth.FM:
		return true
	case m.shapeA == synth.Sine:
		return a+(m.amount+9)*b < 172000*scale
	}
	return a+m.amount*b < 38000*scale && b < 3600*scale
}

// modulator is the line of B, or of the LFO: an odd one at a ratio that the description takes.
func (m modulation) modulator(t tone) int {
	if m.line != 0 {
		return m.line
	}
	b := odd(m.ratio * float64(t.p))
	for b > 8*t.p {
		b -= 2
	}
	for 4*b < t.p {
		b += 2
	}
	return b
}

// sound describes the modulation with B at line b.
func (m modulation) sound(t tone, b int) synth.Sound {
	s := synth.Default()
	s.A.Shape, s.A.Duty, s.B.Shape, s.B.Duty = m.shapeA, duty, m.shapeB, duty
	s.Combine.How, s.Combine.Ratio, s.Combine.Index = m.how, float64(b)/float64(t.p), m.amount
	if m.line != 0 {
		s.Combine.Ratio, s.A.Duty = 1, 0.5
		s.LFO.Shape, s.LFO.Hz, s.LFO.Duty = m.lfo, t.at(b), m.amount
	}
	return s
}

// lines returns the exact spectrum, b being the line of the modulator.
func (m modulation) lines(t tone, b int) exact.Lines {
	n := t.n/2 + 1
	x, y := exact.Named(m.shapeA.String(), duty), exact.Named(m.shapeB.String(), duty)
	switch {
	case m.lfo == synth.LFOSawtooth: // s(φ-d) - s(φ) with d = bu: two sawtooths
		l := make(exact.Lines, n)
		for k, c := range exact.Named("sawtooth", 0).Partials(n) {
			l.Add(k*(t.p-b), c)
			l.Add(k*t.p, -c)
		}
		return l
	case m.line != 0:
		return exact.TriangleWidth(n, t.p, b, 0.5, m.amount)
	case m.how == synth.FM && m.shapeA == synth.Sine:
		return exact.ModulatedSine(n, t.p, b, m.amount)
	case m.how == synth.FM:
		return exact.ModulatedSawtooth(n, t.p, b, m.amount)
	}
	return exact.Product(n, t.p, b, exact.Limited(x, t.hz(), t.rate), exact.Limited(y, t.at(b), t.rate), m.one(), 1)
}

// one is 1 where the product is a·(1 + b).
func (m modulation) one() float64 {
	if m.how == synth.AM {
		return 1
	}
	return 0
}

// rival plays the modulation with oscillators made in another way.
func (m modulation) rival(method func(exact.Wave) oscillator, t tone, b int) []float64 {
	x, y := method(exact.Named(m.shapeA.String(), duty)), method(exact.Named(m.shapeB.String(), duty))
	switch {
	case m.line != 0:
		return modulateWidth(method(exact.Named("sawtooth", 0)), m.lfo == synth.LFOSawtooth, t, b, m.amount)
	case m.how == synth.FM:
		return modulatePhase(x, t, b, m.amount)
	}
	return product(play(x, t, t.p), play(y, t, b), m.one(), 1)
}

// A row is the distance from the exact lines, in decibels, of us, of operands made by two-point
// polynomial BLEP and of naive ones: the worst of so many cases.
type row struct {
	kind              string
	ours, blep, naive float64
	cases             int
}

func (m modulation) compare(t tone) row {
	b := m.modulator(t)
	want := m.lines(t, b)
	return row{
		kind:  m.kind(),
		ours:  distance(ours(m.sound(t, b), t), t, want, true),
		blep:  distance(m.rival(polyBLEP, t, b), t, want, false),
		naive: distance(m.rival(naive, t, b), t, want, false),
		cases: 1,
	}
}

// modulated measures the modulations within their limits, the worst of each kind.
func modulated(c scope) []row {
	type job struct {
		m modulation
		t tone
	}
	var jobs []job
	for _, m := range modulations() {
		for _, rate := range c.rates {
			for _, hz := range c.few {
				const n = 1 << 14
				if t := (tone{rate, odd(hz * n / rate), n}); m.within(t) {
					jobs = append(jobs, job{m, t})
				}
			}
		}
	}
	measured := make([]row, len(jobs))
	parallel(len(jobs), func(i int) { measured[i] = jobs[i].m.compare(jobs[i].t) })
	var rows []row
	for _, r := range measured {
		i := slices.IndexFunc(rows, func(other row) bool { return other.kind == r.kind })
		if i < 0 {
			rows = append(rows, r)
			continue
		}
		w := &rows[i]
		w.ours, w.blep, w.naive = math.Max(w.ours, r.ours), math.Max(w.blep, r.blep), math.Max(w.naive, r.naive)
		w.cases++
	}
	return rows
}
