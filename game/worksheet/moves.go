package worksheet

import (
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// moves says whether a sound of an exercise changes while it lasts, which the pictures do not show.
func moves(e *sheet.Exercise) bool {
	var all []synth.Sound
	switch e.Kind {
	case sheet.Name:
		for i := range e.Answers {
			all = append(all, e.Answers[i].Sound)
		}
	case sheet.Same:
		for i := range e.Pairs {
			all = append(all, e.Pairs[i].One, e.Pairs[i].Other)
		}
	default:
		all = append(all, e.Target)
	}
	for i := range all {
		l, v, a := &all[i].LFO, &all[i].Envelope, &all[i].Amplitude
		if l.Duty != 0 || l.Cents != 0 || l.Level != 0 || v.A != 0 || v.B != 0 || v.Depth != 0 || a.Sustain < 1 {
			return true
		}
	}
	return false
}
