package spectrum

import "math"

// The poles of the A-weighting in hertz (IEC 61672-1:2013, annex E).
const (
	aPole1 = 20.598997
	aPole2 = 107.65265
	aPole3 = 737.86223
	aPole4 = 12194.217
)

// AWeight is the A-weighting in decibels at hz, 0 at 1 kHz (IEC 61672-1).
// -Inf at 0 Hz.
func AWeight(hz float64) float64 { return DB(aResponse(hz) / aResponse(1000)) }

func aResponse(hz float64) float64 {
	f := hz * hz
	return aPole4 * aPole4 * f * f /
		((f + aPole1*aPole1) * math.Sqrt((f+aPole2*aPole2)*(f+aPole3*aPole3)) * (f + aPole4*aPole4))
}
