package figure

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"partialcredit/synth"
)

// darkest are the boxes of the greatest shades of a sweep, by column: from the SVG alone.
func darkest(t *testing.T, svg string, above float64) map[int][]Box {
	t.Helper()
	one := regexp.MustCompile(`M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z`)
	all := map[int][]Box{}
	for _, e := range parse(t, svg) {
		alpha := 1.0
		if e.attrs["fill-opacity"] != "" {
			alpha = e.number(t, "fill-opacity")
		}
		if e.name != "path" || e.attrs["fill"] != "#0b4f8a" || alpha < above {
			continue
		}
		for _, m := range one.FindAllStringSubmatch(e.attrs["d"], -1) {
			var v [4]float64
			for i := range v {
				v[i], _ = strconv.ParseFloat(m[i+1], 64)
			}
			if v[3] > 10 {
				continue // of the key
			}
			for x := v[0]; x < v[0]+v[2]; x += 6 {
				all[int(x)] = append(all[int(x)], Box{x, v[1], 6, v[3]})
			}
		}
	}
	return all
}

// axes reads two numbers of each axis of a sweep: pixels for values.
func axes(t *testing.T, svg string, left, right, low, high string) (x, y [2]float64) {
	t.Helper()
	for _, e := range parse(t, svg) {
		switch e.text {
		case left:
			x[0] = e.number(t, "x")
		case right:
			x[1] = e.number(t, "x")
		case low:
			y[0] = e.number(t, "y") - 0.35*30
		case high:
			y[1] = e.number(t, "y") - 0.35*30
		}
	}
	if slices.Contains(append(x[:], y[:]...), 0) {
		t.Fatalf("a number is missing: %v, %v", x, y)
	}
	return x, y
}

// Of two sines that are multiplied there are the sum and the difference of their frequencies (product
// of two sines: trigonometry).
func TestSweepOfARatioDrawsSumAndDifference(t *testing.T) {
	s := sound(t, `{"version": 1, "note": 57, "a": {"shape": "sine"}, "b": {"shape": "sine"}, "combine": {"how": "ring"}}`)
	f, _ := synth.FieldByName("combine.ratio")
	along := AlongField(f, 2, 5)
	asked := 0.0
	svg := Sweep(Options{Size: Size{W: 900, H: 700, Unit: 2}}, along, func(place float64) Signal {
		if place <= asked {
			t.Fatal("it does not go from left to right")
		}
		asked = place
		return FieldAt(s, f, along)(place)
	}).SVG()
	x, y := axes(t, svg, "× 2", "× 4", "500", "1k")
	columns := darkest(t, svg, 0.99)
	if len(columns) < 80 {
		t.Fatalf("%d columns", len(columns))
	}
	for at, boxes := range columns {
		place := (float64(at) + 3 - x[0]) / (x[1] - x[0])
		ratio := 2 * math.Pow(2, place) // the field is logarithmic
		for _, hz := range [...]float64{220 * (ratio + 1), 220 * (ratio - 1)} {
			want := y[0] + (y[1]-y[0])*math.Log2(hz/500)
			if !slices.ContainsFunc(boxes, func(b Box) bool { return b.Y-2 < want && want < b.Y+b.H+2 }) {
				t.Errorf("ratio %.3f: no ink at %.1f Hz, pixel %.1f: %v", ratio, hz, want, boxes)
			}
		}
	}
}

// A pitch that falls by an octave, exponentially, as the description says.
func TestSweepOfATimeFollowsThePitch(t *testing.T) {
	s := sound(t, `{"version": 1, "note": 69, "seconds": 3, "a": {"shape": "sine"}, "envelope": {"a": 12, "seconds": 1}}`)
	note := Note(s)
	svg := Sweep(Options{}, AlongTime(float64(len(note.Samples))/note.Rate, Words{}), NoteAt(note)).SVG()
	x, y := axes(t, svg, "1 s", "2 s", "500 Hz", "1k")
	columns := darkest(t, svg, 0.94)
	for _, seconds := range [...]float64{0.3, 0.6, 1, 1.5, 2, 2.7} {
		at := x[0] + (seconds-1)*(x[1]-x[0])
		hz := 440 * math.Exp2(math.Exp(-seconds))
		want := y[0] + (y[1]-y[0])*math.Log2(hz/500)
		middle, tall := 0.0, 0.0
		for left, boxes := range columns {
			if float64(left) <= at && at < float64(left)+6 {
				for _, b := range boxes {
					middle, tall = middle+b.H*(b.Y+b.H/2), tall+b.H
				}
			}
		}
		// Of some 480 pixels an octave; a twentieth of a second to either side moves it by more.
		if middle /= tall; !(math.Abs(middle-want) < 6) || tall > 60 {
			t.Errorf("%v s: ink about pixel %.1f, %v thick, want %.1f (%.1f Hz)", seconds, middle, tall, want, hz)
		}
	}
}

func TestTicksAreRoundAndFew(t *testing.T) {
	for _, c := range []struct {
		along Along
		most  int
		want  []float64
	}{
		{Along{From: 0.03, To: 0.97}, 10, []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9}},
		{Along{From: 40, To: -40}, 5, []float64{-40, -20, 0, 20, 40}},
		{Along{From: 0.05, To: 20, Log: true}, 9, []float64{0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20}},
		{Along{From: 0.05, To: 20, Log: true}, 5, []float64{0.1, 0.3, 1, 3, 10}},
		{Along{From: 2, To: 5, Log: true}, 4, []float64{2, 3, 4, 5}},
	} {
		got := c.along.ticks(c.most)
		if len(got) != len(c.want) {
			t.Errorf("%v: %v, want %v", c.along, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%v: %v, want %v", c.along, got, c.want)
			}
		}
	}
	if short("+2.50 semitones") != "+2.5 semitones" || short("× 1.000") != "× 1" || short("20.0 %") != "20 %" || short("100 Hz") != "100 Hz" {
		t.Error("numbers are not written short")
	}
}
