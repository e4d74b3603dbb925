package mark

import "math"

// pitch is the steady pitch of a sound.
type pitch struct {
	hz      float64
	clarity float64 // how well the sound repeats after one period, 0..1
	filled  float64 // share of the partials up to the strongest ones that are present
	ok      bool    // one pitch is heard
}

// same is the share of the best repetition that a shorter period must reach to
// be taken instead: a tone an octave below that is more than 24 dB weaker than
// the rest is then not heard as the pitch (1 - 2p, with p its share of the
// power; design choice).
const same = 0.992

// findPitch looks for the period of the later part of the sound, where glides
// have ended: the first peak of the normalised square difference function
//
//	n(τ) = 2·Σ x[i]·x[i+τ] / Σ (x[i]² + x[i+τ]²)
//
// (McLeod and Wyvill, "A smarter way to find pitch", ICMC 2005) that comes
// within the factor same of its highest. Known weakness: a pulse train with
// hardly any energy in odd partials is heard an octave high.
func (a *analysis) findPitch(near float64) pitch {
	// Four octaves down lies nothing that a voice written at near can play, and
	// slower repetitions are heard as a rhythm.
	lowest := 24.0
	if near > 0 {
		lowest = math.Max(8, near/4.3)
	}
	var best pitch
	length := a.end - a.start
	// Long stretches resolve low notes and weak lower octaves; short ones follow
	// vibrato.
	for _, seconds := range []float64{0.3, 0.12, 0.05} {
		n := min(int(seconds*a.rate), length*2/3)
		for _, at := range []float64{0.92, 0.75, 0.55} {
			from := a.start + int(at*float64(length)) - n
			if from < a.start {
				continue
			}
			p := a.periodOf(soften(a.x[from:from+n]), lowest)
			if p.clarity > best.clarity+0.02 {
				best = p
			}
			if best.clarity > 0.98 {
				break
			}
		}
		if best.clarity > 0.97 {
			break
		}
	}
	best.ok = best.hz > 0 && best.clarity > 0.6
	return best
}

// periodOf is the pitch of one stretch, between lowest and 5 kHz.
func (a *analysis) periodOf(x []float32, lowest float64) pitch {
	n := len(x)
	longest := min(int(a.rate/lowest), n*2/3)
	shortest := max(2, int(a.rate/5000))
	nsdf := a.kit.Repeats(x, longest)
	if nsdf == nil {
		return pitch{}
	}
	// Peaks after the function has first gone below zero.
	t := 1
	for t < longest && nsdf[t] > 0 {
		t++
	}
	t = max(t, shortest)
	highest := 0.0
	for i := t; i < longest; i++ {
		if nsdf[i] > nsdf[i-1] && nsdf[i] >= nsdf[i+1] {
			highest = max(highest, peakHeight(nsdf, i))
		}
	}
	for i := t; i < longest; i++ {
		if nsdf[i] > nsdf[i-1] && nsdf[i] >= nsdf[i+1] && peakHeight(nsdf, i) >= same*highest {
			return pitch{hz: a.rate / (float64(i) + peakShift(nsdf, i)), clarity: min(1, peakHeight(nsdf, i))}
		}
	}
	return pitch{}
}

// soften is a low-pass, two moving averages of six samples (nulls at a sixth of
// the rate): the peaks of bright sounds would otherwise fall between samples.
func soften(x []float32) []float32 {
	const n = 6
	for range 2 {
		y := make([]float32, len(x))
		var sum float64
		for i, v := range x {
			sum += float64(v)
			if i >= n {
				sum -= float64(x[i-n])
			}
			y[i] = float32(sum / n)
		}
		x = y
	}
	return x
}

// peakShift and peakHeight give the vertex of the parabola through the three
// values about the local maximum i.
func peakShift(y []float64, i int) float64 {
	d := y[i-1] - 2*y[i] + y[i+1]
	if d >= 0 {
		return 0
	}
	return math.Max(-0.5, math.Min(0.5, (y[i-1]-y[i+1])/(2*d)))
}

func peakHeight(y []float64, i int) float64 {
	return y[i] - (y[i-1]-y[i+1])*peakShift(y, i)/4
}
