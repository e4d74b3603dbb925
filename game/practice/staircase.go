package practice

import "math"

// A Staircase finds the smallest quantity that a listener can hear: in each
// trial one of [Intervals] sounds differs by that quantity, and the listener says
// which. Two right answers in a row make it smaller, one wrong answer larger
// (two-down one-up: Levitt 1971, J. Acoust. Soc. Am. 49:467), so that it settles
// where the listener is right with the probability p of p² = ½: [Target].
//
// The step is a factor of 2 up to the second reversal, which it still makes, and
// √2 from then on; the run ends after 8 reversals or 50 trials (hearing 3). Its
// whole state is where it started and what was answered; everything else follows.
//
// The zero value starts at 1 and has no bounds.
//
// A run that starts at the limit or below it ends a few percent low: start 2 to
// 32 times as high as the limit may be. Limits of another task, "which is
// brighter?", say, are other limits (hearing 3): never pool them.
type Staircase struct {
	Start   float64 `json:"start,omitempty"`   // the first quantity, in any unit with a true zero; 1 if it is not above 0
	Min     float64 `json:"min,omitempty"`     // none if it is not above 0
	Max     float64 `json:"max,omitempty"`     // none if it is not above 0
	Answers []bool  `json:"answers,omitempty"` // right or wrong, in order
}

const (
	// Intervals is how many sounds a trial of a staircase has.
	Intervals = 3
	// Target is the proportion of right answers at the limit.
	Target = math.Sqrt2 / 2

	mostReversals = 8
	mostTrials    = 50
	coarse        = 2 // reversals with the large step
	counted       = 6 // last reversals that give the threshold
)

// A Trial is one question of a staircase, for a plot.
type Trial struct {
	Value    float64
	Right    bool
	Reversal bool // the quantity turned here, from falling to rising or back
}

// Different is which of the sounds of a trial, 0 to Intervals-1, is the
// different one, given a random number in [0, 1).
func Different(random float64) int { return int(random * Intervals) }

// Next is the quantity to ask for.
func (s *Staircase) Next() float64 {
	_, next := s.walk()
	return next
}

// Answer takes the answer to [Staircase.Next]. After the end it does nothing.
func (s *Staircase) Answer(right bool) {
	if !s.Done() {
		s.Answers = append(s.Answers, right)
	}
}

// Run is what has been asked and answered so far.
func (s *Staircase) Run() []Trial {
	trials, _ := s.walk()
	return trials
}

// Done says whether the run has ended.
func (s *Staircase) Done() bool {
	trials := s.Run()
	return len(trials) >= mostTrials || len(reversals(trials)) >= mostReversals
}

// Threshold is the limit that the run found: about value, within a factor.
// They are the geometric mean and the geometric standard deviation (Kirkwood
// 1979, from memory) of the quantities at the last six reversals. The limit of a
// steady listener is between value/factor and value·factor in about four runs of
// five (simulated: see the test).
//
// It is not ok before the run is done, nor when the limit lies at a bound or
// beyond: where half of the reversals stand there, or where there were too few of
// them and the last trial stood there. Then value is that bound, else 0.
func (s *Staircase) Threshold() (value, factor float64, ok bool) {
	if !s.Done() {
		return 0, 0, false
	}
	trials := s.Run()
	turns := reversals(trials)
	if len(turns) < counted {
		turns = []float64{trials[len(trials)-1].Value}
	} else {
		turns = turns[len(turns)-counted:]
	}
	for _, bound := range []float64{s.Min, s.Max} {
		met := 0
		for _, v := range turns {
			if v == bound {
				met++
			}
		}
		if 2*met >= len(turns) {
			return bound, 0, false
		}
	}
	if len(turns) < counted {
		return 0, 0, false
	}
	var mean, squares float64
	for _, v := range turns {
		mean += math.Log(v) / counted
	}
	for _, v := range turns {
		d := math.Log(v) - mean
		squares += d * d
	}
	return math.Exp(mean), math.Exp(math.Sqrt(squares / (counted - 1))), true
}

// walk goes through the answers. A step that a bound holds back is still a step:
// the quantity turns there when the next one leads away.
func (s *Staircase) walk() (trials []Trial, next float64) {
	next = 1
	if s.Start > 0 {
		next = s.Start
	}
	next = s.clamp(next)
	var way, inRow, turns int // way is that of the last step: -1 down, 1 up, 0 before the first
	for _, right := range s.Answers {
		t := Trial{Value: next, Right: right}
		inRow++
		if !right || inRow == 2 {
			to, step := 1, math.Sqrt2
			if turns < coarse {
				step = 2
			}
			if right {
				to, step = -1, 1/step
			}
			if way == -to {
				t.Reversal = true
				turns++
			}
			way, inRow = to, 0
			next = s.clamp(next * step)
		}
		trials = append(trials, t)
	}
	return trials, next
}

func (s *Staircase) clamp(v float64) float64 {
	if s.Max > 0 {
		v = min(v, s.Max)
	}
	if s.Min > 0 {
		v = max(v, s.Min)
	}
	return v
}

// reversals are the quantities at which the run turned.
func reversals(trials []Trial) []float64 {
	var turns []float64
	for _, t := range trials {
		if t.Reversal {
			turns = append(turns, t.Value)
		}
	}
	return turns
}
