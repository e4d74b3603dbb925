package credit

import (
	"math/rand/v2"
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
	Guesses  []float64 // marks of random settings, one for every target
	Alike    []Compared
	Confused []Compared
	Worst    []Counterexample // the worst of every technique
}

// A Compared is a pair at one note and the marks of its second for its first.
type Compared struct {
	Pair
	Note  int
	Marks float64
}

// notes are those at which pairs are compared: low, middle and high.
var notes = []int{36, 57, 81}

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
	found := make([][][]*Course, len(Techniques)) // by technique and target, so that the order is fixed
	guesses := make([]float64, len(Techniques)*o.Targets)
	for i := range Techniques {
		q := &Techniques[i]
		if o.Only != "" && o.Only != q.Name {
			continue
		}
		found[i] = make([][]*Course, o.Targets)
		for n := range o.Targets {
			work <- func() {
				target := q.Target(o.Seed, n)
				found[i][n] = q.Courses(target)
				guess := q.Anywhere(target, rand.New(rand.NewPCG(o.Seed, uint64(n))))
				guesses[i*o.Targets+n] = mark.Prepare(target).Mark(guess, 1).Marks
				if o.Tries == 0 || n%4 != 0 {
					return
				}
				c := q.Search(target, o.Tries, o.Seed)
				mu.Lock()
				defer mu.Unlock()
				if c.Ear > t.Worst[i].Ear {
					t.Worst[i] = c
				}
			}
		}
	}
	var err error
	t.Alike, err = comparePairs(Alike)
	if err == nil {
		t.Confused, err = comparePairs(Confused)
	}
	close(work)
	done.Wait()
	t.Guesses = guesses
	for _, targets := range found {
		for _, courses := range targets {
			t.Courses = append(t.Courses, courses...)
		}
	}
	return t, err
}

func comparePairs(pairs []Pair) ([]Compared, error) {
	var all []Compared
	for _, p := range pairs {
		for _, note := range notes {
			a, b, err := p.At(note)
			if err != nil {
				return nil, err
			}
			all = append(all, Compared{p, note, mark.Prepare(a).Mark(b, 1).Marks})
		}
	}
	return all, nil
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
