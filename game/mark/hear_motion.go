package mark

import (
	"math"
)

// motionKind says how the levels of the partials move.
type motionKind int

const (
	still   motionKind = iota
	beats              // partial n swells n times as often as the first: two tones
	tremolo            // all partials swell together: the level moves
	width              // all partials at one rate but not together: the duty moves
	slow               // something moves, less than about once in the sound
)

// motion is the periodic movement of the partials.
type motion struct {
	kind  motionKind
	hz    float64 // the rate; for slow the highest that it can be
	depth float64 // tremolo: 1 - lowest/highest level; beats: weaker/stronger tone; width: rms relative movement
	lone  bool    // only one partial: beats and tremolo are hard to tell apart
	sure  float64 // share of the movement that is explained
}

// motion looks for beats and for a common period in the power of the partials
// over time, each relative to its own mean. Beats: two partials n·f and
// n·(f+δ) give a²+b²+2ab·cos 2πnδt. Known weakness: of a single partial (two
// sines) beats and tremolo cannot be told apart; it is called beats when its
// level falls to nothing as a sinusoid's does.
func (f *frames) motion(h *heard) (m motion) {
	from, to := f.steady()
	n := to - from
	if n < 12 || h.tones.ok && !h.pitched() {
		return // sums and differences beat in many ways
	}
	length := float64(n) * f.hop
	var moves [][]float64
	var weights []float64
	var number []int
	trend := logSlope(f.total[from:to])
	series := func(at func(i int) float64) ([]float64, float64) {
		e := make([]float64, n)
		mean := 0.0
		for i := range e {
			e[i] = at(from+i) * math.Exp(-trend*(float64(i)-float64(n)/2))
			mean += e[i] / float64(n)
		}
		if mean == 0 {
			return nil, 0
		}
		for i := range e {
			e[i] = e[i]/mean - 1
		}
		detrend(e)
		return e, mean
	}
	if h.pitched() && len(f.power) > 0 {
		for k := range min(24, len(f.power[0])) {
			if h.partial.at(k+1) < -38 {
				continue
			}
			e, _ := series(func(i int) float64 { return f.power[i][k] })
			moves = append(moves, e)
			weights = append(weights, math.Pow(10, h.partial.at(k+1)/10*0.35))
			number = append(number, k+1)
		}
	} else {
		e, _ := series(func(i int) float64 { return f.total[i] })
		moves, weights, number = [][]float64{e}, []float64{1}, []int{1}
	}
	var all, weight float64
	for j, e := range moves {
		all += weights[j] * variance(e)
		weight += weights[j]
	}
	if weight == 0 || math.Sqrt(all/weight) < 0.03 {
		return
	}
	beat, beatShare := beatRate(h.sound.kit, moves, weights, number, f.hop)
	rate, common := commonRate(moves, weights, f.hop)
	together := togetherness(moves, weights, all)
	m.depth = math.Sqrt(all / weight)
	m.lone = len(moves) == 1
	switch {
	case beatShare > 0.75 && len(moves) > 1 && beatShare > 0.9*common && together < 0.8 || beatShare > 0.985 && len(moves) == 1:
		m.kind, m.hz, m.sure = beats, beat, beatShare
		m.depth = fainter(moves, weights, number, f, beat)
	case common > 0.6 && rate > 41: // an LFO moves the duty twice in its period at most
		return motion{}
	case common > 0.6:
		m.hz, m.sure = rate, common
		if together > 0.85 && len(moves) == 1 && h.vibrato.ok && math.Abs(h.vibrato.hz-rate) < 0.05*rate && h.phaseBeats(m.depth) {
			// The pitch of two unequal tones swings with their level.
			m.kind = beats
			m.depth = fainter(moves, weights, number, f, rate)
		} else if together > 0.85 {
			m.kind = tremolo
			m.depth = swing(f.total[from:to], f, rate, trend)
		} else {
			m.kind = width
		}
	case beatShare > 0.75 && together < 0.8 && len(moves) > 1:
		m.kind, m.hz, m.sure = beats, beat, beatShare
		m.depth = fainter(moves, weights, number, f, beat)
	default:
		m.kind, m.hz, m.sure = slow, 1.5/length, 0
	}
	if m.kind == beats && (m.depth < 0.08 || m.hz*length < 0.3) {
		return motion{}
	}
	return
}

// commonRate is the rate at which all moves repeat: the first peak of their
// summed square difference function (see findPitch), and its height. Rates
// with fewer than one and a half cycles are not found.
func commonRate(moves [][]float64, weights []float64, hop float64) (hz, height float64) {
	n := len(moves[0])
	longest := n * 2 / 3
	// Partials that move faster than the frames follow would blur the peaks, and
	// those above them move faster still. Partials that hardly move are left out.
	kept := make([]bool, len(moves))
	var all, used float64
	fast := false
	for j, e := range moves {
		var c, s float64
		for i := 1; i < n; i++ {
			c += e[i] * e[i-1]
			s += e[i] * e[i]
		}
		all += weights[j] * s
		if s < 0.001*float64(n) || fast {
			continue
		}
		if fast = c < 0.6*s && used > 0; fast {
			continue
		}
		kept[j] = true
		used += weights[j] * s
	}
	if used < 0.002*all {
		return 0, 0
	}
	cross, energy := make([]float64, longest+1), make([]float64, longest+1)
	for j, e := range moves {
		if !kept[j] {
			continue
		}
		s := 2 * weights[j] * dot(e, e) // of both stretches of a lag
		for lag := range cross {
			cross[lag] += weights[j] * dot(e[lag:], e)
			energy[lag] += s
			s -= weights[j] * (e[lag]*e[lag] + e[n-1-lag]*e[n-1-lag])
		}
	}
	r := make([]float64, longest+1)
	for lag := range r {
		r[lag] = 2 * cross[lag] / (energy[lag] + 1e-30)
	}
	lag := 1
	for lag < longest && r[lag] > 0 {
		lag++
	}
	for i := lag; i < longest; i++ {
		if r[i] > r[i-1] && r[i] >= r[i+1] {
			height = math.Max(height, peakHeight(r, i))
		}
	}
	for i := lag; i < longest; i++ {
		if r[i] > r[i-1] && r[i] >= r[i+1] && peakHeight(r, i) > 0.88*height {
			period := float64(i) + peakShift(r, i)
			// Later repetitions give the period more exactly.
			for k := 2.0; ; k++ {
				j := int(math.Round(k * period))
				if j+1 >= longest {
					break
				}
				if j > 0 && r[j+1] > r[j] {
					j++
				} else if r[j-1] > r[j] {
					j--
				}
				if j+1 > longest || r[j] < 0.8*height || r[j] < r[j-1] || r[j] < r[j+1] {
					break
				}
				period = (float64(j) + peakShift(r, j)) / k
			}
			return 1 / (period * hop), height
		}
	}
	return 0, 0
}

// togetherness is the share of the movement that all partials have in common,
// in step and in size: 1 for a level that moves.
func togetherness(moves [][]float64, weights []float64, all float64) float64 {
	n := len(moves[0])
	var weight, sum float64
	for _, w := range weights {
		weight += w
	}
	for i := range n {
		v := 0.0
		for j, e := range moves {
			v += weights[j] * e[i]
		}
		v /= weight
		sum += v * v / float64(n)
	}
	return sum / (all / weight)
}
