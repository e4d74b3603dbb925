package mark

import "math"

// gaps is the share of the frames of the steady part that lie 14 dB and more
// under the loudest: a pulse of less than a hundredth of the period.
func (f *frames) gaps() float64 {
	from, to := f.steady()
	top, n := 0.0, 0
	for _, p := range f.total[from:to] {
		top = math.Max(top, p)
	}
	for _, p := range f.total[from:to] {
		if p < 0.04*top {
			n++
		}
	}
	return float64(n) / math.Max(1, float64(to-from))
}

// drift is by how much in dB the level of the partials against that of the
// whole differs between the quarters of the steady part: a movement too slow to
// be counted. 0 where there is no pitch.
func (f *frames) drift(h *heard) float64 {
	from, to := f.steady()
	quarter := (to - from) / 4
	if !h.pitched() || len(f.power) == 0 || quarter < 4 {
		return 0
	}
	levels := func(at func(i int) float64) (l [4]float64) {
		for q := range l {
			sum := 1e-30
			for i := from + q*quarter; i < from+(q+1)*quarter; i++ {
				sum += at(i)
			}
			l[q] = 10 * math.Log10(sum)
		}
		return
	}
	whole := levels(func(i int) float64 { return f.total[i] })
	var sum, weight float64
	for k := range min(16, len(f.power[0])) {
		if level := h.partial.at(k + 1); level > -30 {
			own := levels(func(i int) float64 { return f.power[i][k] })
			least, most := math.Inf(1), math.Inf(-1)
			for q, v := range own {
				least, most = math.Min(least, v-whole[q]), math.Max(most, v-whole[q])
			}
			d := most - least
			sum += weightOf(level) * d * d
			weight += weightOf(level)
		}
	}
	if weight == 0 {
		return 0
	}
	return math.Sqrt(sum / weight)
}
