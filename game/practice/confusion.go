package practice

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"text/tabwriter"
)

// A Confusion counts what was answered to what was played, by any labels. The
// zero value is an empty table. Whoever merges two tables sees to it that they
// share no answers.
//
// As JSON it is an object of rows, one for each sound played, with the answers:
//
//	{"sine": {"sine": 8, "triangle": 2}, "triangle": {"triangle": 9, "sine": 1}}
type Confusion struct {
	counts map[string]map[string]int // [played][answered]
}

// Add counts one answer.
func (c *Confusion) Add(played, answered string) { c.add(played, answered, 1) }

func (c *Confusion) add(played, answered string, n int) {
	if c.counts == nil {
		c.counts = map[string]map[string]int{}
	}
	if c.counts[played] == nil {
		c.counts[played] = map[string]int{}
	}
	c.counts[played][answered] += n
}

// Merge adds the counts of another table.
func (c *Confusion) Merge(other *Confusion) {
	for played, row := range other.counts {
		for answered, n := range row {
			c.add(played, answered, n)
		}
	}
}

// Count is how often an answer was given to a sound.
func (c *Confusion) Count(played, answered string) int { return c.counts[played][answered] }

// Labels are all that was played or answered, in alphabetical order.
func (c *Confusion) Labels() []string {
	seen := map[string]bool{}
	for played, row := range c.counts {
		for answered := range row {
			seen[played], seen[answered] = true, true
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// Right is how many of all answers were right.
func (c *Confusion) Right() (right, all int) {
	for played := range c.counts {
		right += c.Count(played, played)
		all += c.played(played)
	}
	return right, all
}

func (c *Confusion) played(label string) int {
	n := 0
	for _, k := range c.counts[label] {
		n += k
	}
	return n
}

// A Pair is two labels and how often one was answered for the other.
type Pair struct {
	A, B   string // in alphabetical order
	Times  int    // A answered for B or B for A
	Played int    // A or B played
}

// Share is which part of the answers, 0 to 1, was the other of the two.
func (p Pair) Share() float64 {
	if p.Played == 0 {
		return 0
	}
	return float64(p.Times) / float64(p.Played)
}

// Pair is how often two labels, which differ, were confused.
func (c *Confusion) Pair(a, b string) Pair {
	return Pair{min(a, b), max(a, b), c.Count(a, b) + c.Count(b, a), c.played(a) + c.played(b)}
}

// Pairs are all pairs that were ever confused, the most frequent first; of those
// as frequent, the one with the larger share.
func (c *Confusion) Pairs() []Pair {
	var pairs []Pair
	labels := c.Labels()
	for i, a := range labels {
		for _, b := range labels[i+1:] {
			if p := c.Pair(a, b); p.Times > 0 {
				pairs = append(pairs, p)
			}
		}
	}
	slices.SortStableFunc(pairs, func(p, q Pair) int {
		return cmp.Or(cmp.Compare(q.Times, p.Times), cmp.Compare(q.Share(), p.Share()))
	})
	return pairs
}

// String is the table as text: a row for each sound played, a column for each answer.
func (c *Confusion) String() string {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', tabwriter.AlignRight)
	labels := c.Labels()
	fmt.Fprintf(w, "\t%s\t\n", strings.Join(labels, "\t"))
	for _, played := range labels {
		fmt.Fprintf(w, "%s\t", played)
		for _, answered := range labels {
			fmt.Fprintf(w, "%d\t", c.Count(played, answered))
		}
		fmt.Fprintln(w)
	}
	w.Flush() // into memory: no errors
	return text.String()
}

// MarshalJSON writes the rows.
func (c *Confusion) MarshalJSON() ([]byte, error) {
	if c.counts == nil {
		return []byte("{}"), nil
	}
	return json.Marshal(c.counts)
}

// mostCounted keeps sums of counts read from a file in the range of an int.
const mostCounted = 1e9

// UnmarshalJSON replaces the table by the one in data.
func (c *Confusion) UnmarshalJSON(data []byte) error {
	var counts map[string]map[string]int
	if err := json.Unmarshal(data, &counts); err != nil {
		return fmt.Errorf("the confusion table cannot be read: %w", err)
	}
	for played, row := range counts {
		for answered, n := range row {
			if n < 0 || n > mostCounted {
				return fmt.Errorf("the confusion table has %d answers %q to %q", n, answered, played)
			}
		}
	}
	c.counts = counts
	return nil
}
