package exact

import "math"

// OperandLimit returns the gain at f Hz of the limit on the operands of
// products that package synth states for a sample rate: a half-band filter at
// twice that rate, whole up to 20 kHz and gone by 110 dB from rate - 20 kHz on.
// It is the ideal low-pass under a Kaiser window, with Kaiser's formulas for
// 118 dB (Oppenheim & Schafer, Discrete-Time Signal Processing, from memory).
func OperandLimit(rate, f float64) float64 {
	const beta = 0.1102 * (118 - 8.7)
	width := (rate - 2*20000) / (2 * rate)
	half := 2 * math.Ceil(((118-7.95)/(14.36*width)+2)/4) // taps to either side, and one
	sum, whole := 0.0, 0.0
	for k := 1.0; k < half; k += 2 {
		h := math.Sin(math.Pi*k/2) / k * bessel0(beta*math.Sqrt(1-(k/half)*(k/half)))
		sum += h * math.Cos(2*math.Pi*k*f/(2*rate))
		whole += h
	}
	return 0.5 + 0.5*sum/whole
}

// bessel0 is the modified Bessel function I0(x) = (1/π)∫e^{x cos t} dt from 0
// to π (A&S 9.6.16), by the trapezoid rule, which is exact here.
func bessel0(x float64) float64 {
	const n = 64
	sum := (math.Exp(x) + math.Exp(-x)) / 2
	for i := 1; i < n; i++ {
		sum += math.Exp(x * math.Cos(math.Pi*float64(i)/n))
	}
	return sum / n
}

// Limited returns the partials of a waveform at hz Hz as operands of a product.
func Limited(w Wave, hz, rate float64) []complex128 {
	c := w.Partials(int(rate / hz))
	for k := range c {
		c[k] *= complex(OperandLimit(rate, float64(k)*hz), 0)
	}
	return c
}
