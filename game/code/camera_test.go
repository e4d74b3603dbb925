package code

import (
	"math"
	"math/rand/v2"
	"testing"

	"partialcredit/game/scan"
)

// A view is how a camera sees a code.
type view struct {
	W, H   int     // of its picture
	Filled float64 // the side of the code with its quiet zone, as a share of the picture's height
	Turned float64 // degrees
	Tilted float64 // degrees about an axis through the middle, as seen from three times the side away
	Blur   float64 // standard deviation in pixels
	Noise  float64 // standard deviation in steps of 255
}

// seen is the picture of a code that hangs in a grey room: each pixel the mean of nine places, blurred,
// a quarter darker on one side, at 60 % of full contrast, with noise.
func seen(c Code, v view, r *rand.Rand) scan.Picture {
	side := v.Filled * float64(v.H)
	sin, cos := math.Sincos(v.Turned * math.Pi / 180)
	lean, flat := math.Sincos(v.Tilted * math.Pi / 180)
	light := func(x, y float64) float64 { // of a place in the picture
		x, y = x-float64(v.W)/2+0.31, y-float64(v.H)/2-0.17
		x, y = cos*x+sin*y, cos*y-sin*x
		// Seen in perspective from three sides away: Y = y flat / (1 + y lean / 3 side).
		y /= flat - y*lean/(3*side)
		x *= 1 + y*lean/(3*side)
		m, n := (x/side+0.5)*float64(c.Side()), (y/side+0.5)*float64(c.Side())
		switch {
		case m < 0 || n < 0 || m >= float64(c.Side()) || n >= float64(c.Side()):
			return 0.35
		case c.At(int(m)-Quiet, int(n)-Quiet):
			return 0
		}
		return 1
	}
	p := make([]float64, v.W*v.H)
	for i := range p {
		for j := range 9 {
			p[i] += light(float64(i%v.W)+float64(j%3)/3+1./6, float64(i/v.W)+float64(j/3)/3+1./6) / 9
		}
	}
	p = blurred(p, v.W, v.Blur, 1)
	p = blurred(p, v.W, v.Blur, v.W)
	out := scan.Picture{W: v.W, H: v.H, Grey: make([]byte, v.W*v.H)}
	for i := range p {
		shade := 1 - 0.25*float64(i%v.W)/float64(v.W)
		out.Grey[i] = byte(max(0, min(255, shade*(50+153*p[i])+v.Noise*r.NormFloat64())))
	}
	return out
}

// blurred folds a picture with a Gaussian along its rows (step 1) or columns (step w).
func blurred(p []float64, w int, sigma float64, step int) []float64 {
	reach := int(math.Ceil(3 * sigma))
	weights, sum := make([]float64, 2*reach+1), 0.0
	for i := range weights {
		weights[i] = math.Exp(-0.5 * math.Pow(float64(i-reach)/max(sigma, 0.01), 2))
		sum += weights[i]
	}
	out := make([]float64, len(p))
	for i := range p {
		for k, g := range weights {
			at := i + (k-reach)*step
			if step == 1 && at/w != i/w || at < 0 || at >= len(p) {
				at = i
			}
			out[i] += g / sum * p[at]
		}
	}
	return out
}

// share is how many of n pictures of codes of a version are read.
func share(t *testing.T, version int, level Level, v view, n int) (read int) {
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, uint64(version)))
		text := letters(capacities[version-1][2-level]-1, seed)
		if level == L {
			text = letters(capacities[version-1][0]-1, seed)
		} else {
			text = letters(capacities[version-1][1]-1, seed)
		}
		c, err := Encode(text, level)
		if err != nil || c.Version() != version {
			t.Fatal(c.Version(), err)
		}
		turned := v
		turned.Turned += 24*r.Float64() - 12
		turned.Tilted += 24*r.Float64() - 12
		if got, found := scan.Read(seen(c, turned, r)); found {
			if got != text {
				t.Errorf("version %d: read %.20q for %.20q", version, got, text)
			}
			read++
		}
	}
	return read
}

func TestTable(t *testing.T) {
	for _, frame := range [][2]int{{800, 720}, {1200, 1080}} {
		for _, blur := range []float64{0.7, 1, 1.4} {
			for _, level := range []Level{L} {
				row := []int{}
				for _, version := range []int{5, 10, 15, 20, 22, 25, 28, 30, 35, 40} {
					row = append(row, share(t, version, level, view{frame[0], frame[1], 0.8, 0, 0, blur, 6}, 8))
				}
				t.Log(frame, blur, level, row)
			}
		}
	}
}
