package sheet

import (
	"encoding/json"
	"errors"
	"fmt"

	"partialcredit/game/link"
	"partialcredit/synth"
)

// SoundFragment is the fragment of a link to a sound, without the # sign.
func SoundFragment(s synth.Sound) string {
	data, err := json.Marshal(brief(s))
	if err != nil {
		panic("sheet: a sound as a link: " + err.Error()) // names and finite numbers
	}
	return link.Pack(link.Sound, data)
}

// ReadSoundFragment reads the fragment of a link to a sound, with or without the #
// sign. The error is a sentence for whoever has followed the link.
func ReadSoundFragment(fragment string) (synth.Sound, error) {
	kind, data, err := link.Unpack(fragment)
	if err != nil {
		return synth.Sound{}, err
	}
	if kind != link.Sound {
		return synth.Sound{}, link.ErrUnknown
	}
	s, err := synth.Parse(data)
	if err != nil {
		return synth.Sound{}, link.ErrDamaged
	}
	return s, nil
}

// Fragment is the fragment of a link to the sheet, without the # sign. One exercise
// travels as a sheet of its own: see [Sheet.Only].
func (s *Sheet) Fragment() string { return link.Pack(link.Sheet, s.JSON()) }

// ReadFragment reads the fragment of a link to a sheet, or a whole link. The error is a
// sentence for whoever has followed it.
func ReadFragment(fragment string) (*Sheet, error) {
	kind, data, err := link.Unpack(fragment)
	if err != nil {
		return nil, err
	}
	if kind != link.Sheet {
		return nil, errors.New("This link does not lead to a sheet.")
	}
	s, err := Parse(data)
	if err != nil {
		return nil, fmt.Errorf("The sheet in this link cannot be used: %w. Tell whoever gave it to you.", err)
	}
	return s, nil
}

// Only is a sheet of one exercise of this one.
func (s *Sheet) Only(exercise int) *Sheet {
	one := *s
	one.Title = s.Exercises[exercise].Title
	one.Exercises = s.Exercises[exercise : exercise+1 : exercise+1]
	return &one
}
