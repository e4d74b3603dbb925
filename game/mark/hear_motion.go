package mark

import (
	"math"
	"sort"

	"partialcredit/synth/spectrum"
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
	beat, beatShare := beatRate(moves, weights, number, f.hop)
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

// phaseBeats says whether the vibrato can come of two unequal tones: with b/a
// small the frequency swings by ±(b/a)·δ, and the power by 2·b/a (rms √2·b/a).
func (h *heard) phaseBeats(depth float64) bool {
	return h.vibrato.cents < 2*1200/math.Ln2*depth*h.vibrato.hz/h.pitch.hz
}

// beatRate is the δ for which sinusoids of n·δ explain most of the movement of
// partials n, and the share explained.
func beatRate(moves [][]float64, weights []float64, number []int, hop float64) (hz, share float64) {
	n := len(moves[0])
	size := 2048
	for size < 8*n {
		size *= 2
	}
	fft := spectrum.NewReal(size)
	w := spectrum.Hann.Samples(n)
	buf := make([]float32, n)
	powers := make([][]float64, len(moves))
	variances := make([]float64, len(moves))
	for j, e := range moves {
		var sum float64
		for i, v := range e {
			buf[i] = float32(v)
			sum += w[i] * v * v
		}
		X := fft.Coefficients(buf, w)
		p := make([]float64, len(X))
		scale := 2 / (float64(n) / 2 * float64(n) / 2)
		// As a share of what moves under the window, times the true movement.
		variances[j] = variance(e)
		scale *= variances[j] / (sum/(float64(n)/2) + 1e-30)
		for i, c := range X {
			p[i] = (real(c)*real(c) + imag(c)*imag(c)) * scale
		}
		powers[j] = p
	}
	bin := 1 / hop / float64(size)
	fastest := 0.35 / hop // partials that beat faster are smeared by the window
	at := func(delta float64) float64 {
		var sum, all float64
		for j, p := range powers {
			if float64(number[j])*delta > fastest && j > 1 {
				break
			}
			x := float64(number[j]) * delta / bin
			i := int(x)
			if i+1 < len(p) {
				sum += weights[j] * (p[i] + (x-float64(i))*(p[i+1]-p[i]))
			}
			all += weights[j] * variances[j]
		}
		if all == 0 {
			return 0
		}
		return sum / all
	}
	top := math.Min(40, fastest)
	step := bin / 2
	least := math.Max(0.08, 0.6/(float64(n)*hop*math.Max(1, float64(number[len(number)-1])/3)))
	for d := least; d < top; d += step {
		if s := at(d); s > share {
			share, hz = s, d
		}
	}
	for s := step / 2; s > step/64; s /= 2 {
		for _, d := range []float64{hz - s, hz + s} {
			if v := at(d); v > share {
				share, hz = v, d
			}
		}
	}
	return hz, math.Min(1, share)
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
	r := make([]float64, longest+1)
	for lag := range r {
		var cross, energy float64
		for j, e := range moves {
			if !kept[j] {
				continue
			}
			var c, s float64
			for i := lag; i < n; i++ {
				c += e[i] * e[i-lag]
				s += e[i]*e[i] + e[i-lag]*e[i-lag]
			}
			cross += weights[j] * c
			energy += weights[j] * s
		}
		r[lag] = 2 * cross / (energy + 1e-30)
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

// fainter is the amplitude of the fainter of two beating tones over that of the
// stronger, from the visibility v = 2ab/(a²+b²) of the beats, the smearing by
// the window undone.
func fainter(moves [][]float64, weights []float64, number []int, f *frames, hz float64) float64 {
	var sum, weight float64
	ones := make([]float64, len(moves[0]))
	for i := range ones {
		ones[i] = 1
	}
	for j, e := range moves {
		rate := hz * float64(number[j])
		response := spectrum.Hann.Response(rate * f.span)
		if response < 0.4 || rate*float64(len(e))*f.hop < 1 {
			continue
		}
		s, c, _ := fitSine(e, ones, f.hop, rate)
		sum += weights[j] * math.Hypot(s, c) / response
		weight += weights[j]
	}
	if weight == 0 {
		return 0
	}
	v := math.Min(1, sum/weight)
	if v < 1e-6 {
		return 0
	}
	return (1 - math.Sqrt(1-v*v)) / v
}

// swing is how far a tremolo lets the level fall, 1 - lowest/highest, from the
// mean and the fitted sinusoid of the level; the smearing by the window undone.
func swing(power []float64, f *frames, hz, trend float64) float64 {
	level := make([]float64, len(power))
	for i, p := range power {
		level[i] = math.Sqrt(p * math.Exp(-trend*(float64(i)-float64(len(power))/2)))
	}
	low, high := quantile(level, 0.03), quantile(level, 0.97)
	mid, half := (low+high)/2, (high-low)/2
	half /= math.Max(0.3, spectrum.Hann.Response(hz*f.span))
	if mid+half == 0 {
		return 0
	}
	return math.Min(1, 2*half/(mid+half))
}

// logSlope is the slope per value of a straight line through the logarithm.
func logSlope(power []float64) float64 {
	y := make([]float64, len(power))
	top := quantile(power, 1)
	for i, p := range power {
		y[i] = math.Log(p + 1e-6*top + 1e-30)
	}
	slope := slopeOf(y)
	if math.Abs(slope)*float64(len(y)) < 1.4 { // 6 dB over the sound
		return 0
	}
	return slope
}

func slopeOf(y []float64) float64 {
	n := float64(len(y))
	var sy, sxy float64
	for i, v := range y {
		x := float64(i) - (n-1)/2
		sy += v
		sxy += x * v
	}
	return sxy / (n * (n*n - 1) / 12)
}

func detrend(e []float64) {
	s := slopeOf(e)
	for i := range e {
		e[i] -= s * (float64(i) - (float64(len(e))-1)/2)
	}
}

func variance(e []float64) float64 {
	sum, mean := 0.0, 0.0
	for _, v := range e {
		mean += v / float64(len(e))
	}
	for _, v := range e {
		sum += (v - mean) * (v - mean) / float64(len(e))
	}
	return sum
}

func quantile(x []float64, q float64) float64 {
	if len(x) == 0 {
		return 0
	}
	s := append([]float64(nil), x...)
	sort.Float64s(s)
	return s[int(q*float64(len(s)-1)+0.5)]
}
