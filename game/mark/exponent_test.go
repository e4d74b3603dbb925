package mark

import (
	"math"
	"testing"
)

func TestExponentsAreMathPow(t *testing.T) {
	for p, e := range map[float64]*exponent{0.3: onPower, 0.35: fineCompression, 0.6: faintCounts} {
		for x := 1e-300; x < 1e300; x *= 1.0137 {
			if want := math.Pow(x, p); !(math.Abs(e.of(x)-want) <= 1e-13*want) {
				t.Fatalf("%v to %v is %v, want %v", x, p, e.of(x), want)
			}
		}
		if e.of(0) != 0 {
			t.Errorf("0 to %v is %v", p, e.of(0))
		}
	}
}
