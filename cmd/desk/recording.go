package main

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"strconv"

	"partialcredit/synth"
	"partialcredit/synth/take"
	"partialcredit/synth/wav"
)

// A givenSound is a sound from the command line: described or recorded.
type givenSound struct {
	sound synth.Sound
	take  *take.Take // nil where it is described
}

// given reads a sound like [desk.sound], or a recording.
func (d *desk) given(name string) (*givenSound, error) {
	if _, ok := linked(name); ok {
		s, err := d.sound(name)
		return &givenSound{sound: s}, err
	}
	f, err := d.open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := bufio.NewReader(f)
	start, _ := r.Peek(512) // what is wrong with it is said when it is read
	if !described(start) {
		t, err := readTake(r)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", called(name), err)
		}
		return &givenSound{take: t}, nil
	}
	data, err := io.ReadAll(io.LimitReader(r, mostJSON+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %w", called(name), err)
	case len(data) > mostJSON:
		return nil, fmt.Errorf("%s is larger than %d bytes, the most that is read here. Check that it is the right file", called(name), mostJSON)
	}
	s, err := parseSound(name, data)
	return &givenSound{sound: s}, err
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

// readTake finds the note in a WAV file.
func readTake(r io.Reader) (*take.Take, error) {
	w, err := wav.Read(r)
	if err != nil {
		return nil, err
	}
	return take.Find(w.Mono(), float64(w.Rate))
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
