package draft

import (
	"strings"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// Texts are those of an exercise.
type Texts struct{ Title, Task, Teach string }

// Suggest is what the texts of an exercise may say, by its kind and by what is set in
// it, in a language.
func Suggest(e *sheet.Exercise, l *words.Language) Texts {
	f, more := about(e)
	t := Texts{Title: l.Say(titles[f]), Teach: l.Say(teachings[f])}
	if t.Title == "" {
		t.Title = l.Say("What do you hear?")
	}
	if t.Teach == "" {
		t.Teach = l.Say("Listen again, and compare the partials with what you hear.")
	}
	switch e.Kind {
	case sheet.Match:
		t.Task = l.Say("Set the ruler until yours sounds like the target.")
		if more {
			t.Title, t.Task = l.Say("How is it set?"), l.Say("Set the rulers until yours sounds like the target.")
		}
	case sheet.Show:
		t.Task = l.Say("Listen while the ruler moves, and watch the partials.")
	case sheet.Name:
		t.Title, t.Task = l.Say("Which one is it?"), l.Say("Listen, then say which of them sounds.")
	case sheet.Same:
		t.Title, t.Task = l.Say("Are they the same?"), l.Say("Trust your ears: do the two sound the same?")
	case sheet.Limit:
		t.Title, t.Task = l.Say("How small a difference do you hear?"), l.Say("Two of three are the same: say which one is different.")
	}
	return t
}

// about is the field that an exercise is about first, that of oscillator A standing for
// both, and whether it is about others too.
func about(e *sheet.Exercise) (field string, more bool) {
	alike := func(name string) string {
		if of, ok := strings.CutPrefix(name, "b."); ok {
			return "a." + of
		}
		if name == "level" {
			return "a.level"
		}
		return name
	}
	switch {
	case len(e.Controls) > 0:
		field = alike(e.Controls[0].Fields[0])
		for _, c := range e.Controls[1:] {
			more = more || alike(c.Fields[0]) != field
		}
	case e.Quantity != nil && len(e.Quantity.Set) > 0:
		field = alike(e.Quantity.Set[0])
	case len(e.Answers) > 1:
		field = alike(differs(e.Answers[0].Sound, e.Answers[1].Sound))
	case len(e.Pairs) > 0:
		field = alike(differs(e.Pairs[0].One, e.Pairs[0].Other))
	}
	return field, more
}

// Retell puts new suggestions in the place of old ones, where nobody has written
// something else.
func Retell(e *sheet.Exercise, before, now Texts) {
	for _, t := range []struct {
		text        *string
		before, now string
	}{{&e.Title, before.Title, now.Title}, {&e.Task, before.Task, now.Task}, {&e.Teach, before.Teach, now.Teach}} {
		if *t.text == "" || *t.text == t.before {
			*t.text = t.now
		}
	}
}

var titles = map[string]string{
	"a.duty": "Which duty is it?", "combine.ratio": "Which ratio is it?", "combine.index": "Which modulation index is it?", "combine.depth": "How deep is the modulation?",
	"a.cents": "How far is it detuned?", "combine.balance": "How are A and B mixed?", "lfo.cents": "How wide is the vibrato?", "lfo.hz": "How fast is the LFO?",
	"lfo.duty": "How far does the duty move?", "lfo.level": "How deep is the tremolo?", "lfo.fade": "How long does the LFO fade in?", "lfo.shape": "Which shape has the LFO?",
	"envelope.a": "From where does the pitch fall?", "envelope.b": "From where does the pitch fall?", "envelope.depth": "How far does the modulation fall?",
	"envelope.seconds": "How long does it fall?", "a.shape": "Which shape is it?", "a.footage": "Which footage is it?", "combine.how": "How are A and B combined?",
	"amplitude.attack": "How long is the attack?", "amplitude.decay": "How long is the decay?", "amplitude.sustain": "How loud is the sustain?", "amplitude.release": "How long is the release?",
	"note": "Which note is it?", "seconds": "How long is the note?", "a.level": "How loud is it?", "character": "How much character has it?",
}

var teachings = map[string]string{
	"a.duty":            "The narrower a pulse, the thinner it sounds; a duty of one nth lacks every nth partial.",
	"combine.ratio":     "Whole ratios keep partials in one series; between them, partials stand apart or beat.",
	"combine.index":     "The larger the modulation index, the more sidebands, and the brighter the sound.",
	"combine.depth":     "The deeper the modulation, the louder the sidebands beside each partial.",
	"a.cents":           "Two oscillators beat as many times a second as their frequencies lie apart in hertz.",
	"combine.balance":   "Mixing adds the partials of both oscillators, each as loud as its level says.",
	"lfo.cents":         "A wider vibrato carries the pitch further up and down; its rate stays.",
	"lfo.hz":            "Count the swings: the rate of the LFO is how many there are in a second.",
	"lfo.duty":          "A duty that moves lets partials come and go, as two detuned oscillators do.",
	"lfo.level":         "A tremolo swings the level and leaves the pitch where it is.",
	"lfo.fade":          "The note begins still, and the LFO comes in over its fade-in time.",
	"lfo.shape":         "A triangle sweeps evenly, a square jumps between two values, a sawtooth falls back at once.",
	"envelope.a":        "The pitch falls exponentially: fast at first, then ever slower.",
	"envelope.b":        "What falls in hard sync is a peak among the partials; the pitch stays with A.",
	"envelope.depth":    "As the modulation falls away the sidebands go, and the sound gets plainer.",
	"envelope.seconds":  "A short fall is heard as a stroke, a long one as a glide.",
	"a.shape":           "The shape says how strong each partial is: a sine has one, a sawtooth has all.",
	"a.footage":         "Half the footage is an octave higher.",
	"combine.how":       "A mix adds, ring modulation leaves sums and differences, and sync keeps the pitch of A.",
	"amplitude.attack":  "A short attack is heard as a click or a stroke, a long one as a swell.",
	"amplitude.decay":   "The decay is how fast the level falls to what is sustained.",
	"amplitude.sustain": "The sustain is the level that stays while the note is held.",
	"amplitude.release": "The release is how long the sound takes to fall silent after the note.",
	"note":              "Twelve semitones are an octave, which doubles the frequency.",
	"a.level":           "A step of one decibel is about the smallest that is heard.",
	"character":         "Character bends the shapes and lets the pitch wander a little.",
}
