package take

import "math"

// The kernel of the resampler: a sinc of the lower of the two rates, under a
// Kaiser window (J. F. Kaiser, "Nonrecursive digital filter design using the
// I0-sinh window function", 1974; A. V. Oppenheim and R. W. Schafer,
// Discrete-Time Signal Processing, 7.6). By Kaiser's formula its stop band lies
// 100 dB down from half the lower rate on, and its pass band reaches to 0.4 of
// the lower rate: 17.6 kHz for a recording at 44.1 kHz.
const (
	zeros      = 32   // crossings of zero to either side
	attenuated = 100. // dB
	perZero    = 512  // values of the table for each: linear between them, 106 dB down
)

// band is the width of the transition in cycles per sample of the lower rate.
const band = (attenuated - 8) / (2.285 * 2 * math.Pi * 2 * zeros)

// kernelTable is the right half of the kernel.
func kernelTable() []float64 {
	beta := 0.1102 * (attenuated - 8.7)
	cutoff := 1 - band // in half rates: the middle of the transition
	table := make([]float64, zeros*perZero+2)
	for i := range table {
		t := float64(i) / perZero
		if t >= zeros {
			break
		}
		sinc := cutoff
		if t > 0 {
			sinc = math.Sin(math.Pi*cutoff*t) / (math.Pi * t)
		}
		table[i] = sinc * bessel(beta*math.Sqrt(1-t*t/(zeros*zeros))) / bessel(beta)
	}
	return table
}

// bessel is the modified Bessel function of the first kind of order 0, by its
// power series Σ ((x/2)^k / k!)².
func bessel(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-17*sum; k++ {
		term *= x / 2 / k * x / 2 / k
		sum += term
	}
	return sum
}

// Resample returns samples, taken at one rate in hertz, at another. What lies
// beyond the ends counts as silence. The length is that of the same time,
// rounded up.
func Resample(samples []float32, from, to float64) []float32 {
	if from == to {
		return samples
	}
	table := kernelTable()
	scale := math.Min(1, to/from) // of the kernel's frequency, in cycles per sample of the input
	step := from / to
	out := make([]float32, int(math.Ceil(float64(len(samples))/step)))
	reach := zeros / scale
	for m := range out {
		at := float64(m) * step
		first, last := max(0, int(math.Ceil(at-reach))), min(len(samples)-1, int(at+reach))
		sum := 0.0
		for i := first; i <= last; i++ {
			t := math.Abs(float64(i)-at) * scale * perZero
			k := int(t)
			part := t - float64(k)
			sum += float64(samples[i]) * (table[k]*(1-part) + table[k+1]*part)
		}
		out[m] = float32(sum * scale)
	}
	return out
}
