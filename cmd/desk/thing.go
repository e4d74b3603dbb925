package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"partialcredit/game/figure"
	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/take"
	"partialcredit/synth/wav"
)

// thing is what a word of a command line stands for: one of these, the others are nil.
type thing struct {
	sound *synth.Sound
	sheet *sheet.Sheet
	take  *take.Take // the note of a recording
}

// mostJSON is how many bytes a description or a sheet may have: no honest one comes near.
const mostJSON = 8 << 20

// thing finds what a word stands for: a link that holds a sound or a sheet, a file with either as
// JSON, with such a link, or with a recording (WAV), or - for one of these piped in.
func (d *desk) thing(word string) (thing, error) {
	if _, ok := linked(word); ok {
		return parseThing("the link", []byte(word))
	}
	f, err := d.open(word)
	if err != nil {
		return thing{}, err
	}
	defer f.Close()
	in := bufio.NewReader(f)
	if head, _ := in.Peek(512); !described(head) { // what is wrong with it is said when it is read
		return readTake(called(word), in)
	}
	data, err := io.ReadAll(io.LimitReader(in, mostJSON+1))
	switch {
	case err != nil:
		return thing{}, fmt.Errorf("%s cannot be read: %w", called(word), err)
	case len(data) > mostJSON:
		return thing{}, fmt.Errorf("%s is larger than %d bytes, the most that is read here. Check that it is the right file", called(word), mostJSON)
	}
	return parseThing(called(word), data)
}

func readTake(name string, in io.Reader) (thing, error) {
	recording, err := wav.Read(in)
	if err != nil {
		return thing{}, fmt.Errorf("%s: %w", name, err)
	}
	t, err := take.Find(recording.Mono(), float64(recording.Rate))
	if err != nil {
		return thing{}, fmt.Errorf("%s: %w", name, err)
	}
	return thing{take: t}, nil
}

// parseThing reads a sound or a sheet, as JSON or from a link.
func parseThing(name string, data []byte) (thing, error) {
	if fragment, ok := linked(string(data)); ok && !bytes.HasPrefix(bytes.TrimSpace(data), []byte("{")) {
		if strings.HasPrefix(fragment, "#sheet=") {
			s, err := sheet.ReadFragment(fragment)
			return thing{sheet: s}, err
		}
		s, err := sheet.ReadSoundFragment(fragment)
		return thing{sound: &s}, err
	}
	var kind struct{ Exercises json.RawMessage }
	if json.Unmarshal(data, &kind) == nil && kind.Exercises != nil {
		s, err := sheet.Parse(data)
		if err != nil {
			return thing{}, fmt.Errorf("%s: %w", name, err)
		}
		return thing{sheet: s}, nil
	}
	s, err := synth.Parse(data)
	if err != nil {
		return thing{}, fmt.Errorf("%s: %w", name, err)
	}
	return thing{sound: &s}, nil
}

// linked finds the fragment of a link: all from its # sign to the next blank.
func linked(s string) (string, bool) {
	for _, kind := range [...]string{"#sound=", "#sheet=", "#slip="} {
		if i := strings.Index(s, kind); i >= 0 {
			return strings.Fields(s[i:])[0], true
		}
	}
	return "", false
}

// pictured is what a picture shows: a steady stretch of a sound or of a recording.
func (t *thing) pictured(word string) (figure.Signal, error) {
	switch {
	case t.sound != nil:
		return figure.OfSound(*t.sound), nil
	case t.take != nil:
		from, to := int(t.take.From*take.Rate), int(t.take.To*take.Rate)
		return figure.Signal{Samples: t.take.Samples[from:min(to, len(t.take.Samples))], Rate: take.Rate, Hz: t.take.Hz}, nil
	}
	return figure.Signal{}, errNoSound(word)
}

// whole is all of a note.
func (t *thing) whole(word string) (figure.Signal, error) {
	switch {
	case t.sound != nil:
		return figure.Note(*t.sound), nil
	case t.take != nil:
		return figure.Signal{Samples: t.take.Samples, Rate: take.Rate, Hz: t.take.Hz}, nil
	}
	return figure.Signal{}, errNoSound(word)
}

func errNoSound(word string) error {
	return errors.New(called(word) + " is a sheet, not a sound. Name a sound, a link to one or a recording")
}
