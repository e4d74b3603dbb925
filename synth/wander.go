package synth

// wanderCents is the greatest deviation of the pitch at full character: a few
// cents, as oscillators built from transistors drift (own choice).
const wanderCents = 6

// A wander is the slow unsteadiness of one oscillator: three sines far apart
// in rate, with rates and phases from the seed.
type wander struct{ hz, phase [3]float64 }

// newWanders returns the wander of A and of B.
func newWanders(seed float64) [2]wander {
	state := uint64(seed)
	random := func() float64 { // SplitMix64 (Steele, Lea & Flood, OOPSLA 2014)
		state += 0x9e3779b97f4a7c15
		z := state
		z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
		z = (z ^ z>>27) * 0x94d049bb133111eb
		return float64((z^z>>31)>>11) / (1 << 53)
	}
	var w [2]wander
	for i := range w {
		for j, hz := range [3]float64{0.13, 0.57, 1.9} {
			w[i].hz[j] = hz * (0.8 + 0.4*random())
			w[i].phase[j] = random()
		}
	}
	return w
}

// cents returns the deviation at full character.
func (w *wander) cents(seconds float64) float64 {
	sum := 0.0
	for j, weight := range [3]float64{3.0 / 6, 2.0 / 6, 1.0 / 6} {
		sum += weight * sineOf(wrap(w.phase[j]+w.hz[j]*seconds))
	}
	return wanderCents * sum
}
