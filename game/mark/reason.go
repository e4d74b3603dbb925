package mark

import (
	"math"
	"slices"

	"partialcredit/game/words"
)

// A Reason is one sentence about what differs between a sound and its target.
type Reason struct {
	Text words.Message
	Cost float64 // in just-noticeable steps; the bigger, the more costly
}

// mostReasons is how many reasons are given at once (design choice: more are
// not read).
const mostReasons = 4

// topic says what a reason is about. A reason may explain others away: a wrong
// octave changes every partial, but is one thing to say.
type topic int

const (
	aboutSilence topic = iota
	aboutOctave
	aboutPitch
	aboutGlide
	aboutVibrato
	aboutMotion
	aboutTones
	aboutSidebands
	aboutShape
	aboutSweep
	aboutLoudness
	aboutLength
	aboutTimbre // the general truth about the spectrum, said when nothing else is sure
)

// explains lists for each topic those that follow from it.
var explains = map[topic][]topic{
	aboutOctave:    {aboutSidebands, aboutTones, aboutShape, aboutSweep, aboutTimbre, aboutMotion},
	aboutPitch:     {aboutTimbre},
	aboutGlide:     {aboutSidebands, aboutTimbre, aboutSweep, aboutShape, aboutMotion, aboutTones, aboutLoudness},
	aboutVibrato:   {aboutSidebands, aboutTimbre, aboutSweep, aboutShape, aboutTones, aboutMotion, aboutLoudness},
	aboutMotion:    {aboutSidebands, aboutTimbre, aboutSweep, aboutTones, aboutLoudness},
	aboutSidebands: {aboutTimbre, aboutLoudness},
	aboutTones:     {aboutSidebands, aboutTimbre, aboutSweep, aboutShape, aboutPitch, aboutMotion, aboutLoudness},
	aboutShape:     {aboutTimbre, aboutSweep, aboutLoudness},
	aboutSweep:     {aboutTimbre, aboutMotion, aboutSidebands, aboutLoudness},
	aboutLoudness:  {aboutLength},
}

// A finding is a reason with its topic.
type finding struct {
	topic topic
	Reason
}

// reasons says in words what differs, the most costly first, one sentence each;
// empty where nothing that differs would be heard. It only speaks of percepts
// that are sure.
func reasons(target, yours *heard) []Reason { return reasonsPausing(target, yours, func() {}) }

func reasonsPausing(target, yours *heard, pause func()) []Reason {
	switch {
	case target.silent && yours.silent:
		return nil
	case yours.silent:
		return []Reason{{words.Say("Yours is silent."), 100}}
	case target.silent:
		return []Reason{{words.Say("The target is silent; yours is not."), 100}}
	}
	comparisons := []func(t, y *heard) []finding{
		comparePitch, compareGlide, compareVibrato, compareMotion, compareTones,
		compareShape, comparePulses, compareSweep, compareLoudness, compareLength, compareTimbre,
	}
	if sliding(target, yours) { // which stirs all the rest
		comparisons = []func(t, y *heard) []finding{compareSlide, compareLoudness, compareLength, compareTimbre}
	}
	var all []finding
	for i, compare := range comparisons {
		if i%4 == 0 { // most take no time
			pause()
		}
		for _, f := range compare(target, yours) {
			if f.Cost >= 1 && !math.IsNaN(f.Cost) {
				all = append(all, f)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b finding) int {
		switch {
		case a.Cost > b.Cost:
			return -1
		case a.Cost < b.Cost:
			return 1
		}
		return 0
	})
	var out []Reason
	for _, f := range all {
		if !explained(f, all) && len(out) < mostReasons {
			out = append(out, f.Reason)
		}
	}
	return out
}

// explained says whether another finding, at least about as costly, explains f.
// Of two that explain one another the more costly stays.
func explained(f finding, all []finding) bool {
	for _, g := range all {
		if !slices.Contains(explains[g.topic], f.topic) {
			continue
		}
		enough := 0.5
		if f.topic == aboutTimbre || f.topic == aboutSidebands {
			enough = 0.2
			if g.topic == aboutShape {
				enough = 0.1 // a peak moved by a step is a step of brightness or several
			}
		}
		if slices.Contains(explains[f.topic], g.topic) {
			enough = 1
		}
		if g.Cost >= enough*f.Cost && !(enough == 1 && g.Cost == f.Cost) {
			return true
		}
	}
	return false
}
