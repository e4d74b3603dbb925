package mark

import "math"

// unbeaten are the mean powers of the first partials, those of even number
// without what two tones one or more octaves apart make them swell: their beats
// may be so slow that the sound holds less than one. Known weakness: where
// hardly anything moves through the sound the means are not sure.
func (f *frames) unbeaten(h *heard) []float64 {
	if len(f.power) == 0 {
		return nil
	}
	from, to := f.steady()
	mean := make([]float64, min(24, len(f.power[0])))
	for i := from; i < to; i++ {
		for k := range mean {
			mean[k] += f.power[i][k] / float64(to-from)
		}
	}
	hz := f.evenBeats(h, mean, from, to)
	for k := 1; k < len(mean); k += 2 {
		mean[k] = f.without(hz*float64(k+1)/2, k, from, to)
	}
	return mean
}

// evenBeats is how often a second partial 2 swells by two tones an octave
// apart, partial 2n n times as often.
func (f *frames) evenBeats(h *heard, mean []float64, from, to int) float64 {
	var moves [][]float64
	var weights []float64
	var number []int
	for k := 1; k < len(mean); k += 2 {
		if mean[k] < 1e-4*quantile(mean, 1) {
			continue
		}
		e := make([]float64, to-from)
		for i := range e {
			e[i] = f.power[from+i][k]/mean[k] - 1
		}
		moves = append(moves, e)
		weights = append(weights, math.Pow(mean[k], 0.35))
		number = append(number, (k+1)/2)
	}
	if len(moves) < 2 {
		return 0
	}
	hz, _ := beatRate(h.sound.kit, moves, weights, number, f.hop)
	return hz
}

// without is the mean power of partial k (from 0) without what swells at hz.
func (f *frames) without(hz float64, k, from, to int) float64 {
	y, ones := make([]float64, to-from), make([]float64, to-from)
	mean := 0.0
	for i := range y {
		y[i], ones[i] = f.power[from+i][k], 1
		mean += y[i] / float64(to-from)
	}
	if length := float64(to-from) * f.hop; hz*length < 0.3 || hz*length > 30 {
		return mean
	}
	s, c, _ := fitSine(y, ones, f.hop, hz)
	if math.IsNaN(s) {
		return mean
	}
	for i := range y {
		sin, cos := math.Sincos(2 * math.Pi * hz * f.hop * float64(i))
		mean -= (s*sin + c*cos) / float64(to-from)
	}
	return math.Max(0, mean)
}

// stirred is how far partials 1, 3, 5 ..; 2, 6, 10 ..; 4, 12 ..; 8, 16 move, rms
// against their mean: two tones an octave apart stir the even ones alone.
func (f *frames) stirred() (moves [4]float64) {
	if len(f.power) == 0 {
		return
	}
	from, to := f.steady()
	var count [4]float64
	for k := 1; k <= min(16, len(f.power[0])); k++ {
		e := make([]float64, to-from)
		mean := 0.0
		for i := range e {
			e[i] = f.power[from+i][k-1]
			mean += e[i] / float64(len(e))
		}
		c := classOf(k)
		moves[c] += math.Sqrt(variance(e)) / (mean + 1e-9)
		count[c]++
	}
	for c := range moves {
		moves[c] /= math.Max(1, count[c])
	}
	return
}
