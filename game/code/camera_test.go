package code

import (
	"fmt"
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

// full makes a code of a version that is as full as it can be.
func full(t testing.TB, version int, level Level, seed uint64) (c Code, text string) {
	t.Helper()
	text = letters(capacities[version-1][level-L], seed)
	c, err := Encode(text, level)
	if err != nil || c.Version() != version {
		t.Fatal(c.Version(), err)
	}
	return c, text
}

// handheld is a view as a hand holds a camera: turned and tilted by up to 12 degrees.
func handheld(v view, r *rand.Rand) view {
	v.Turned, v.Tilted = 24*r.Float64()-12, 24*r.Float64()-12
	return v
}

// shown is a code as large as a person holds it before a camera of 720 lines.
var shown = view{W: 960, H: 720, Filled: 0.8, Blur: 1, Noise: 6}

// Up to the limit a single picture out of a hand is read more often than not; a camera takes several a
// second. Measured at version 25: 12 of 12 (testdata/measured/codes.md).
func TestTheCameraReadsUpToTheLimit(t *testing.T) {
	for _, version := range []int{15, Camera} {
		for _, level := range []Level{L, M} {
			read, of := 0, 3
			for seed := range uint64(of) {
				r := rand.New(rand.NewPCG(seed, uint64(version)))
				c, text := full(t, version, level, seed)
				got, found := scan.Read(seen(c, handheld(shown, r), r))
				if found && got != text {
					t.Errorf("version %d: read %.20q for %.20q", version, got, text)
				}
				if found {
					read++
				}
			}
			if 3*read < 2*of {
				t.Errorf("version %d, level %d: %d of %d pictures are read", version, level, read, of)
			}
		}
	}
}

// A stain lies on the code: M corrects that, however the code is turned.
func TestTurnedAndDirtyCodesAreRead(t *testing.T) {
	for _, degrees := range []float64{0, 45, 90, 137, 180, 270} {
		r := rand.New(rand.NewPCG(1, uint64(degrees)))
		c, text := full(t, 8, M, 1)
		v := shown
		v.Filled, v.Turned = 0.6, degrees
		p := seen(c, v, r)
		for y := 350; y < 370; y++ { // a stain
			for x := 470; x < 500; x++ {
				p.Grey[y*p.W+x] = 40
			}
		}
		if got, found := scan.Read(p); !found || got != text {
			t.Errorf("turned by %v degrees: %.20q, %v", degrees, got, found)
		}
	}
}

// Noise and an empty wall hold no code.
func TestNothingIsReadWhereNothingIs(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	p := scan.Picture{W: 640, H: 480, Grey: make([]byte, 640*480)}
	if got, found := scan.Read(p); found {
		t.Errorf("black: read %q", got)
	}
	for i := range p.Grey {
		p.Grey[i] = byte(r.IntN(256))
	}
	if got, found := scan.Read(p); found {
		t.Errorf("noise: read %q", got)
	}
}

// BenchmarkCamera tells how many single pictures are read, and how long that takes:
// go test -run - -bench Camera -benchtime 16x ./game/code
func BenchmarkCamera(b *testing.B) {
	for _, filled := range []float64{0.6, 0.8} {
		for _, blur := range []float64{0.7, 1, 1.4} {
			for _, version := range []int{10, 20, 25, 30, 40} {
				b.Run(fmt.Sprintf("filled %.1f, blur %.1f, version %d", filled, blur, version), func(b *testing.B) {
					v, read := shown, 0
					v.Filled, v.Blur = filled, blur
					for i := range uint64(b.N) {
						b.StopTimer()
						r := rand.New(rand.NewPCG(i, uint64(version)))
						c, text := full(b, version, L, i)
						p := seen(c, handheld(v, r), r)
						b.StartTimer()
						if got, found := scan.Read(p); found && got == text {
							read++
						}
					}
					b.ReportMetric(float64(read)/float64(b.N), "read")
				})
			}
		}
	}
}
