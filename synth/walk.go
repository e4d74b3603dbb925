package synth

import "math"

// A walk follows the phase of a waveform that is made of at most two parabolic
// pieces. Its phase may move by any signed amount per sample; whenever it
// crosses from one piece to the next, or from the end of the period to its
// start, it corrects the step and the corner at the exact time between the
// samples.
type walk struct {
	p      float64 // phase in [0, 1)
	k      int     // the piece it is in
	n      int     // number of pieces
	last   float64 // movement in the last sample of the tick before
	end    [2]float64
	pieces [2]piece
}

// A piece is c0 + c1·p + c2·p².
type piece struct{ c0, c1, c2 float64 }

func (c *piece) value(p float64) float64 { return c.c0 + p*(c.c1+p*c.c2) }
func (c *piece) slope(p float64) float64 { return c.c1 + 2*p*c.c2 }

// bent returns the piece c of slope s bent to x + k(1 - x²), less the mean of
// what that adds: a parabola of the same curvature everywhere, which bends a
// ramp as the charging of a capacitor through a resistor does, to first order.
// Its mean over a ramp from -1 to 1 is 2/3. Own choice of a shape that keeps
// every jump a step or a corner.
func bent(c piece, k float64) piece {
	return piece{
		c0: c.c0 + k*(1.0/3-c.c0*c.c0),
		c1: c.c1 - k*2*c.c0*c.c1,
		c2: -k * c.c1 * c.c1,
	}
}

// rampWalk returns the rising ramp 2p - 1, bent by k and multiplied by sign.
func rampWalk(sign, k float64) walk {
	c := bent(piece{c0: -1, c1: 2}, k)
	c.c0, c.c1, c.c2 = sign*c.c0, sign*c.c1, sign*c.c2
	return walk{n: 1, end: [2]float64{1, 1}, pieces: [2]piece{c}}
}

// triangleWalk returns the triangle that starts at -1, bent by k. Its phase is
// a quarter ahead of the triangle that is odd about 0.
func triangleWalk(k float64) walk {
	return walk{n: 2, end: [2]float64{0.5, 1}, pieces: [2]piece{
		bent(piece{c0: -1, c1: 4}, k),
		bent(piece{c0: 3, c1: -4}, k),
	}}
}

// jump moves the phase without a correction, to the start of a note.
func (w *walk) jump(p float64) {
	w.p, w.k = wrap(p), 0
	if w.n == 2 && w.p >= w.end[0] {
		w.k = 1
	}
}

func (w *walk) begin() float64 {
	if w.k == 0 {
		return 0
	}
	return w.end[w.k-1]
}

// run adds the waveform to out, whose first [reach] samples are still open to
// corrections: sample i goes to out[i+reach]. It obeys the resets, which are in
// order of time.
func (w *walk) run(out *line, m motion, resets []reset) {
	i := 0
	for _, r := range resets {
		w.steady(out, m, i, r.i)
		w.reset(out.at(r.i), m.at(r.i), r)
		i = r.i + 1
	}
	w.steady(out, m, i, ticks)
}

// steady runs the samples from i up to n.
func (w *walk) steady(out *line, m motion, i, n int) {
	lo, hi, c, p := w.begin(), w.end[w.k], w.pieces[w.k], w.p
	d := m.at(i)
	samples := out[i+reach : n+reach]
	for j := range samples {
		p += d
		if p >= hi || p < lo {
			w.p = p
			w.cross(out.at(i+j), path{d, m.step, m.step}, 0, 1)
			lo, hi, c, p = w.begin(), w.end[w.k], w.pieces[w.k], w.p
		}
		samples[j] += c.c0 + p*(c.c1+p*c.c2)
		d += m.step
	}
	w.p = p
}

// follow is run for a phase that is modulated: inc is its movement per sample,
// with one more that comes next, soft what the spline makes of it at each
// sample, less the phase: that moves the value and not the crossings.
func (w *walk) follow(out *line, inc *[ticks + 1]float64, soft *[ticks]float64) {
	lo, hi, c, p, last := w.begin(), w.end[w.k], w.pieces[w.k], w.p, w.last
	samples := out[reach : reach+ticks]
	for i, x := range soft {
		d, next := inc[i], inc[i+1]
		if q := p + d; q < hi && q >= lo && d*last > 0 && d*next > 0 {
			p = q
		} else {
			w.p = p
			w.turn(out.at(i), path{d, d - last, next - d})
			lo, hi, c, p = w.begin(), w.end[w.k], w.pieces[w.k], w.p
		}
		last = d
		x += p
		samples[i] += c.c0 + x*(c.c1+x*c.c2)
	}
	w.p, w.last = p, last
}

// turn moves the phase along m, on which it may turn back.
func (w *walk) turn(out *near, m path) {
	first, last := m.speed(0), m.speed(1)
	if first*last >= 0 {
		w.p += m.d
		w.cross(out, m, 0, 1)
		return
	}
	s := first / (first - last)
	s = math.Min(math.Max(s+m.speed(s)/(first-last), 0), 1)
	w.p += m.at(s)
	w.cross(out, m, 0, s)
	w.p += m.d - m.at(s)
	w.cross(out, m, s, 1)
}

// reset sends the phase to r.to in the middle of a sample and adds the sample.
func (w *walk) reset(out *near, inc float64, r reset) {
	w.p += inc * (1 - r.t)
	w.cross(out, path{d: inc}, 0, 1-r.t)
	step, slope := -w.pieces[w.k].value(w.p), -w.pieces[w.k].slope(w.p)
	w.jump(r.to)
	step += w.pieces[w.k].value(w.p)
	slope += w.pieces[w.k].slope(w.p)
	correct(out, r.t, step, slope*inc, 0)
	w.p += inc * r.t
	w.cross(out, path{d: inc}, 1-r.t, 1)
	out[reach] += w.pieces[w.k].value(w.p)
}

// A path is the movement of the phase within a sample: by d in all, with the
// second differences a at its start and b at its end. It is a cubic through four
// samples (Everett's formula, A&S 25.2.22).
type path struct{ d, a, b float64 }

// at is how far the phase has moved after a part of the sample.
func (m *path) at(s float64) float64 {
	return m.d*s - s*(1-s)*(m.a*(2-s)+m.b*(1+s))/6
}

// speed is the movement per sample at a part of the sample.
func (m *path) speed(s float64) float64 {
	return m.d - (1-2*s)*(m.a*(2-s)+m.b*(1+s))/6 - s*(1-s)*(m.b-m.a)/6
}

// time returns the part of the sample after which the phase has moved by x,
// between two parts between which it does not turn back: Newton's method, kept
// between them by bisection.
func (m *path) time(x, from, to float64) float64 {
	if m.a == 0 && m.b == 0 {
		return math.Min(math.Max(x/m.d, from), to)
	}
	f, g := m.at(from)-x, m.at(to)-x
	s := from + (to-from)*f/(f-g)
	for range 20 {
		if !(s >= from && s <= to) { // also where the speed is 0
			s = (from + to) / 2
		}
		h := m.at(s) - x
		if (h < 0) == (f < 0) {
			from = s
		} else {
			to = s
		}
		step := h / m.speed(s)
		s -= step
		if math.Abs(step) < 1e-10 {
			break
		}
	}
	return math.Min(math.Max(s, from), to)
}

// cross brings the phase, which has moved along m from one part of the sample to
// another and does not turn back there, into a piece again, correcting at every
// border.
func (w *walk) cross(out *near, m path, from, to float64) {
	for {
		var at, shift float64 // the border and the phase on its other side, less it
		k := w.k
		switch {
		case w.p >= w.end[w.k]:
			at = w.end[w.k]
			if w.k++; w.k == w.n {
				w.k, shift = 0, -1
			}
		case w.p < w.begin():
			at = w.begin()
			if w.k--; w.k < 0 {
				w.k, shift = w.n-1, 1
			}
		default:
			return
		}
		old, now := &w.pieces[k], &w.pieces[w.k]
		step := now.value(at+shift) - old.value(at)
		slope := now.slope(at+shift) - old.slope(at)
		s := m.time(m.at(to)-(w.p-at), from, to)
		correct(out, 1-s, step, slope*m.speed(s), 0)
		w.p += shift
	}
}
