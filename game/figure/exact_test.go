package figure

import (
	"fmt"
	"math"
	"math/cmplx"
	"strconv"
	"strings"
	"testing"

	"partialcredit/synth/exact"
)

// The stems of a pulse, read from the SVG alone: where they stand by the numbers under the axis, how
// tall they are by the numbers beside it. Package exact knows both.
func TestStemsStandWhereExactPartialsPutThem(t *testing.T) {
	const duty = 0.3
	s := OfSound(sound(t, `{"version": 1, "note": 57, "a": {"shape": "pulse", "duty": 0.3}}`))
	svg := Partials(Options{Ground: Transparent}, s, nil).SVG()
	img := rendered(t, svg)
	number := map[int]float64{} // x of the numbers
	level := map[int]float64{}  // y of the levels
	var dots []element
	for _, e := range parse(t, svg) {
		switch e.name {
		case "circle":
			dots = append(dots, e)
		case "text":
			if n, err := strconv.Atoi(e.text); err == nil {
				number[n] = e.number(t, "x")
			}
			if n, err := strconv.Atoi(strings.Replace(strings.TrimSuffix(e.text, " dB"), "−", "-", 1)); err == nil && e.attrs["text-anchor"] == "end" {
				level[n] = e.number(t, "y")
			}
		}
	}
	octave := number[2] - number[1]
	tens := level[-10] - level[0]
	if octave <= 0 || tens <= 0 || math.Abs(number[16]-number[1]-4*octave) > 0.1 || math.Abs(level[-40]-level[0]-4*tens) > 0.1 {
		t.Fatalf("the axes are numbered %v and %v", number, level)
	}
	partials := exact.Named("pulse", duty).Partials(24)
	strongest := 0.0
	for _, c := range partials {
		strongest = max(strongest, cmplx.Abs(c))
	}
	top := dots[0].number(t, "cy")
	first := 20 * math.Log10(cmplx.Abs(partials[1])/strongest)
	i := 0
	for n := 1; n <= 24; n++ {
		db := 20 * math.Log10(cmplx.Abs(partials[n])/strongest)
		if db < -70 {
			continue // every tenth is missing
		}
		if i == len(dots) {
			t.Fatalf("there are %d stems", len(dots))
		}
		x, y := dots[i].number(t, "cx"), dots[i].number(t, "cy")
		wantX := number[1] + octave*math.Log2(float64(n))
		wantY := top + (first-db)/10*tens
		// Half a pixel: 0.1 dB and 3 cents here.
		if math.Abs(x-wantX) > 0.5 || math.Abs(y-wantY) > 0.5 {
			t.Errorf("partial %d: at %.2f, %.2f, want %.2f, %.2f", n, x, y, wantX, wantY)
		}
		if got := ink(img, int(wantX), int(wantY), 0x0B4F8A); got < 0.9 {
			t.Errorf("partial %d: no ink at its dot (%v)", n, got)
		}
		if got := ink(img, int(wantX), int(wantY+30), 0x0B4F8A); got < 0.9 {
			t.Errorf("partial %d: no ink at its stem (%v)", n, got)
		}
		if got := ink(img, int(wantX), int(wantY-25), 0x0B4F8A); got > 0 {
			t.Errorf("partial %d: ink above its dot (%v)", n, got)
		}
		i++
	}
	if i != len(dots) {
		t.Errorf("there are %d stems, want %d", len(dots), i)
	}
	if base := level[0] - 0.35*30; math.Abs(top-first/10*-tens-base) > 1 {
		t.Errorf("the strongest stands at %.1f, 0 dB at %.1f", top-first/10*-tens, base)
	}
}

// The pixels of a trace against the waveform, column by column. Where it starts and how long a period
// is, the bracket under it says.
func TestTracePixelsFollowTheWave(t *testing.T) {
	for _, shape := range []string{"sine", "triangle"} {
		s := OfSound(sound(t, `{"version": 1, "note": 72, "a": {"shape": "`+shape+`"}}`))
		svg := Trace(Options{Ground: Transparent}, s, nil).SVG()
		img := rendered(t, svg)
		var from, to, zero float64
		for _, e := range parse(t, svg) {
			if e.name != "path" {
				continue
			}
			var x, y [4]float64
			if n, _ := fmt.Sscanf(e.attrs["d"], "M%f %fL%f %fL%f %fL%f %f", &x[0], &y[0], &x[1], &y[1], &x[2], &y[2], &x[3], &y[3]); n == 8 && from == 0 && x[0] == x[1] && x[2] == x[3] {
				from, to = x[0], x[3]
			} else if n == 4 {
				zero = y[0]
			}
		}
		if to-from < 300 || zero == 0 {
			t.Fatalf("%s: a period from %v to %v about %v", shape, from, to, zero)
		}
		wave := exact.Named(shape, 0.5)
		middle := func(x int) (float64, bool) { // of the ink in a column
			sum, moment := 0.0, 0.0
			for y := range 1080 {
				if math.Abs(float64(y)+0.5-zero) < 3 { // the zero line is drawn in another colour
					continue
				}
				v := ink(img, x, y, 0x0B4F8A)
				sum, moment = sum+v, moment+v*(float64(y)+0.5)
			}
			return moment / sum, sum > 2
		}
		// The height of the wave from one column, a quarter of a period on.
		quarter := int(from + (to-from)*0.2)
		y, ok := middle(quarter)
		tall := (zero - y) / wave.At((float64(quarter)+0.5-from)/(to-from))
		if !ok || tall < 200 {
			t.Fatalf("%s: %v pixels tall", shape, tall)
		}
		worst, columns := 0.0, 0
		for x := 100; x < 1800; x++ {
			u := (float64(x) + 0.5 - from) / (to - from)
			want := zero - tall*wave.At(u)
			if math.Abs(want-zero) < 12 {
				continue
			}
			// Where the triangle turns, the pen is round and partials over 20 kHz are missing.
			if edge := math.Abs(math.Mod(u+4.25, 0.5) - 0); shape == "triangle" && min(edge, 0.5-edge) < 0.01 {
				continue
			}
			y, ok := middle(x)
			if !ok {
				t.Fatalf("%s: no ink in column %d", shape, x)
			}
			worst, columns = max(worst, math.Abs(y-want)), columns+1
		}
		t.Logf("%s: %d columns, at most %.2f pixels off", shape, columns, worst)
		// Of a wave 900 pixels tall. Up to 0.9 of it are of the sound: its high-pass filter at 1 Hz turns
		// 523 Hz by 1/523 radians.
		if worst > 1.5 || columns < 1200 {
			t.Errorf("%s: %.2f pixels off in %d columns", shape, worst, columns)
		}
	}
}

// A recording has no phases beside it: its trace starts where it rises through zero. Here is a sine at
// 44.1 kHz that no one here has made.
func TestTraceOfARecordingStartsAtACrossing(t *testing.T) {
	s := Signal{Rate: 44100, Hz: 441.3}
	for i := range 30000 {
		s.Samples = append(s.Samples, float32(0.3*math.Sin(2*math.Pi*441.3*float64(i)/44100+1)))
	}
	svg := Trace(Options{Ground: Transparent}, s, nil).SVG()
	img := rendered(t, svg)
	lead := 40.0 + 40 // the left edge and two squares
	zero := 0.0
	for _, e := range parse(t, svg) {
		var x, y [2]float64
		if n, _ := fmt.Sscanf(e.attrs["d"], "M%f %fL%f %f", &x[0], &y[0], &x[1], &y[1]); zero == 0 && n == 4 && y[0] == y[1] {
			zero = y[0]
		}
	}
	// Ten pixels are six degrees.
	rises := false
	for x := int(lead) - 10; x < int(lead)+10; x++ {
		before, after := ink(img, x, int(zero)+6, 0x0B4F8A), ink(img, x+3, int(zero)-6, 0x0B4F8A)
		rises = rises || before > 0.5 && after > 0.5
	}
	if !rises {
		t.Error("the trace does not rise through zero where it starts")
	}
}

// Two oscillators a few cents apart beat, which splits lines while they are weak: they are partials all
// the same. Sidebands at a ratio that is no whole number are none.
func TestAxisIsNumberedByPartialWhereTheSoundHasThem(t *testing.T) {
	for _, c := range []struct {
		sound    string
		partials bool
	}{
		{`{"version": 1, "note": 45, "combine": {"how": "mix"}, "b": {"cents": 6}}`, true},
		{`{"version": 1, "note": 33, "combine": {"how": "mix"}, "b": {"cents": -5}}`, true},
		{`{"version": 1, "note": 57, "combine": {"how": "sync", "ratio": 2.37}}`, true},
		{`{"version": 1, "note": 57, "combine": {"how": "ring", "ratio": 1.37}}`, false},
		{`{"version": 1, "note": 57, "a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "fm", "ratio": 1.41, "index": 2}}`, false},
	} {
		hertz, partial := false, false
		for _, e := range parse(t, Partials(Options{}, OfSound(sound(t, c.sound)), nil).SVG()) {
			hertz = hertz || strings.HasSuffix(e.text, " Hz")
			partial = partial || e.text == "partial"
		}
		if partial != c.partials || hertz == c.partials {
			t.Errorf("%s: numbered by partial %v, in hertz %v", c.sound, partial, hertz)
		}
	}
}
