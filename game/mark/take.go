package mark

import (
	"math"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// PrepareTake prepares a recording as a target. Hand-ins to it, and recordings
// handed in to a description, are marked by their sounds alone: there are not two
// descriptions between which steps could be counted, so the distance of the
// features decides ([Result].Heard equals its Steps). The reasons come from the
// sounds, as always.
func PrepareTake(t *take.Take) *Reference { return &Reference{take: t} }

// MarkTake compares a recording with the target, as [Reference.Mark] does a
// description.
func (r *Reference) MarkTake(yours *take.Take, times float64) Result {
	return r.side().mark(side{take: yours}, times, r.pause)
}

// Pausing is the reference with a function that is called between the pieces in which a
// recording is marked, some hundredths of a second of work each. A panic of it ends the
// marking; nothing is left half done.
func (r *Reference) Pausing(pause func()) *Reference {
	other := *r
	other.pause = pause
	return &other
}

func (r *Reference) side() side { return side{r.sound, r.take} }

// A side is one of two sounds of which at least one is a recording.
type side struct {
	sound synth.Sound
	take  *take.Take // nil where the sound is described
}

// briefly are the lengths at which recordings too short for [lengths] are
// compared, in seconds: all transform fast.
var briefly = []float64{0.25, 0.5, 0.75, 1, 1.25, 1.5}

// longestTake is how many seconds of two recordings are compared at most, of
// which nobody knows how slowly they move (design choice: two cycles of half a
// hertz).
const longestTake = 4.0

// common is the length at which two sounds are compared: as long as both last,
// and not longer than is needed.
func common(target, yours side) float64 {
	most := longestTake
	for _, s := range []side{target, yours} {
		if s.take == nil {
			most = listening(s.sound)
			break
		}
	}
	for _, s := range []side{target, yours} {
		if s.take != nil {
			most = math.Min(most, s.take.Seconds)
		}
	}
	length := briefly[0]
	for _, s := range briefly {
		if s <= most {
			length = s
		}
	}
	for _, l := range lengths {
		if l.seconds <= most {
			length = l.seconds
		}
	}
	return length
}

// note is the frequency in hertz at which a sound is written or was played, 0
// where there is none.
func (s side) note() float64 {
	if s.take == nil {
		return fundamental(s.sound)
	}
	return s.take.Hz
}

// mark compares two sounds of which at least one is a recording.
func (s side) mark(yours side, times float64, pause func()) Result {
	if pause == nil {
		pause = func() {}
	}
	note := s.note()
	if note == 0 {
		note = yours.note()
	}
	if note == 0 {
		note = unwritten
	}
	g := newGrid(common(s, yours), note)
	t, y := s.perform(g.seconds, yours), yours.perform(g.seconds, s)
	pause()
	if s.take == nil {
		t = s.inPhase(g, t, y, yours, pause)
	} else if yours.take == nil {
		y = yours.inPhase(g, y, t, s, pause)
	}
	r := &Reference{grid: g}
	r.target = g.features(t)
	pause()
	r.heard = g.hear(t, pause)
	pause()
	if r.target != nil {
		r.places = g.places(r.target.power)
	}
	features := g.features(y)
	pause()
	h := g.hear(y, pause)
	pause()
	steps := r.distance(features)
	result := Result{Marks: credit(steps / times), Steps: steps, Heard: steps, Reasons: sure(reasonsPausing(r.heard, h, pause))}
	if r.target != nil {
		result.Partials = g.ticks(r.places, r.target, features)
	}
	return result
}

// unwritten is the note in hertz at which two recordings without a pitch are
// compared: it numbers nothing (design choice: the note of a standard sound).
const unwritten = 220.0

// sure leaves out reasons that would cost less than two steps: so much is left of
// an input's noise, of the rate of a recording and of the moment when its note
// begins (measured on the matches of the course).
func sure(all []Reason) (said []Reason) {
	for _, r := range all {
		if r.Cost >= 2 {
			said = append(said, r)
		}
	}
	return said
}

// perform returns the first seconds of a sound. A description is played for as
// long as the recording on the other side was, so that both are let go at the
// same time; where that is later both are cut.
func (s side) perform(seconds float64, other side) []float32 {
	if s.take != nil {
		out := make([]float32, int(math.Round(seconds*Rate)))
		x := s.take.Samples
		if other.take != nil {
			x = other.take.Alike(x)
		}
		copy(out, x)
		return fadeOut(out)
	}
	d := s.sound
	d.A.Phase, d.B.Phase, d.LFO.Phase = 0, 0, 0
	return played(d, seconds, other.take)
}

// played is a description as if recorded in place of a take, of which the first
// seconds are returned.
func played(d synth.Sound, seconds float64, as *take.Take) []float32 {
	d.Seconds = math.Max(0.1, math.Min(as.Seconds-d.Amplitude.Release, seconds))
	out := make([]float32, int(math.Round(seconds*Rate)))
	copy(out, as.Alike(synth.Render(d, Rate)))
	return fadeOut(out)
}

// fadeOut lets what is cut die away, like a release of the standard length.
func fadeOut(x []float32) []float32 {
	const seconds = 0.03
	end := x[len(x)-int(seconds*Rate):]
	for i := range end {
		end[i] *= float32(0.5 + 0.5*math.Cos(math.Pi*(float64(i)+0.5)/float64(len(end))))
	}
	return x
}
