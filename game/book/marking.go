package book

import (
	"slices"
	"sync"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/synth"
)

// A pair is what is marked: a sound for a target.
type pair struct {
	target, yours synth.Sound
	times         float64 // of the sheet's strictness
}

// marking is what has been marked and what is still to be. The same sound for the same
// target is marked once, whoever hands it in.
type marking struct {
	marks map[pair]float64
	queue map[synth.Sound][]pair // still to be marked, by target
	order []synth.Sound          // of the targets
	left  int

	starts map[string][]pair // by sheet and exercise: what is marked where nothing was set

	target  synth.Sound // the one measured last, for Step
	measure *mark.Reference
}

// mostStarts is on how many targets of an exercise the start is marked (design choice):
// where each learner has another target, all of them would take too long.
const mostStarts = 8

// expect has all sounds on a slip marked, and the starts that they came from.
func (b *Book) expect(e *Entry) {
	times := e.sheet.Strictness.Times()
	for i := range e.Slip.Work {
		w := &e.Slip.Work[i]
		x := slip.Exercise(e.drawn, w.ID)
		if x.Kind != sheet.Match {
			continue
		}
		b.want(pair{x.Target, w.First.Sound(x), times})
		if w.Best != nil {
			b.want(pair{x.Target, w.Best.Sound(x), times})
		}
		start := pair{x.Target, x.Start(), times}
		key := e.Slip.Sheet + " " + w.ID
		if starts := b.starts[key]; len(starts) < mostStarts && !slices.Contains(starts, start) {
			b.want(start)
			b.starts[key] = append(starts, start)
		}
	}
}

// want has a sound marked.
func (m *marking) want(p pair) {
	if m.marks == nil {
		m.marks, m.queue, m.starts = map[pair]float64{}, map[synth.Sound][]pair{}, map[string][]pair{}
	}
	if _, asked := m.marks[p]; asked {
		return
	}
	m.marks[p] = unmarked
	if m.queue[p.target] == nil {
		m.order = append(m.order, p.target)
	}
	m.queue[p.target] = append(m.queue[p.target], p)
	m.left++
}

const unmarked = -1

// Left is how many sounds are still to be marked.
func (m *marking) Left() int { return m.left }

// Step marks one sound, some hundredths of a second of work, and says whether any is
// left.
func (m *marking) Step() bool {
	if m.left == 0 {
		return false
	}
	target := m.order[0]
	if m.measure == nil || m.target != target {
		m.target, m.measure = target, mark.Measure(target)
	}
	queue := m.queue[target]
	p := queue[0]
	m.marks[p] = m.measure.Marks(p.yours, p.times)
	m.left--
	if m.queue[target] = queue[1:]; len(queue) == 1 {
		delete(m.queue, target)
		m.order = m.order[1:]
	}
	return m.left > 0
}

// MarkAll marks all sounds, so many targets at a time. What is done is told now and then.
func (m *marking) MarkAll(workers int, done func(n, all int)) {
	var (
		mutex sync.Mutex
		wait  sync.WaitGroup
		count int
		all   = m.left
		todo  = make(chan []pair)
	)
	for range workers {
		wait.Go(func() {
			for queue := range todo {
				measure := mark.Measure(queue[0].target)
				for _, p := range queue {
					v := measure.Marks(p.yours, p.times)
					mutex.Lock()
					m.marks[p] = v
					count++
					if done != nil {
						done(count, all)
					}
					mutex.Unlock()
				}
			}
		})
	}
	for _, target := range m.order {
		todo <- m.queue[target]
	}
	close(todo)
	wait.Wait()
	m.queue, m.order, m.left = map[synth.Sound][]pair{}, nil, 0
}

// A judge remembers marks.
type judge struct {
	*marking
	lacks bool // some that it was asked for
}

// Marks are those of a sound for a target, as [slip.Judge] has it; 0 where they are not
// known yet.
func (j *judge) Marks(target, yours synth.Sound, times float64) float64 {
	v, asked := j.marks[pair{target, yours, times}]
	if !asked || v == unmarked {
		j.lacks = true
		return 0
	}
	return v
}

// outcome is what a slip's work in an exercise is worth; false as long as not all of it
// is marked.
func (b *Book) outcome(e *Entry, w *slip.Work) (slip.Outcome, bool) {
	if o, ok := e.outcomes[w.ID]; ok {
		return o, true
	}
	j := &judge{marking: &b.marking}
	o := w.Outcome(slip.Exercise(e.drawn, w.ID), e.sheet.Strictness.Times(), j)
	if j.lacks {
		return slip.Outcome{}, false
	}
	if e.outcomes == nil {
		e.outcomes = map[string]slip.Outcome{}
	}
	e.outcomes[w.ID] = o
	return o, true
}
