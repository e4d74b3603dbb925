package mark

import "math"

// octave is a second tone one or more octaves above the pitch.
type octave struct {
	times int     // its frequency re the pitch: 2, 4 or 8
	db    float64 // by how much its partials stand out of the others
	ok    bool
}

// findOctave looks for multiples of 2, 4 or 8 that stand out of the other
// partials. The others are taken to fall by so many dB an octave: levels =
// c + slope·log2 n + db·[times divides n], by least squares.
func findOctave(p partials) (o octave) {
	if !p.ok {
		return
	}
	n := min(16, len(p.db))
	if n < 8 {
		return
	}
	least := math.Inf(1)
	for _, times := range []int{2, 4, 8} {
		if times*2 > n {
			continue
		}
		var m [3][4]float64
		var total float64
		for k := 1; k <= n; k++ {
			b := [3]float64{1, math.Log2(float64(k)), b2f(k%times == 0)}
			y := p.at(k)
			for r := range 3 {
				for q := range 3 {
					m[r][q] += b[r] * b[q]
				}
				m[r][3] += b[r] * y
			}
			total += y * y
		}
		right := [3]float64{m[0][3], m[1][3], m[2][3]}
		x, ok := solve3(m)
		if !ok {
			continue
		}
		left := total - x[0]*right[0] - x[1]*right[1] - x[2]*right[2]
		if left < least {
			least = left
			o = octave{times: times, db: x[2]}
		}
	}
	o.ok = math.Sqrt(math.Max(0, least)/float64(n)) < 4 && o.db > 4
	return
}
