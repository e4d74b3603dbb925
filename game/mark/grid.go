package mark

import (
	"math"
	"sync"

	"partialcredit/synth/spectrum"
)

// A grid measures sounds of one length.
type grid struct {
	*tables
	*workbench
	note float64 // Hz, at which the target is written
}

// tables are what measuring sounds of one length needs to know.
type tables struct {
	seconds float64
	spacing float64   // Hz between bins, 1/seconds
	weight  []float64 // amplitude weight per bin, 0 beyond the audible
	edges   []float64 // of the cells, in bins
	slope   []float64 // factor per bin for jumps
	bands   []band
	slow    []float64 // see passBands
	fast    []float64
	rates   []float64 // see rateEdges
}

// A workbench is what measuring works on: transforms and buffers, for one sound
// at a time.
type workbench struct {
	kit      spectrum.Kit
	analytic []complex128 // of a band: its signal, and
	power    []float64    // the power of it, padded
}

// workbenches go from one hand-in to the next, whatever their targets.
var workbenches = sync.Pool{New: func() any { return new(workbench) }}

// borrow gives the grid a workbench until what it returns is called.
func (g *grid) borrow() (giveBack func()) {
	g.workbench = workbenches.Get().(*workbench)
	return func() {
		workbenches.Put(g.workbench)
		g.workbench = nil
	}
}

// take measures and hears a sound of the grid's length.
func (g *grid) take(sound []float32) (*features, *heard) {
	defer g.borrow()()
	return g.measure(sound), hear(&g.kit, sound, Rate, g.note)
}

// hear hears a sound of the grid's length. Nobody else may use the grid while it pauses.
func (g *grid) hear(sound []float32, pause func()) *heard {
	defer g.borrow()()
	return hearPausing(&g.kit, sound, Rate, g.note, pause)
}

// features measures a sound of the grid's length.
func (g *grid) features(sound []float32) *features {
	defer g.borrow()()
	return g.measure(sound)
}

// room returns n values of a buffer, which grows as needed.
func room[T any](buffer *[]T, n int) []T {
	if cap(*buffer) < n {
		*buffer = make([]T, n)
	}
	return (*buffer)[:n]
}

func newGrid(seconds, note float64) *grid {
	t, ok := tablesMade.Load(seconds)
	if !ok {
		t, _ = tablesMade.LoadOrStore(seconds, newTables(seconds))
	}
	return &grid{tables: t.(*tables), note: note}
}

var tablesMade sync.Map // of *tables, by seconds: one for each of lengths

// loudnessShare is the part of the A-weighting that is applied: 0.6 of its
// decibels, between none and the threshold-like full curve, as the ear at
// moderate levels (design choice of the method, fitted with it).
const loudnessShare = 0.6

func newTables(seconds float64) *tables {
	t := &tables{
		seconds: seconds,
		spacing: 1 / seconds,
		weight:  make([]float64, int(highestHz*seconds)),
		edges:   edges(1 / seconds),
	}
	for k := range t.weight {
		if hz := float64(k) * t.spacing; hz >= 20 { // the lower limit of hearing
			t.weight[k] = spectrum.Amplitude(loudnessShare * spectrum.AWeight(hz))
		}
	}
	t.slope = slopeWeights(t)
	t.bands = bandsOf(t)
	t.slow, t.fast = t.passBands()
	t.rates = t.rateEdges()
	return t
}

// listen returns the weighted spectrum of the samples, scaled to a total power
// of 1, until the next call. Silence gives nil.
func (g *grid) listen(samples []float32) []complex128 {
	x := g.kit.Real(int(math.Round(g.seconds*Rate))).Coefficients(samples, nil)[:len(g.weight)]
	sum := 0.0
	for k, w := range g.weight {
		re, im := w*real(x[k]), w*imag(x[k])
		x[k] = complex(re, im)
		sum += re*re + im*im
	}
	// -120 dB re a full-scale sine is silence on any device (design choice).
	if silent := 1e-6 * float64(len(samples)) / 2; !(sum > silent*silent) {
		return nil
	}
	scale := 1 / math.Sqrt(sum)
	for k, v := range x {
		x[k] = complex(scale*real(v), scale*imag(v))
	}
	return x
}
