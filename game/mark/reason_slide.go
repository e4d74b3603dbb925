package mark

import (
	"fmt"
	"math"
)

// sliding says whether two sounds are told apart by how a multiplied frequency
// slides: both are sums and differences with a carrier, and one moves.
func sliding(t, y *heard) bool {
	if t.shape.ok && y.shape.ok {
		return false // one pitch explains them
	}
	return t.slide().ok && y.slide().ok && (t.slide().moves() || y.slide().moves())
}

// compareSlide speaks of where the sums and differences start, how fast they
// come to rest, and where.
func compareSlide(t, y *heard) (f []finding) {
	a, b := t.slide(), y.slide()
	say := func(cost float64, format string, words ...any) {
		f = append(f, finding{aboutTones, Reason{fmt.Sprintf(format, words...), cost}})
	}
	verb := more(a.semitones+b.semitones, 0, "fall", "rise")
	step := 0.4 + 0.02*math.Abs(a.semitones+b.semitones)
	ys, ts := two(math.Abs(b.semitones), math.Abs(a.semitones))
	start := math.Abs(b.semitones-a.semitones) / step
	if math.Min(a.seconds, b.seconds) < 0.043 && a.moves() && b.moves() {
		start = 0 // within a frame of the analysis: where it came from is not heard
	}
	say(start, "The sums and differences in yours start too %s: %s semitones from where they come to rest, the target's %s.",
		more(b.semitones, a.semitones, "high", "low"), ys, ts)
	if a.moves() && b.moves() {
		say(math.Abs(math.Log(b.seconds/a.seconds))/math.Log(1.15), "The sums and differences in yours %s %s: their time is %s, the target's %s.", verb,
			more(b.seconds, a.seconds, "more slowly", "faster"), duration(b.seconds), duration(a.seconds))
	}
	// Where it comes to rest is heard when five time constants have gone by.
	if settled := 0.2; a.seconds < settled*t.seconds && b.seconds < settled*y.seconds || math.Abs(math.Log(b.seconds/a.seconds)) < 0.1 {
		ys, ts := two(b.hz, a.hz)
		say(math.Abs(math.Log(b.hz/a.hz))/0.004, "The sums and differences in yours come to rest %s Hz either side, the target's %s Hz: its ratio is %s.", ys, ts,
			more(b.hz, a.hz, "higher", "lower"))
	}
	return
}
