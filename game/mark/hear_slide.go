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

// findSlide follows b through the sound: in each frame it is where the lines
// b±a, b±2a and b±3a hold the most power, both lines of a pair at once. It is
// sure where these places lie along an exponential fall and hold most of the
// power. The carrier must be known. Known weakness: in the length of a frame, 43 ms, b must hardly move;
// how far it starts away is heard too small where it moves faster.
func (a *analysis) findSlide(carrier float64) (s slide) {
	const hop = 0.01
	x, rate := thin(a.x[a.start:a.end], 2), a.rate/2 // nothing of interest lies above 12 kHz
	n := int(0.043 * rate)
	const size = 2048
	if carrier <= 0 || len(x) < 20*n/4 || n > size {
		return
	}
	fft, window := a.kit.Real(size), make([]float64, size)
	copy(window, a.kit.Hann(n))
	bin := rate / size
	const perOctave = 96.0
	lowest := 0.2 * carrier
	places := int(perOctave * math.Log2(0.45*rate/lowest))
	var octaves, weights, shares []float64
	magnitude := make([]float64, size/2+1)
	for from := 0; from+size <= len(x); from += int(hop * rate) {
		power := 0.0
		for k, c := range fft.Coefficients(x[from:from+size], window) {
			p := real(c)*real(c) + imag(c)*imag(c)
			magnitude[k] = math.Sqrt(p)
			power += p
		}
		at := func(hz float64) float64 {
			k := int(hz / bin)
			if k+1 >= len(magnitude) {
				return 0
			}
			f := hz/bin - float64(k)
			return magnitude[k]*(1-f) + magnitude[k+1]*f
		}
		// pairs adds up, over the pairs of lines, a mean of both.
		pairs := func(b float64, mean func(up, down float64) float64) (sum float64) {
			for k := 1.0; k <= 3; k++ {
				up, down := at(k*carrier+b), 0.0
				if hz := math.Abs(k*carrier - b); hz > 2*bin {
					down = at(hz)
				} else {
					down = up / 4 // too low to be heard
				}
				sum += mean(up, down)
			}
			return
		}
		best, where := 0.0, 0.0
		for i := range places {
			o := float64(i) / perOctave
			if v := pairs(lowest*math.Exp2(o), func(up, down float64) float64 { return math.Sqrt(up * down) }); v > best {
				best, where = v, o
			}
		}
		octaves, weights = append(octaves, where), append(weights, best)
		// The power of a line is 1.5 bins of a window of its length (Hann's noise bandwidth).
		lines := pairs(lowest*math.Exp2(where), func(up, down float64) float64 { return math.Min(up, down) * (up + down) })
		shares = append(shares, 1.5*size/float64(n)*lines/power)
	}
	amount, seconds, end, left := fitFall(octaves, weights, hop)
	// Frames that went astray are left out.
	for i, v := range octaves {
		if math.Abs(v-end-amount*math.Exp(-(float64(i)+0.5)*hop/seconds)) > math.Max(0.15, 2*left) {
			weights[i] = 0
		}
	}
	amount, seconds, end, left = fitFall(octaves, weights, hop)
	amount *= math.Exp((float64(n)/2/rate - hop/2) / seconds)
	s = slide{hz: lowest * math.Exp2(end), semitones: 12 * amount, seconds: seconds}
	astray := 0
	for _, w := range weights {
		if w == 0 {
			astray++
		}
	}
	s.ok = left < 0.05 && astray < len(weights)/5 && quantile(shares, 0.5) > 0.6
	return
}
