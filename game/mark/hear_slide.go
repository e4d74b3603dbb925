package mark

import "math"

// A slide is the course of the frequency b by which a carrier is multiplied, an
// exponential fall or rise to where it comes to rest, heard from the sums and
// differences of the two.
type slide struct {
	hz        float64 // b at rest
	semitones float64 // where b starts, re its rest
	seconds   float64 // time constant; of no meaning where b hardly moves
	ok        bool
}

// moves says whether the course can be spoken of: a whole tone and more.
func (s slide) moves() bool { return math.Abs(s.semitones) > 2 && s.seconds > 0.01 }

// slide is found when it is first asked for.
func (h *heard) slide() slide {
	if h.slid == nil {
		s := h.sound.findSlide(h.near)
		h.slid = &s
	}
	return *h.slid
}

// slideHop is the time in seconds between frames, slidePlaces how many places
// in an octave b is looked for at (design choices: three semitones a frame can
// be followed).
const (
	slideHop    = 0.01
	slidePlaces = 96
)

// findSlide follows b through the sound: in each frame it is where the lines
// b±a, b±2a and b±3a hold the most power, both lines of a pair at once. It is
// sure where these places lie along an exponential fall and hold most of the
// power. The carrier must be known. Known weakness: in the length of a frame,
// 43 ms, b must hardly move; how far it starts away is not sure where it moves
// faster.
func (a *analysis) findSlide(carrier float64) (s slide) {
	x, rate := halved(a.sounding()), a.rate/2 // nothing of interest lies above 12 kHz
	n := int(0.043 * rate)
	const size = 2048
	if carrier <= 0 || len(x) < 2*size || n > size {
		return
	}
	fft, window := a.kit.Real(size), make([]float64, size)
	copy(window, a.kit.Hann(n))
	lowest := 0.2 * carrier
	var scores [][]float64
	var shares []float64
	c := newComb(lowest, 0.45*rate, carrier, rate/size, size/2+1)
	for from := 0; from+size <= len(x); from += int(slideHop * rate) {
		power := 0.0
		for k, z := range fft.Transform(x[from:from+size], window) {
			p := real(z)*real(z) + imag(z)*imag(z)
			c.magnitude[k] = math.Sqrt(p)
			power += p
		}
		score := make([]float64, len(c.places))
		best, where := 0.0, 0
		for i := range c.places {
			for k := range c.places[i] {
				up, down := c.pair(&c.places[i][k])
				score[i] += math.Sqrt(up * down)
			}
			if score[i] > best {
				best, where = score[i], i
			}
		}
		for i := range score {
			score[i] /= best + 1e-30
		}
		scores = append(scores, score)
		// The power of a line is 1.5 bins of a window of its length (Hann's noise bandwidth).
		lines := 0.0
		for k := range c.places[where] {
			up, down := c.pair(&c.places[where][k])
			lines += math.Min(up, down) * (up + down)
		}
		shares = append(shares, 1.5*size/float64(n)*lines/power)
	}
	octaves, weights := follow(scores), make([]float64, len(scores))
	for i, v := range octaves {
		weights[i] = scores[i][int(v)]
		octaves[i] = v / slidePlaces
	}
	amount, seconds, end, left := fitFall(octaves, weights, slideHop)
	amount *= math.Exp((float64(n)/2/rate - slideHop/2) / seconds)
	s = slide{hz: lowest * math.Exp2(end), semitones: 12 * amount, seconds: seconds}
	s.ok = left < 0.05 && quantile(shares, 0.5) > 0.6
	return
}

// rest is the frequency b at which the sums and differences with the carrier
// come to rest, near a guess, from the lines of the last two fifths of the
// sound; ok where these hold nearly all.
func (h *heard) rest(guess float64) (hz float64, ok bool) {
	const (
		reach  = 1.25
		nearly = 0.85
	)
	if h.last == nil {
		b := workbenches.Get().(*workbench)
		defer workbenches.Put(b)
		late := *h.sound
		late.kit = &b.kit
		late.start = late.end - (late.end-late.start)*2/5
		h.last = late.findLines()
	}
	all := 0.0
	for _, l := range h.last {
		all += l.Amplitude
	}
	best := 0.0
	for _, l := range h.last {
		for k := 1.0; k <= 3; k++ {
			c := k * h.near
			for _, b := range []float64{l.Hz - c, c - l.Hz, l.Hz + c} {
				if b < guess/reach || b > guess*reach {
					continue
				}
				sum := 0.0
				for n := 1.0; n <= 5; n++ {
					sum += lineAt(h.last, n*h.near+b) + lineAt(h.last, math.Abs(n*h.near-b))
				}
				if sum > best {
					best, hz = sum, b
				}
			}
		}
	}
	return hz, best > nearly*all && h.near > 0
}

// leftToGo is by how much the logarithm of b is on the whole above where it
// comes to rest, in the part that rest listens to.
func (h *heard) leftToGo(guess float64) float64 {
	if s := h.slide(); s.ok {
		return s.semitones * math.Ln2 / 12 * math.Exp(-0.75*h.seconds/s.seconds)
	}
	late := heard{sound: &analysis{}, near: h.near}
	*late.sound = *h.sound
	late.sound.start = late.sound.end - (late.sound.end-late.sound.start)*3/5
	before, ok := late.rest(guess)
	after, alsoOK := h.rest(guess)
	if !ok || !alsoOK {
		return math.Inf(1)
	}
	return math.Log(before / after)
}

// follow returns the path through the places, one in each frame, for which the
// scores less the price of moving have the greatest sum (Viterbi; the price
// grows with the distance, so that two passes find the best way to each place).
func follow(scores [][]float64) []float64 {
	const price = 0.03 // a place, of the best score of a frame (design choice)
	places := len(scores[0])
	sum := make([]float64, places)
	from := make([][]int, len(scores))
	for f, score := range scores {
		from[f] = make([]int, places)
		for i := range places {
			from[f][i] = i
		}
		better := func(i, j int) {
			if sum[j]-price > sum[i] {
				sum[i], from[f][i] = sum[j]-price, from[f][j]
			}
		}
		for i := 1; i < places; i++ {
			better(i, i-1)
		}
		for i := places - 2; i >= 0; i-- {
			better(i, i+1)
		}
		for i := range places {
			sum[i] += score[i]
		}
	}
	at := 0
	for i, v := range sum {
		if v > sum[at] {
			at = i
		}
	}
	path := make([]float64, len(scores))
	for f := len(scores) - 1; f >= 0; f-- {
		path[f] = float64(at)
		at = from[f][at]
	}
	return path
}
