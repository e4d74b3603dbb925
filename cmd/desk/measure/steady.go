package measure

import (
	"fmt"
	"math"
	"runtime"
	"sync"

	"partialcredit/synth"
	"partialcredit/synth/exact"
)

// A wave is a steady waveform; ratio 0 is unsynced.
type wave struct {
	shape       synth.Shape
	duty, ratio float64
}

func (w wave) String() string {
	if w.shape == synth.Pulse {
		return fmt.Sprintf("pulse %v", w.duty)
	}
	return w.shape.String()
}

func (w wave) exact() exact.Wave {
	x := exact.Named(w.shape.String(), w.duty)
	if w.ratio != 0 {
		x = x.Synced(w.ratio)
	}
	return x
}

func (w wave) sound() synth.Sound {
	s := synth.Default()
	s.A.Shape, s.A.Duty = w.shape, w.duty
	s.B.Shape, s.B.Duty = w.shape, w.duty
	if w.ratio != 0 {
		s.Combine.How, s.Combine.Ratio = synth.Sync, w.ratio
	}
	return s
}

// silent says that the pulse never falls before it is sent back.
func (w wave) silent() bool {
	return w.shape == synth.Pulse && w.ratio != 0 && w.ratio <= w.duty
}

// shapes are the waveforms by themselves.
var shapes = []wave{
	{shape: synth.Triangle}, {shape: synth.Sawtooth}, {shape: synth.FallingSawtooth}, {shape: synth.Sine},
	{shape: synth.Pulse, duty: 0.03}, {shape: synth.Pulse, duty: 0.1}, {shape: synth.Pulse, duty: 0.25}, {shape: synth.Pulse, duty: 0.5},
}

// A scope is how much is measured.
type scope struct {
	rates   []float64
	pitches []float64 // Hz
	ratios  []float64 // of sync
	few     []float64 // pitches of what takes long to work out exactly
	seconds float64   // for a measurement of speed
}

// whole is the scope of the table: from the lowest to the highest key of a piano in half octaves.
var whole = scope{
	rates:   []float64{44100, 48000},
	pitches: halfOctaves(27.5, 4186),
	ratios:  []float64{0.25, 0.4, 0.6, 1, 1.5, 2, 2.5, 3.7, 5.3, 7.5, 8},
	few:     []float64{27.5, 110, 440, 1760, 4186},
	seconds: 2,
}

// quick is a scope for tests.
var quick = scope{
	rates:   []float64{44100},
	pitches: []float64{220, 4186},
	ratios:  []float64{1.5, 7.5},
	few:     []float64{1760},
	seconds: 0.1,
}

// halfOctaves returns the pitches from low up to high, and high.
func halfOctaves(low, high float64) []float64 {
	var hz []float64
	for ; low < 0.99*high; low *= math.Sqrt2 {
		hz = append(hz, low)
	}
	return append(hz, high)
}

// A comparison is the same measured of us and of our rivals.
type comparison struct {
	wave              wave
	tone              tone
	ours, blep, naive Quality
	browser           Quality // of the shapes that it has
	browserHas        bool
}

// compare measures one waveform. browser plays its own waveform of that name, or none.
func compare(w wave, t tone) comparison {
	x := w.exact()
	want := x.Partials(int(aliasTop / t.hz()))
	return comparison{
		wave:  w,
		tone:  t,
		ours:  judge(ours(w.sound(), t), t, want, false),
		blep:  judge(play(polyBLEP(x), t, t.p), t, want, false),
		naive: judge(play(naive(x), t, t.p), t, want, false),
	}
}

// compareAll measures the waveforms by themselves and synced over a scope, as many at a time as
// there are processors.
func compareAll(c scope) []comparison {
	var jobs []comparison
	for _, rate := range c.rates {
		for _, hz := range c.pitches {
			for _, w := range shapes {
				for _, w.ratio = range append([]float64{0}, c.ratios...) {
					if !w.silent() {
						jobs = append(jobs, comparison{wave: w, tone: coherent(hz, rate)})
					}
				}
			}
		}
	}
	parallel(len(jobs), func(i int) { jobs[i] = compare(jobs[i].wave, jobs[i].tone) })
	return jobs
}

// parallel calls f with 0 to n-1.
func parallel(n int, f func(i int)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := range next {
				f(i)
			}
		}()
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}
