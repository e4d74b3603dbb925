package spectrum

// A Kit makes transforms and windows when they are first asked for and keeps
// them. One at a time: whoever asks for the same length gets the same buffers.
// The zero Kit is ready to use.
type Kit struct {
	reals     map[int]*Real
	complexes map[int]*Complex
	hanns     map[int][]float64
	kept      int // values, of all of them together
}

// most is how many values a Kit keeps before it begins anew, some 40 MB: twice
// what marking a sound of six seconds takes (design choice).
const most = 1 << 20

// Real returns the transform of n ≥ 2 real samples.
func (k *Kit) Real(n int) *Real {
	r, ok := k.reals[n]
	if !ok {
		k.room(n)
		r = NewReal(n)
		k.reals[n] = r
	}
	return r
}

// Complex returns the transform of n ≥ 1 complex values.
func (k *Kit) Complex(n int) *Complex {
	c, ok := k.complexes[n]
	if !ok {
		k.room(n)
		c = NewComplex(n)
		k.complexes[n] = c
	}
	return c
}

// Hann returns the n ≥ 1 samples of the Hann window; they must not be changed.
func (k *Kit) Hann(n int) []float64 {
	w, ok := k.hanns[n]
	if !ok {
		k.room(n)
		w = Hann.Samples(n)
		k.hanns[n] = w
	}
	return w
}

// room counts n values more, and lets go of all others where they are too many.
func (k *Kit) room(n int) {
	if k.reals == nil || k.kept+n > most {
		*k = Kit{reals: map[int]*Real{}, complexes: map[int]*Complex{}, hanns: map[int][]float64{}}
	}
	k.kept += n
}
