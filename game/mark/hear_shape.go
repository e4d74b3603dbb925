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

// names for sentences.
var familyNames = [families]string{"", "a sine", "a triangle", "a sawtooth", "a pulse", "a synced sawtooth",
	"a synced triangle", "a synced sine", "a synced square", "frequency modulation", "frequency modulation by twice", "frequency modulation by three times", "frequency modulation by half"}

// allowance is by how much in dB a simpler family may fit worse and still be
// named (design choice).
var allowance = [families]float64{sine: 0.9, triangle: 0.9, sawtooth: 0.9, pulse: 0.5, synced: 0.3}

// clear is the greatest misfit in dB at which a family is named (design choice).
const clearFit = 1.5

// fit finds the member of a family nearest to levels in dB. Levels are compared
// after the best common shift.
func fit(db []float64, f family) (value, misfit float64, index int) {
	n := min(len(db), templatePartials)
	var have [templatePartials]float64
	top := floor * 10
	for _, v := range db[:n] {
		top = math.Max(top, v)
	}
	for k := range n {
		have[k] = math.Max(floor, db[k]-top)
	}
	score := func(t *template) float64 {
		var d [templatePartials]float64
		var sum, weight float64
		for k := range n {
			// What is missing in both says nothing.
			d[k] = have[k] - t.db[k]
			w := weightOf(have[k], t.db[k])
			sum += w * d[k]
			weight += w
		}
		shift, err := sum/weight, 0.0
		for k := range n {
			e := math.Min(15, math.Abs(d[k]-shift))
			if have[k] == floor && t.db[k] == floor {
				e = 0
			}
			err += weightOf(have[k], t.db[k]) * e * e
		}
		return err / weight
	}
	best := math.Inf(1)
	for i := range templates[f] {
		if e := score(&templates[f][i]); e < best {
			best, index = e, i
		}
	}
	list := templates[f]
	value = list[index].value
	if index > 0 && index < len(list)-1 {
		a, c := score(&list[index-1]), score(&list[index+1])
		if d := a - 2*best + c; d > 0 {
			value += 0.25 * (list[index+1].value - list[index-1].value) * (a - c) / d
		}
	}
	return value, math.Sqrt(best), index
}

// modulates says whether a family is one of frequency modulation.
func modulates(f family) bool { return f >= indexed && f <= indexedHalf }

// weightOf a partial grows with its level: 0.1 at the floor, 1 at the top.
func weightOf(a, b float64) float64 { return 0.1 + 0.9*(1-math.Max(a, b)/floor) }

// shape names the family whose members fit the frames of the steady part best.
func (f *frames) shape(h *heard) (s shape) {
	if len(f.power) == 0 || !h.pitch.ok {
		return
	}
	from, to := f.steady()
	from = min(from, int(math.Ceil(0.015/f.hop)))
	level := func(i int) []float64 {
		n := min(len(f.power[i]), templatePartials)
		db := make([]float64, n)
		for k := range db {
			db[k] = 10 * math.Log10(f.power[i][k]+1e-20)
		}
		return db
	}
	var misfit [families]float64
	const samples = 10
	count := 0
	for j := range samples {
		i := from + (to-from)*(2*j+1)/(2*samples)
		if i >= to {
			continue
		}
		db := level(i)
		for g := sine; g < families; g++ {
			_, e, _ := fit(db, g)
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
	if len(templates[s.family]) == 1 {
		return
	}
	values := make([]float64, 0, to-from)
	weights := make([]float64, 0, to-from)
	stride := (to-from)/120 + 1
	for i := from; i < to; i += stride {
		v, e, _ := fit(level(i), s.family)
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
