package mark

import (
	"math"

	"partialcredit/game/words"
)

// sliding says whether two sounds are told apart by how a multiplied frequency
// slides: both are sums and differences with a carrier, and one moves.
func sliding(t, y *heard) bool {
	if t.shape.ok && y.shape.ok {
		return false // one pitch explains them
	}
	a, b := t.slide(), y.slide()
	if a.ok && b.ok {
		return a.moves() || b.moves()
	}
	return (a.ok && a.moves() && !y.shape.ok || b.ok && b.moves() && !t.shape.ok) && len(compareRest(t, y)) > 0
}

// compareRest speaks of where the sums and differences come to rest, from the
// lines of the last part of both sounds: they are more exact than their course,
// and are there where that is lost between the multiples of the carrier.
func compareRest(t, y *heard) []finding {
	guess := t.slide().hz
	if !t.slide().ok {
		guess = y.slide().hz
	}
	a, okA := t.rest(guess)
	b, okB := y.rest(guess)
	if !okA || !okB {
		return nil
	}
	// What each still had to go must not be more than a little of the difference,
	// unless both had as far to go.
	if left := math.Abs(t.leftToGo(guess) - y.leftToGo(guess)); !(left <= 0.3*math.Abs(math.Log(b/a))) {
		return nil
	}
	return []finding{rests(a, b)}
}

func rests(a, b float64) finding {
	ys, ts := two(b, a)
	return finding{aboutTones, Reason{words.Say("The sums and differences in yours come to rest %s Hz either side, the target's %s Hz: its ratio is %s.", ys, ts,
		more(b, a, "higher", "lower")), math.Abs(math.Log(b/a)) / 0.004}}
}

// unfollowed is what the start of a movement costs where its pace costs as
// much as is given: the one of two that is much faster and seems to start nearer
// has gone part of its way before it could be followed, and its pace is said
// first.
func unfollowed(start, pace, yours, target, yourSeconds, targetSeconds float64) float64 {
	if pace > 2 && (yourSeconds < targetSeconds) == (math.Abs(yours) < math.Abs(target)) {
		return math.Min(start, 0.9*pace)
	}
	return start
}

// compareSlide speaks of where the sums and differences start, how fast they
// come to rest, and where.
func compareSlide(t, y *heard) (f []finding) {
	a, b := t.slide(), y.slide()
	rest := compareRest(t, y)
	if !a.ok || !b.ok {
		return rest
	}
	find := func(cost float64, text words.Message) { f = append(f, finding{aboutTones, Reason{text, cost}}) }
	if a.moves() != b.moves() {
		if a.moves() {
			find(math.Abs(b.semitones-a.semitones), words.Say("The sums and differences in the target move by %s semitones to where they come to rest; those in yours are there from the start: they start too %s or %s faster.",
				number(math.Abs(a.semitones)), more(a.semitones, 0, "low", "high"), more(a.semitones, 0, "fall", "rise")))
		} else {
			find(math.Abs(b.semitones-a.semitones), words.Say("The sums and differences in yours move by %s semitones to where they come to rest; those in the target are there from the start: they start too %s or %s more slowly.",
				number(math.Abs(b.semitones)), more(b.semitones, 0, "high", "low"), more(b.semitones, 0, "fall", "rise")))
		}
		return append(f, rest...)
	}
	verb := more(a.semitones+b.semitones, 0, "fall", "rise")
	step := 0.4 + 0.02*math.Abs(a.semitones+b.semitones)
	ys, ts := two(math.Abs(b.semitones), math.Abs(a.semitones))
	start := math.Abs(b.semitones-a.semitones) / step
	if math.Min(a.seconds, b.seconds) < 0.043 && a.moves() && b.moves() {
		start = 0 // within a frame of the analysis: where it came from is not heard
	}
	pace := 0.0
	if a.moves() && b.moves() {
		pace = math.Abs(math.Log(b.seconds/a.seconds)) / math.Log(1.15)
	}
	start = unfollowed(start, pace, b.semitones, a.semitones, b.seconds, a.seconds)
	find(start, words.Say("The sums and differences in yours start too %s: %s semitones from where they come to rest, the target's %s.",
		more(b.semitones, a.semitones, "high", "low"), ys, ts))
	if a.moves() && b.moves() {
		find(pace, words.Say("The sums and differences in yours %s %s: their time is %s, the target's %s.", verb,
			more(b.seconds, a.seconds, "more slowly", "faster"), duration(b.seconds), duration(a.seconds)))
	}
	// Where it comes to rest is heard when five time constants have gone by.
	if len(rest) > 0 {
		return append(f, rest...)
	}
	if settled := 0.2; a.seconds < settled*t.seconds && b.seconds < settled*y.seconds || math.Abs(math.Log(b.seconds/a.seconds)) < 0.1 {
		f = append(f, rests(a.hz, b.hz))
	}
	return
}
