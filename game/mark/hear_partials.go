package mark

import "math"

// partials are the mean levels of partials 1, 2, .. at [0], [1], .., in dB
// under the strongest.
type partials struct {
	db        []float64
	strongest int // its number
	ok        bool
}

// inaudible is the level under the strongest partial at which a partial counts
// as missing: -50 dB (design choice; masking hides it well before).
const inaudible = -50.0

// mean averages the power of each partial over the steady part, every frame
// brought to the same level so that a decaying sound counts evenly.
func (f *frames) mean() (p partials) {
	if len(f.power) == 0 {
		return
	}
	from, to := f.steady()
	sum := make([]float64, len(f.power[0]))
	var mean float64
	for i := from; i < to; i++ {
		mean += f.total[i]
	}
	mean /= float64(to - from)
	for i := from; i < to; i++ {
		// Half way between counting power and counting frames.
		w := 1 / math.Sqrt(f.total[i]*mean+1e-30)
		for k, v := range f.power[i] {
			sum[k] += w * v
		}
	}
	top := 0.0
	for k, v := range sum {
		if v > top {
			top, p.strongest = v, k+1
		}
	}
	if top == 0 {
		return
	}
	p.db = make([]float64, len(sum))
	for k, v := range sum {
		p.db[k] = math.Max(inaudible*2, 10*math.Log10(v/top+1e-30))
	}
	p.ok = true
	return
}

// at is the level of partial n in dB, not under the level called inaudible.
func (p partials) at(n int) float64 {
	if n < 1 || n > len(p.db) {
		return inaudible
	}
	return math.Max(inaudible, p.db[n-1])
}

// filled is the share of the partials, up to the last one within 30 dB of the
// strongest, that can be heard.
func (p partials) filled() float64 {
	last, n := 0, 0
	for k := 1; k <= len(p.db); k++ {
		if p.at(k) > -30 {
			last = k
		}
	}
	for k := 1; k <= last; k++ {
		if p.at(k) > -45 {
			n++
		}
	}
	if last == 0 {
		return 0
	}
	return float64(n) / float64(last)
}

// inharmonic is the share of the power that lies beside the partials.
func (f *frames) inharmonic() float64 { return f.beside(0, len(f.power)) }

// early is the same for the first seconds.
func (f *frames) early(seconds float64) float64 {
	return f.beside(0, min(len(f.power), max(3, int((seconds-f.first)/f.hop))))
}

func (f *frames) beside(from, to int) float64 {
	var all, partials float64
	for i := from; i < to; i++ {
		all += f.total[i]
		partials += f.own[i]
	}
	if all == 0 || to == from {
		return 0
	}
	return math.Max(0, 1-partials/all)
}
