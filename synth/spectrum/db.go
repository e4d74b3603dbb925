package spectrum

import "math"

// DB is the level of an amplitude in decibels, 20·log10(amplitude); -Inf for 0.
func DB(amplitude float64) float64 { return 20 * math.Log10(amplitude) }

// PowerDB is the level of a power in decibels, 10·log10(power); -Inf for 0.
func PowerDB(power float64) float64 { return 10 * math.Log10(power) }

// Amplitude is the inverse of [DB].
func Amplitude(db float64) float64 { return math.Pow(10, db/20) }

// Power is the inverse of [PowerDB].
func Power(db float64) float64 { return math.Pow(10, db/10) }
