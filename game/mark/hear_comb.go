package mark

import "math"

// A comb reads a spectrum at the sums and differences that a carrier makes with each of the places in
// which something is looked for: where these lie is worked out once for all frames.
type comb struct {
	places    [][3]couple
	magnitude []float64 // of the spectrum, and a zero behind it
}

// A couple is the two lines k·carrier ± b.
type couple struct {
	up, down between
	low      bool // the difference is too low to be heard
}

// between is a frequency between two bins: its distance to the second and to the first.
type between struct {
	bin         int
	left, right float64
}

// newComb looks slidePlaces times in an octave from lowest to highest, in spectra of so many bins.
func newComb(lowest, highest, carrier, bin float64, bins int) *comb {
	c := &comb{places: make([][3]couple, int(slidePlaces*math.Log2(highest/lowest))), magnitude: make([]float64, bins+2)}
	at := func(hz float64) between {
		k := int(hz / bin)
		if k+1 >= bins {
			return between{bin: bins} // where there is nothing
		}
		f := hz/bin - float64(k)
		return between{k, 1 - f, f}
	}
	for i := range c.places {
		b := lowest * math.Exp2(float64(i)/slidePlaces)
		for k := range c.places[i] {
			middle := float64(k+1) * carrier
			below := math.Abs(middle - b)
			c.places[i][k] = couple{at(middle + b), at(below), below <= 2*bin}
		}
	}
	return c
}

func (c *comb) at(b *between) float64 {
	m := c.magnitude[b.bin:][:2]
	return m[0]*b.left + m[1]*b.right
}

// pair is the magnitude of both lines; of a difference too low to be heard a quarter of the sum.
func (c *comb) pair(p *couple) (up, down float64) {
	up = c.at(&p.up)
	if p.low {
		return up, up / 4
	}
	return up, c.at(&p.down)
}
