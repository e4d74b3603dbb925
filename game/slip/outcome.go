package slip

import (
	"math"

	"partialcredit/game/ask"
	"partialcredit/game/mark"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// UncoveredCap is the most marks for a target that was uncovered before it was
// handed in.
const UncoveredCap = 80

// An Outcome is what the answers to one exercise are worth.
type Outcome struct {
	First, Best float64             // marks, 0 to 100; NaN for a limit, which has none
	Limit       float64             // of a limit: the threshold, in the unit of its quantity
	Found       bool                // and whether there is one
	Table       *practice.Confusion // of a naming or a comparison: what was answered to what, all attempts together; nil for others
}

// A Judge gives marks to a sound for a target: a [Marker], or whoever remembers what one
// gave. Every just-noticeable step is taken times as large.
type Judge interface {
	Marks(target, yours synth.Sound, times float64) float64
}

// A Marker marks sounds and remembers the targets it has measured. It is not safe for
// concurrent use. The zero value is ready.
type Marker struct {
	target  synth.Sound // the one measured last
	measure *mark.Reference
}

// Marks are those of a sound for a target.
func (m *Marker) Marks(target, yours synth.Sound, times float64) float64 {
	if m.measure == nil || m.target != target {
		m.target, m.measure = target, mark.Measure(target)
	}
	return m.measure.Marks(yours, times)
}

// Outcome marks what was done in an exercise of a sheet that fits: see [Slip.Fits]. The
// exercise is one of [sheet.Sheet.For] the slip's name; times is the sheet's strictness.
func (w *Work) Outcome(e *sheet.Exercise, times float64, m Judge) Outcome {
	o := Outcome{First: math.NaN(), Best: math.NaN()}
	switch e.Kind {
	case sheet.Match:
		o.First = w.First.marks(e, times, m)
		o.Best = o.First
		if w.Best != nil {
			o.Best = w.Best.marks(e, times, m)
		}
	case sheet.Limit:
		stairs := w.last().Staircase(e)
		o.Limit, _, o.Found = stairs.Threshold()
	default:
		o.First = w.First.Run.Marks(e)
		o.Best, o.Table = o.First, w.First.Run.Table(e)
		if w.Best != nil {
			o.Best = w.Best.Run.Marks(e)
			o.Table.Merge(w.Best.Run.Table(e))
		}
	}
	o.Best = math.Max(o.First, o.Best) // whatever the slip calls its best
	return o
}

func (w *Work) last() *ask.Run {
	if w.Best != nil {
		return w.Best.Run
	}
	return w.First.Run
}

func (a *Attempt) marks(e *sheet.Exercise, times float64, m Judge) float64 {
	marks := m.Marks(e.Target, a.Sound(e), times)
	if a.Uncovered {
		marks = math.Min(marks, UncoveredCap)
	}
	return marks
}

// Sound is what was set in a match.
func (a *Attempt) Sound(e *sheet.Exercise) synth.Sound {
	s := e.Start()
	for i, v := range a.Settings {
		e.Controls[i].Set(&s, v)
	}
	return s
}
