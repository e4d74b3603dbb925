package mark

import "math"

// sweep is a fall or rise of the brightness through the note, in Cam.
type sweep = fall

// sweep fits an exponential to the brightness over time. The frames count by
// their level, so that a tail that has died away says little.
func (f *frames) sweep() (s sweep) {
	n := len(f.cam)
	if n < 12 {
		return
	}
	w := make([]float64, n)
	top := quantile(f.total, 1)
	for i := 1; i < n-2; i++ {
		if f.first+float64(i)*f.hop > 0.02 && f.total[i] > 1e-5*top {
			w[i] = math.Pow(f.total[i]/top, 0.25)
		}
	}
	amount, seconds, end, left := fitFall(f.cam, w, f.hop)
	amount *= math.Exp((f.first - f.hop/2) / seconds)
	if math.Abs(amount) > 0.6 && math.Abs(amount) > 4*left && seconds > 0.015 {
		s = sweep{from: end + amount, to: end, seconds: seconds, ok: true}
	}
	return
}
