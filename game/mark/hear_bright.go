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
	// What is left of it after 30 ms can be heard, and it is past by the end.
	heard := math.Abs(amount) * math.Exp(-0.03/seconds)
	if heard > 1 && heard > 3*left && seconds < 0.5*float64(n)*f.hop {
		s = sweep{from: end + amount, to: end, seconds: seconds, ok: true}
	}
	return
}

// A course is the brightness over time in Cam.
type course struct {
	hop, first float64 // seconds
	cam        []float64
}

// course keeps the brightness while the sound is within 50 dB of its loudest.
func (f *frames) course() course {
	top := quantile(f.total, 1)
	n := 0
	for n < len(f.total) && (f.total[n] > 1e-5*top || n < 4) {
		n++
	}
	return course{f.hop, f.first, f.cam[:n]}
}

// start is the brightness of the first frames after that of the attack.
func (c course) start() float64 {
	if len(c.cam) < 4 {
		return 0
	}
	return (c.cam[1] + c.cam[2] + c.cam[3]) / 3
}

// crosses is the time in seconds after which the brightness stays on the far
// side of a level: below it where it falls, above where it rises. It is at most
// the length of the sound.
func (c course) crosses(level float64, falls bool) float64 {
	for i := len(c.cam) - 2; i >= 0; i-- { // the last frame holds the release
		if (c.cam[i] > level) == falls {
			return c.first + (float64(i)+0.5)*c.hop
		}
	}
	return c.first
}
