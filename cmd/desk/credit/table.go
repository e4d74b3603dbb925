package credit

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"

	"partialcredit/game/mark"
)

// Options say how large a table is to be.
type Options struct {
	Targets int    // of every technique
	Seed    uint64 // chooses them
	Tries   int    // of the search for counterexamples, for every fourth target; 0 searches none
	Workers int    // at a time; 0 is one
	Only    string // the name of the one technique to measure; all where empty
}

// A Table is everything that was measured of the marks.
type Table struct {
	Options
	Courses  []*Course
	Reasons  []Tally   // of every control of every technique
	Amiss    []string  // reasons that are not as they should be
	Guesses  []float64 // marks of random settings, one for every target
	Alike    []Compared
	Confused []Compared
	Worst    []Counterexample // the worst of every technique
}

// Run measures the marks.
func Run(o Options) (*Table, error) {
	t := &Table{Options: o, Worst: make([]Counterexample, len(Techniques))}
	var mu sync.Mutex
	work := make(chan func())
	var done sync.WaitGroup
	for range max(1, o.Workers) {
		done.Go(func() {
			for f := range work {
				f()
			}
		})
	}
	type pair struct{ sweeps, choices []*Course }
	found := make([][]pair, len(Techniques)) // by technique and target, so that the order is fixed
	guesses := make([]float64, len(Techniques)*o.Targets)
	var err error
	done.Go(func() {
		m := markers{}
		if t.Alike, err = m.compare(Alike); err == nil {
			t.Confused, err = m.compare(Confused)
		}
	})
	for i := range Techniques {
		q := &Techniques[i]
		if o.Only != "" && o.Only != q.Name {
			continue
		}
		found[i] = make([]pair, o.Targets)
		for n := range o.Targets {
			work <- func() {
				target := q.Target(o.Seed, n)
				r := mark.Prepare(target)
				sweeps, choices := q.courses(target, r)
				found[i][n] = pair{sweeps, choices}
				guess := q.Anywhere(target, rand.New(rand.NewPCG(o.Seed, uint64(n))))
				guesses[i*o.Targets+n] = r.Mark(guess, 1).Marks
				if o.Tries == 0 || n%4 != 0 {
					return
				}
				c := q.Search(target, r, o.Tries, o.Seed)
				mu.Lock()
				defer mu.Unlock()
				if c.Ear > t.Worst[i].Ear {
					t.Worst[i] = c
				}
			}
		}
	}
	close(work)
	done.Wait()
	t.Guesses = guesses
	for i, targets := range found {
		tallies := Techniques[i].tallies()
		for n, p := range targets {
			t.Courses = append(t.Courses, p.sweeps...)
			for _, c := range slices.Concat(p.sweeps, p.choices) {
				t.Amiss = append(t.Amiss, c.tally(tallies, n)...)
			}
		}
		if len(targets) > 0 {
			t.Reasons = append(t.Reasons, tallies...)
		}
	}
	return t, err
}

// tallies makes an empty tally for every control.
func (t *Technique) tallies() []Tally {
	all := make([]Tally, len(t.Fields))
	for i, field := range t.Fields {
		all[i].Technique, all[i].Field = t.Name, field
	}
	return all
}

// tally counts the reasons of a course around target n, and returns what is
// amiss with them.
func (c *Course) tally(tallies []Tally, n int) (amiss []string) {
	i := slices.IndexFunc(tallies, func(t Tally) bool { return t.Field == c.Field })
	for k, yours := range c.Settings() {
		if what := tallies[i].Add(&c.Sweep, yours, c.Results[k]); what != "" {
			amiss = append(amiss, fmt.Sprintf("target %d: %s", n, what))
		}
	}
	return amiss
}

// rows groups the courses by technique and control, in the order of the table.
func (t *Table) rows() (names [][2]string, of map[[2]string][]*Course) {
	of = map[[2]string][]*Course{}
	for _, c := range t.Courses {
		name := [2]string{c.Technique, c.Field}
		if of[name] == nil {
			names = append(names, name)
		}
		of[name] = append(of[name], c)
	}
	return names, of
}
