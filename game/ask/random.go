package ask

// A source draws numbers that follow from a seed alone, now and in later versions
// of the program: what was asked can always be asked again.
//
// It is SplitMix64 (Steele, Lea and Flood 2014, Fast splittable pseudorandom
// number generators, OOPSLA).
type source struct{ state uint64 }

// draws is the source of one question of a run.
func draws(seed uint64, question int) *source {
	s := &source{seed}
	s.state = s.next() + uint64(question)
	s.next()
	return s
}

func (s *source) next() uint64 {
	s.state += 0x9E3779B97F4A7C15
	z := s.state
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// part is a number in [0, 1).
func (s *source) part() float64 { return float64(s.next()>>11) / (1 << 53) }

// below is a whole number from 0 to n-1.
func (s *source) below(n int) int { return int(s.part() * float64(n)) }

// order is the numbers 0 to n-1 in a random order (Fisher and Yates).
func (s *source) order(n int) []int {
	o := make([]int, n)
	for i := range o {
		j := s.below(i + 1)
		o[i], o[j] = o[j], i
	}
	return o
}
