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
	return r.side().mark(side{take: yours}, times)
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
// and not longer than is needed. A recording that has died away lasts as long as
// anybody likes.
func common(target, yours side) float64 {
	most := longestTake
	for _, s := range []side{target, yours} {
		if s.take == nil {
			most = listening(s.sound)
			break
		}
	}
	for _, s := range []side{target, yours} {
		if s.take != nil && !s.take.Faded {
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
func (s side) mark(yours side, times float64) Result {
	seconds := common(s, yours)
	note := s.note()
	if note == 0 {
		note = yours.note()
	}
	if note == 0 {
		note = 220 // of an average sound: there is nothing to number
	}
	g := newGrid(seconds, note)
	r := &Reference{sound: s.sound, take: s.take, grid: g}
	r.target, r.heard = g.take(s.perform(seconds, other(yours)))
	if r.target != nil {
		r.places = g.places(r.target.power)
	}
	y, h := g.take(yours.perform(seconds, other(s)))
	heard := r.distance(y)
	result := Result{Marks: credit(heard / times), Steps: heard, Heard: heard, Reasons: reasons(r.heard, h)}
	if r.target != nil {
		result.Partials = g.ticks(r.places, r.target, y)
	}
	return result
}

// other is the length of the recording on the other side, 0 where there is none
// or it has died away.
func other(s side) float64 {
	if s.take == nil || s.take.Faded {
		return 0
	}
	return s.take.Seconds
}

// perform returns the first seconds of a sound. A description is played for as
// long as the recording that it is compared with was, so that both are let go at
// the same time; where that is later both are cut.
func (s side) perform(seconds, played float64) []float32 {
	out := make([]float32, int(math.Round(seconds*Rate)))
	if s.take != nil {
		copy(out, s.take.Samples)
	} else {
		d := s.sound
		d.A.Phase, d.B.Phase, d.LFO.Phase = 0, 0, 0
		if played == 0 {
			played = seconds + d.Amplitude.Release
		}
		d.Seconds = math.Max(0.1, math.Min(played-d.Amplitude.Release, seconds))
		copy(out, synth.Render(d, Rate))
	}
	fade := out[len(out)-int(cutFade*Rate):]
	for i := range fade {
		fade[i] *= float32(0.5 + 0.5*math.Cos(math.Pi*(float64(i)+0.5)/float64(len(fade))))
	}
	return out
}

// cutFade is over how many seconds what is cut dies away, like a release of the
// standard length.
const cutFade = 0.03
