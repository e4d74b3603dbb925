package spectrum

// Repeats says how well a stretch repeats itself after each number of samples up to the
// longest, which must be less than its length: the normalised square difference of
// P. McLeod and G. Wyvill ("A smarter way to find pitch", ICMC 2005),
//
//	n(τ) = 2 Σ x[i]·x[i+τ] / Σ (x[i]² + x[i+τ]²),
//
// 1 where it does exactly, 0 where it has nothing in common, -1 where it is turned over;
// it is 1 less the difference function of YIN (A. de Cheveigné and H. Kawahara, JASA
// 111:1917, 2002, eq. 6) over the power in both stretches. Nil for silence.
func (k *Kit) Repeats(x []float32, longest int) []float64 {
	n := len(x)
	m := 2 * FastLength((n+longest+2)/2) // so that the ends do not meet
	squares := make([]float64, n+1)
	for i, v := range x {
		squares[i+1] = squares[i] + float64(v)*float64(v)
	}
	if squares[n] == 0 {
		return nil
	}
	// The transform of the power is Σ x[i]·x[i+τ]: both are real and even.
	fft, power := k.Real(m), make([]float64, m)
	for i, v := range fft.Coefficients(x, nil) {
		power[i] = real(v)*real(v) + imag(v)*imag(v)
		power[(m-i)%m] = power[i]
	}
	products := fft.Transform(power, nil)
	repeats := make([]float64, longest+1)
	for t := range repeats {
		repeats[t] = 2 * real(products[t]) / float64(m) / (squares[n-t] + squares[n] - squares[t] + 1e-30)
	}
	return repeats
}
