package spectrum

import (
	"math"
	"testing"
)

// Glasberg and Moore 1990, evaluated with their formulas.
func TestERB(t *testing.T) {
	for _, c := range []struct{ hz, erb, cam float64 }{
		{100, 35.49, 3.370}, {250, 51.69, 6.862}, {440, 72.19, 9.968}, {1000, 132.639, 15.621},
		{4000, 456.46, 27.107}, {10000, 1104.09, 35.317},
	} {
		near(t, "ERB", ERB(c.hz), c.erb, 0.0055)
		near(t, "Cam", Cam(c.hz), c.cam, 0.00051)
		near(t, "CamHz", CamHz(Cam(c.hz))/c.hz, 1, 1e-9)
	}
}

// A 1 kHz tone through the symmetric roex filter: the formula of Patterson et
// al. 1982 evaluated by hand.
func TestRoex(t *testing.T) {
	for _, c := range []struct{ centre, db float64 }{{1000, 0}, {1200, -14.61}, {900, -7.94}} {
		near(t, "roex", PowerDB(Roex(1000, c.centre)), c.db, 0.005)
	}
	if got := PowerDB(Roex(1000+RoexReach*ERB(1000), 1000)); got > -60 {
		t.Errorf("at its reach the filter is only %v dB down", got)
	}
}

// IEC 61672-1 table of A-weightings, given to 0.1 dB for the exact
// third-octave frequencies 1000·10^(n/10): hence the tolerance of 0.06 dB.
func TestAWeighting(t *testing.T) {
	table := []float64{
		-50.5, -44.7, -39.4, -34.6, -30.2, -26.2, -22.5, -19.1, -16.1, -13.4, -10.9, -8.6, -6.6, -4.8, -3.2, -1.9, -0.8,
		0, 0.6, 1.0, 1.2, 1.3, 1.2, 1.0, 0.5, -0.1, -1.1, -2.5, -4.3, -6.6, -9.3,
	}
	for i, want := range table {
		hz := 1000 * math.Pow(10, float64(i-17)/10)
		near(t, "A-weighting", AWeight(hz), want, 0.06)
	}
	// The same formula with more digits, from an independent computation.
	near(t, "A(125.893)", AWeight(125.8925), -16.098, 0.001)
	near(t, "A(3981.07)", AWeight(3981.0717), 0.970, 0.001)
	near(t, "A(7943.28)", AWeight(7943.2823), -1.111, 0.001)
}

// Root-mean-square differences of excitation patterns at 220 Hz (harmonics up
// to 16 kHz, channels every 0.25 Cam from 2 to 38.25, levels re the total,
// floor 40 dB under the highest), from an independent computation.
func TestExcitationDistances(t *testing.T) {
	pulse := func(d float64) func(k float64) float64 {
		return func(k float64) float64 { return math.Sin(math.Pi*k*d) / k }
	}
	saw := func(k float64) float64 { return 1 / k }
	square := pulse(0.5)
	triangle := func(k float64) float64 { return square(k) / k }
	sine := func(k float64) float64 {
		if k == 1 {
			return 1
		}
		return 0
	}
	for _, c := range []struct {
		name string
		a, b func(float64) float64
		want float64
	}{
		{"saw-square", saw, square, 7.16}, {"saw-triangle", saw, triangle, 14.80}, {"saw-sine", saw, sine, 16.60},
		{"square-triangle", square, triangle, 11.16}, {"square-sine", square, sine, 13.48}, {"triangle-sine", triangle, sine, 4.66},
		{"saw-pulse25", saw, pulse(0.25), 3.43}, {"saw-pulse10", saw, pulse(0.1), 3.94},
		{"pulse30-pulse70", pulse(0.3), pulse(0.7), 0},
	} {
		a, b := excitationLevels(220, c.a), excitationLevels(220, c.b)
		sum := 0.0
		for i := range a {
			sum += (a[i] - b[i]) * (a[i] - b[i])
		}
		near(t, c.name, math.Sqrt(sum/float64(len(a))), c.want, 0.05)
	}
}

func excitationLevels(f0 float64, amplitude func(k float64) float64) []float64 {
	var hz, power []float64
	total := 0.0
	for k := 1.0; k*f0 <= 16000; k++ {
		a := amplitude(k)
		hz, power = append(hz, k*f0), append(power, a*a)
		total += a * a
	}
	centres := Centres(2, 38.25, 0.25)
	e := make([]float64, len(centres))
	excitation(e, centres, hz, power)
	top := math.Inf(-1)
	for i := range e {
		e[i] = PowerDB(e[i] / total)
		top = math.Max(top, e[i])
	}
	for i := range e {
		e[i] = math.Max(e[i], top-40)
	}
	return e
}

// excitation writes into dst the excitation pattern of lines with the given
// frequencies and powers: for each centre Σ power·Roex, as a power.
// dst and centres have the same length, and so have hz and power.
func excitation(dst, centres, hz, power []float64) {
	for i, c := range centres {
		sum := 0.0
		for k, f := range hz {
			sum += power[k] * Roex(f, c)
		}
		dst[i] = sum
	}
}
