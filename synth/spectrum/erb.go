package spectrum

import "math"

// ERB is the equivalent rectangular bandwidth in hertz of the auditory filter
// centred at hz, 24.7·(4.37·hz/1000 + 1), for 100 Hz to 10 kHz (Glasberg and
// Moore, Hearing Research 47:103, 1990). Outside this range it extrapolates.
func ERB(hz float64) float64 { return 24.7 * (4.37*hz/1000 + 1) }

// Cam is the place of a frequency on the scale of equivalent rectangular
// bandwidths, 21.4·log10(4.37·hz/1000 + 1) (Glasberg and Moore 1990).
func Cam(hz float64) float64 { return 21.4 * math.Log10(4.37*hz/1000+1) }

// CamHz is the inverse of [Cam].
func CamHz(cam float64) float64 { return (math.Pow(10, cam/21.4) - 1) * 1000 / 4.37 }

// Roex is the weight with which power at hz counts in the auditory filter
// centred at centre: (1 + pg)·exp(-pg) with g = |hz - centre|/centre and
// p = 4·centre/ERB(centre), the symmetric rounded-exponential filter
// (Patterson et al., JASA 72:1788, 1982, for moderate levels).
func Roex(hz, centre float64) float64 {
	pg := 4 * math.Abs(hz-centre) / ERB(centre)
	return (1 + pg) * math.Exp(-pg)
}

// RoexReach is the distance in ERBs beyond which [Roex] is under -60 dB, so
// that sums over a spectrum may stop there (design choice).
const RoexReach = 4.25

// Centres returns centre frequencies in hertz from one Cam to another, a step
// apart, both ends included.
func Centres(from, to, step float64) []float64 {
	var hz []float64
	for i := 0; from+float64(i)*step <= to+step/1e6; i++ {
		hz = append(hz, CamHz(from+float64(i)*step))
	}
	return hz
}
