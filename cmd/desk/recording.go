package main

import (
	"bytes"
	"fmt"
	"strconv"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// A givenSound is a sound from the command line: described or recorded.
type givenSound struct {
	sound synth.Sound
	take  *take.Take // nil where it is described
}

// given reads a sound or a recording.
func (d *desk) given(name string) (*givenSound, error) {
	t, err := d.thing(name)
	switch {
	case err != nil:
		return nil, err
	case t.sheet != nil:
		return nil, fmt.Errorf("%s is a sheet. Name one sound: its description, a link to it or a recording", called(name))
	case t.take != nil:
		return &givenSound{take: t.take}, nil
	}
	return &givenSound{sound: *t.sound}, nil
}

// described says whether a file that begins like this holds a description or a link.
func described(start []byte) bool {
	trimmed := bytes.TrimSpace(start)
	if len(trimmed) == 0 || trimmed[0] == '{' {
		return true
	}
	_, link := linked(string(start))
	return link
}

var noteNames = []string{"C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"}

// told says what was found in a recording. A4 is 440 Hz.
func (g *givenSound) told() string {
	pitch := "no one pitch"
	if n, cents, ok := g.take.Note(); ok {
		octave := (n+120)/12 - 11
		pitch = fmt.Sprintf("%.1f Hz (%s%s %+.0f cents)", g.take.Hz, noteNames[(n+120)%12], strconv.Itoa(octave), cents)
	}
	return fmt.Sprintf("%s, from %.2f s on for %.2f s", pitch, g.take.Start, g.take.Seconds)
}
