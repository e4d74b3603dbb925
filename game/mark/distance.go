package mark

import "math"

// A difference is one way in which two sounds differ: its distance is 0 for equal
// sounds and counts as weight·distance^exponent.
type difference struct {
	name             string
	weight, exponent float64
	distance         func(p *pair) float64
}

// pooling is the exponent of the sum over all differences.
const pooling = 1.359

// differences make the distance between two sounds. Weights and exponents were fitted
// on 260 rendered targets of all techniques to wanted marks per just-noticeable
// step (marking.md, section 3); those of the last three by hand: jumps and rate
// stay in proportion far from the target, growth hears a fade-in.
var differences = []difference{
	{"fine spectrum", 2.400, 1.435, func(p *pair) float64 { return relative(p.t.fine, p.y.fine, 0) }},
	{"fine transport", 0.0202, 3.0, func(p *pair) float64 { return math.Log1p(transport(p.t.coarse, p.y.coarse) * cellCents / 30) }},
	{"place transport", 0.0670, 2.570, func(p *pair) float64 { return math.Log1p(transport(p.t.place, p.y.place) * 0.5 / 0.15) }},
	{"broad level", 0.271, 1.169, (*pair).broadLevel},
	{"modulation, narrow", 0.968, 2.461, func(p *pair) float64 { return p.bands(p.t.rate[0], p.y.rate[0], 0.511) }},
	{"modulation, wide", 0.999, 2.594, func(p *pair) float64 { return p.bands(p.t.rate[1], p.y.rate[1], 0.511) }},
	{"modulation, overall", 0.220, 0.5, func(p *pair) float64 { return relative(p.t.overall, p.y.overall, 0.511) }},
	{"modulation depth", 0.282, 1.903, (*pair).depth},
	{"slow movement in time", 0.825, 3.0, func(p *pair) float64 { return p.bands(p.t.slow, p.y.slow, 0.036) }},
	{"fast movement in time", 0.336, 0.751, func(p *pair) float64 { return p.bands(p.t.fast, p.y.fast, 0.036) }},
	{"jumps of the waveform", 7, 2, (*pair).jumpDistance},
	{"modulation rate", 0.1, 1, (*pair).rateTransport},
	{"growth of movement", 40, 1.5, (*pair).growth},
}

// A pair is two sounds being compared, with the weights of the bands that
// either has.
type pair struct {
	t, y  *features
	band  []float64 // per band, sum 1
	place []float64 // per filter of the profile, sum 1
}

func compare(t, y *features) *pair {
	p := &pair{t: t, y: y, band: make([]float64, len(t.mean)), place: make([]float64, len(t.profile))}
	share(p.band, t.mean, y.mean, 1e-4, 0)
	share(p.place, t.profile, y.profile, placeFloor, placeFloor)
	return p
}

// share writes (max(a, b) - less)^0.3 where that maximum is above the floor, 0
// elsewhere, scaled to a sum of 1.
func share(dst, a, b []float64, floor, less float64) {
	sum := 0.0
	for i := range dst {
		if m := math.Max(a[i], b[i]); m > floor {
			dst[i] = math.Pow(m-less, bandCompression)
			sum += dst[i]
		}
	}
	if sum == 0 {
		return
	}
	for i := range dst {
		dst[i] /= sum
	}
}

// z is the distance of the pair, 0 for equal sounds.
func (p *pair) z() float64 {
	sum := 0.0
	for _, t := range differences {
		sum += t.weight * math.Pow(t.distance(p), t.exponent)
	}
	return math.Pow(sum, 1/pooling)
}

// relative is Σ|a - b| / (Σ max(a, b) + eps), from 0 to 1.
func relative(a, b []float64, eps float64) float64 {
	apart, most := 0.0, eps
	for i := range a {
		apart += math.Abs(a[i] - b[i])
		most += math.Max(a[i], b[i])
	}
	if most == 0 {
		return 0
	}
	return apart / most
}

// bands is relative over all values of all bands, weighted by band.
func (p *pair) bands(a, b [][]float64, eps float64) float64 {
	apart, most := 0.0, eps
	for i, w := range p.band {
		if w == 0 {
			continue
		}
		for k := range a[i] {
			apart += w * math.Abs(a[i][k]-b[i][k])
			most += w * math.Max(a[i][k], b[i][k])
		}
	}
	return apart / most
}

// transport is the earth mover's distance of two distributions along their
// index, each scaled to a sum of 1 first.
func transport(a, b []float64) float64 {
	var sumA, sumB float64
	for i := range a {
		sumA += a[i]
		sumB += b[i]
	}
	surplus, work := 0.0, 0.0
	for i := range a {
		surplus += a[i]/sumA - b[i]/sumB
		work += math.Abs(surplus)
	}
	return work
}

func (p *pair) broadLevel() float64 {
	sum := 0.0
	for i, w := range p.place {
		d := math.Abs(p.t.level[i] - p.y.level[i])
		sum += w * d / (d + 2) // 2 dB: half of the most a filter can count
	}
	return sum
}

// rateTransport is the earth mover's distance of the modulation rates, in
// tenths of an octave on a logarithmic scale, as far as both sounds move.
func (p *pair) rateTransport() float64 {
	least := math.Min(sum(p.t.overall), sum(p.y.overall))
	if least == 0 {
		return 0
	}
	octaves := transport(p.t.overall, p.y.overall) / ratesPer8v
	return math.Log1p(octaves/0.1) * least / (least + 0.511)
}

// depth compares modulation depths as ratios, over a floor of 3 %.
func (p *pair) depth() float64 {
	const floor = 0.03
	sum := 0.0
	for i, w := range p.band {
		sum += w * math.Abs(math.Log((p.t.depth[i]+floor)/(p.y.depth[i]+floor)))
	}
	return sum
}

// growth is how far apart in seconds the middles of the strength of movement
// lie along time, as far as both sounds move: whether the movement comes early
// or late in the note. Movement of a few cycles only, which has no middle, does
// not count.
func (p *pair) growth() float64 {
	t, y := &middle{}, &middle{}
	for i, w := range p.band {
		if w == 0 {
			continue
		}
		t.add(w, p.t, i)
		y.add(w, p.y, i)
	}
	least := math.Min(t.mass, y.mass)
	if least == 0 {
		return 0
	}
	followed := t.followed() * y.followed()
	return math.Abs(t.moment/t.mass-y.moment/y.mass) * p.t.seconds * least / (least + 0.05) * followed
}

// A middle is the mean strength of movement in a sound, its first moment along
// time in lengths of the sound, and its power beside that of all movement.
type middle struct{ mass, moment, power, all float64 }

func (m *middle) add(weight float64, f *features, band int) {
	for k := range f.slow[band] {
		from, to := stretches[k], stretches[k+1]
		strength := math.Hypot(f.slow[band][k], f.fast[band][k])
		m.mass += weight * strength * (to - from)
		m.moment += weight * strength * (to - from) * (from + to) / 2
		m.power += weight * strength * strength * (to - from)
	}
	m.all += weight * f.depth[band] * f.depth[band]
}

// followed is the share of the movement that is fast enough to be followed
// through the stretches.
func (m *middle) followed() float64 { return math.Min(1, m.power/math.Max(m.all, 1e-12)) }
