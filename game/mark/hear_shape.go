package mark

import "math"

// shape is what the partials of a pitched sound look like, over the whole
// sound and frame by frame.
type shape struct {
	family family
	value  float64 // mean duty, sync ratio or index
	low    float64 // 5th and 95th percentile over the sound
	high   float64
	fall   fall    // of the value towards its end, where it falls exponentially
	left   float64 // mean misfit in dB
	ok     bool
}

// A fall is an exponential movement from one value to another.
type fall struct {
	from, to float64
	seconds  float64 // time constant
	ok       bool
}

// allowance is by how much in dB a simpler family may fit worse and still be
// named (design choice).
var allowance = [families]float64{sine: 0.9, triangle: 0.9, sawtooth: 0.9, pulse: 0.5, synced: 0.3}

// clearFit is the greatest misfit in dB at which a family is named (design choice).
const clearFit = 1.5

// modulates says whether a family is one of frequency modulation.
func modulates(f family) bool { return f >= indexed && f <= indexedHalf }

// shape names the family whose members fit the frames of the steady part best.
func (f *frames) shape(h *heard) (s shape) {
	if len(f.power) == 0 || !h.pitch.ok {
		return
	}
	from, to := f.steady()
	from = min(from, int(math.Ceil(0.015/f.hop)))
	var misfit [families]float64
	var near [families]int // the members that fit the last frame
	const samples = 10
	count := 0
	for j := range samples {
		i := from + (to-from)*(2*j+1)/(2*samples)
		if i >= to {
			continue
		}
		have := levelsOf(f.power[i])
		for g := sine; g < families; g++ {
			_, e := have.fit(g, &near[g])
			misfit[g] += e
		}
		count++
	}
	best, runnerUp := math.Inf(1), math.Inf(1)
	for g := sine; g < families; g++ {
		misfit[g] /= float64(count)
		if m := misfit[g] - allowance[g]; m < best {
			best, runnerUp = m, best
			s.family, s.left = g, misfit[g]
		} else {
			runnerUp = math.Min(runnerUp, m)
		}
	}
	s.ok = s.left < clearFit || (modulates(s.family) || resets(s.family)) && s.left < 2*clearFit && s.left < runnerUp-1.5
	if len(templates()[s.family]) == 1 {
		return
	}
	values := make([]float64, 0, to-from)
	weights := make([]float64, 0, to-from)
	stride := (to-from)/120 + 1
	for i := from; i < to; i += stride {
		have := levelsOf(f.power[i])
		v, e := have.fit(s.family, &near[s.family])
		values = append(values, v)
		weights = append(weights, 1/(0.3+e*e))
	}
	s.low, s.value, s.high = quantile(values, 0.05), quantile(values, 0.5), quantile(values, 0.95)
	logs := values
	start := quantile(values[:min(3, len(values))], 0.5)
	moved := math.Abs(start-s.value) > 0.3 || !modulates(s.family) && math.Abs(math.Log(start/s.value)) > 0.08
	if !modulates(s.family) {
		logs = make([]float64, len(values))
		for i, v := range values {
			logs[i] = math.Log2(v)
		}
	}
	amount, seconds, end, left := fitFall(logs, weights, f.hop*float64(stride))
	begin := f.first + float64(from)*f.hop - f.hop*float64(stride)/2
	amount *= math.Exp(begin / seconds)
	if math.Abs(amount) > 4*left && math.Abs(amount) > 0.15 && seconds > 0.012 && moved {
		s.fall = fall{from: end + amount, to: end, seconds: seconds, ok: true}
		if !modulates(s.family) {
			s.fall.from, s.fall.to = math.Exp2(end+amount), math.Exp2(end)
		}
	}
	return
}
