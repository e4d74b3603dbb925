package practice

import "time"

// A set ends after 8 to 10 minutes, without a break inside: sessions of about 8
// minutes taught fastest (Molloy et al. 2012, hearing 4).
const (
	Shortest = 8 * time.Minute  // enough where nothing is due any more
	Longest  = 10 * time.Minute // enough in any case
)

// A Moment is where a learner stands in a set.
type Moment struct {
	Day   int           // today, counted as in [Item]
	Spent time.Duration // since the set began
	Last  string        // the key asked last, if any
}

// Next says what to ask next, "" where there are no boxes, and whether to suggest
// a rest of the ears first. The random number is in [0, 1); the same number
// gives the same key.
//
// What is due comes first, where nothing is any more also the rest; of these, an
// item in box n is chosen with a weight of 1/n. The item asked last does not come
// again unless it is the only one.
//
// What is confused is interleaved (Carvalho and Goldstone 2014, hearing 4): the
// labels of the table are keys, and what was confused with the item asked last
// comes next, due or not, with a probability of 4 times the share of its answers
// that were confusions, up to one half, so that the last question does not give
// the next one away. Both figures are design choices.
func (b Boxes) Next(confused *Confusion, now Moment, random float64) (key string, rest bool) {
	due := b.Due(now.Day)
	rest = now.Spent >= Longest || now.Spent >= Shortest && len(due) == 0

	others := b.keys(func(Item) bool { return true })
	others = without(others, now.Last)
	if len(others) == 0 {
		if _, only := b[now.Last]; only {
			key = now.Last
		}
		return key, rest
	}

	shares := make([]float64, len(others))
	var similar float64
	for i, k := range others {
		shares[i] = confused.Pair(now.Last, k).Share()
		similar += shares[i]
	}
	contrast := min(4*similar, 0.5)
	if random < contrast {
		return pick(others, shares, random/contrast), rest
	}

	choice := without(due, now.Last)
	if len(choice) == 0 {
		choice = others
	}
	weights := make([]float64, len(choice))
	for i, k := range choice {
		weights[i] = 1 / float64(b[k].box())
	}
	return pick(choice, weights, (random-contrast)/(1-contrast)), rest
}

func without(keys []string, key string) []string {
	var rest []string
	for _, k := range keys {
		if k != key {
			rest = append(rest, k)
		}
	}
	return rest
}

// pick chooses a key in proportion to its weight by a random number in [0, 1).
func pick(keys []string, weights []float64, random float64) string {
	var sum float64
	for _, w := range weights {
		sum += w
	}
	last := keys[0]
	left := random * sum
	for i, w := range weights {
		if w == 0 {
			continue
		}
		last = keys[i]
		if left -= w; left < 0 {
			break
		}
	}
	return last
}
