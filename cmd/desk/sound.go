package main

import (
	"bytes"
	"fmt"
	"strings"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// mostJSON is how large a description or a sheet may be: no honest one comes near.
const mostJSON = 8 << 20

// sound reads a sound from what it is called on a command line: a link that holds it, a file with its
// description or with a link, or - for what is piped in.
func (d *desk) sound(name string) (synth.Sound, error) {
	if fragment, ok := linked(name); ok {
		return sheet.ReadSoundFragment(fragment)
	}
	data, err := d.read(name, mostJSON)
	if err != nil {
		return synth.Sound{}, err
	}
	return parseSound(name, data)
}

func parseSound(name string, data []byte) (synth.Sound, error) {
	if !bytes.HasPrefix(bytes.TrimSpace(data), []byte("{")) {
		if fragment, ok := linked(string(data)); ok {
			return sheet.ReadSoundFragment(fragment)
		}
	}
	s, err := synth.Parse(data)
	if err != nil {
		return synth.Sound{}, fmt.Errorf("%s: %w", called(name), err)
	}
	return s, nil
}

// linked finds the fragment of a link to a sound.
func linked(s string) (string, bool) {
	i := strings.Index(s, "#sound=")
	if i < 0 {
		return "", false
	}
	return strings.TrimSpace(s[i:]), true
}
