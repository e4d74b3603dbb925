// Package chance draws numbers that follow from a seed alone, now and in later
// versions of the program: what was drawn once can always be drawn again.
package chance

// A Source is SplitMix64 (Steele, Lea and Flood 2014, Fast splittable pseudorandom
// number generators, OOPSLA).
type Source struct{ state uint64 }

// From is the source of a seed.
func From(seed uint64) *Source { return &Source{seed} }

// Draws is the i-th source that belongs to a seed.
func Draws(seed uint64, i int) *Source {
	s := From(seed)
	s.state = s.next() + uint64(i)
	s.next()
	return s
}

// Seed makes a seed of texts: FNV-1a with 64 bits over all of them, a zero byte after
// each (Fowler, Noll and Vo; draft-eastlake-fnv), mixed once.
func Seed(texts ...string) uint64 {
	h := uint64(14695981039346656037)
	for _, t := range texts {
		for i := range len(t) {
			h = (h ^ uint64(t[i])) * 1099511628211
		}
		h *= 1099511628211
	}
	return From(h).next()
}

func (s *Source) next() uint64 {
	s.state += 0x9E3779B97F4A7C15
	z := s.state
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// Uint64 is a number of 64 bits.
func (s *Source) Uint64() uint64 { return s.next() }

// Part is a number in [0, 1).
func (s *Source) Part() float64 { return float64(s.next()>>11) / (1 << 53) }

// Below is a whole number from 0 to n-1.
func (s *Source) Below(n int) int { return int(s.Part() * float64(n)) }

// Order is the numbers 0 to n-1 in a random order (Fisher and Yates).
func (s *Source) Order(n int) []int {
	o := make([]int, n)
	for i := range o {
		j := s.Below(i + 1)
		o[i], o[j] = o[j], i
	}
	return o
}
