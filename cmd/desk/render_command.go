package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/wav"
)

// peak is what a rendered file is brought to: -6 dBFS, as in the app at the most.
const peak = 0.5

var renderCommand = command{
	name:    "render",
	summary: "write a sound, or all sounds of a sheet, as WAV",
	words:   "[SOUND or SHEET]",
	help: `
What is rendered is a file with the description of a sound or with a sheet
(JSON), a link that holds one (…#sound=… or …#sheet=…), - for what is piped in, or with
-exercise one exercise, of the sheet or of the course that comes with the app.

One sound goes to the file that -o names; - is the output. The sounds of a sheet
go to the folder that -o names, numbered and called like their exercises: the
target of a match, a limit or a demonstration, the answers of a naming, both
sounds of every pair.

The greatest sample of each file is -6 dBFS, the most that the app plays. At
44100 Hz and more the sound is made at the rate of the file; at less it is made
at a multiple and filtered, whole up to 0.45 times the rate.`,
	examples: []example{
		{"desk render -exercise duty -o duty.wav", "the target of an exercise that comes with the app"},
		{"desk render pulse.json -bits 16 -rate 44100 -seconds 5 -o pulse.wav", "a sound, five seconds long"},
		{"desk render sheet.json -o sounds", "all sounds of a sheet, into the folder sounds"},
		{"desk render - -o - <sound.json | sox - -d", "into another program, here one that plays it"},
	},
	run: runRender,
}

// rendering is what the flags of render ask for.
type rendering struct {
	exercise, file string
	bits, rate     int
	seconds        float64 // 0: as the sound says
	force          bool
}

// named is a sound and the name of its file, without the ending.
type named struct {
	name  string
	sound synth.Sound
}

func runRender(d *desk, args []string) error {
	var r rendering
	flags := newFlags("render")
	description := flags.String("sound", "", "the `file` with the sound, as if it stood alone")
	flags.StringVar(&r.exercise, "exercise", "", "the `id` of an exercise, of the sheet or of the course")
	flags.StringVar(&r.file, "o", "", "the WAV `file` to write, - for the output; for several sounds, a folder")
	flags.IntVar(&r.bits, "bits", 24, "how a sample is stored: `16`, 24 or 32, which is floating-point")
	flags.IntVar(&r.rate, "rate", 48000, "`samples` a second, 8000 to 192000")
	flags.Float64Var(&r.seconds, "seconds", 0, "how long the note is held, 0.1 to 10 `s`; as the sound says where left out")
	flags.BoolVar(&r.force, "force", false, "replace files that exist")
	words, err := parseWords(flags, args)
	if err != nil {
		return err
	}
	if *description != "" {
		words = append(words, *description)
	}
	switch {
	case r.file == "":
		return misuse("name the file to write, for example: desk render -exercise duty -o duty.wav")
	case len(words) > 1:
		return misuse("it takes one sound or sheet, but was given %q", words)
	case len(words) == 0 && r.exercise == "":
		return misuse("name a description or a sheet, or an exercise with -exercise")
	case r.rate < 8000 || r.rate > 192000:
		return misuse("the rate is %d; it must lie between 8000 and 192000", r.rate)
	case r.bits != 16 && r.bits != 24 && r.bits != 32:
		return misuse("a sample has %d bits; it must have 16, 24 or 32", r.bits)
	}
	if f, _ := synth.FieldByName("seconds"); given(flags, "seconds") {
		if err := f.Check(r.seconds); err != nil {
			return &misuseError{err}
		}
	}
	sounds, all, err := d.sounds(words, r.exercise)
	if err != nil {
		return err
	}
	info, err := os.Stat(r.file)
	folder := err == nil && info.IsDir()
	fileNamed := r.file == "-" || strings.EqualFold(filepath.Ext(r.file), ".wav")
	if len(sounds) == 1 && !folder && (fileNamed || !all) {
		return r.write(d, r.file, sounds[0].sound)
	}
	if fileNamed {
		return misuse("these are %d sounds, which do not go into one file. Name a folder with -o, or one exercise with -exercise", len(sounds))
	}
	return r.writeFolder(d, sounds)
}

// writeFolder writes sounds into the folder.
func (r *rendering) writeFolder(d *desk, sounds []named) error {
	for _, s := range sounds { // before anything is written
		if err := d.free(r.path(s), r.force); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(r.file, 0o777); err != nil {
		return fmt.Errorf("the folder cannot be made: %w", err)
	}
	p := d.progress("Rendering sounds", len(sounds))
	for i, s := range sounds {
		p.at(i)
		if err := r.write(d, r.path(s), s.sound); err != nil {
			p.end()
			return err
		}
	}
	p.end()
	fmt.Fprintf(d.out, "Wrote %d sounds to %s.\n", len(sounds), r.file)
	return nil
}

func (r *rendering) path(s named) string { return filepath.Join(r.file, s.name+".wav") }

func (r *rendering) write(d *desk, file string, s synth.Sound) error {
	if err := d.free(file, r.force); err != nil {
		return err
	}
	if r.seconds > 0 {
		s.Seconds = r.seconds
	}
	samples := synth.RenderBandLimited(s, r.rate)
	normalize(samples)
	format := map[int]wav.Format{16: wav.PCM16, 24: wav.PCM24, 32: wav.Float32}[r.bits]
	err := d.create(file, r.force, func(w io.Writer) error {
		return wav.Write(w, &wav.Sound{Rate: r.rate, Channels: 1, Samples: samples}, format)
	})
	if err != nil || file == "-" || file != r.file {
		return err
	}
	fmt.Fprintf(d.out, "Wrote %.2f s at %d Hz to %s.\n", float64(len(samples))/float64(r.rate), r.rate, file)
	return nil
}

// sounds finds what is to be rendered: one sound, those of one
// exercise, or all of a sheet.
func (d *desk) sounds(words []string, exercise string) (sounds []named, all bool, err error) {
	if len(words) == 0 {
		for _, s := range sheet.Course() {
			for i := range s.Exercises {
				if s.Exercises[i].ID == exercise {
					return soundsOf(&s.Exercises[i], exercise), false, nil
				}
			}
		}
		return nil, false, fmt.Errorf("the course has no exercise %q. Check its id", exercise)
	}
	what, err := d.thing(words[0])
	switch {
	case err != nil:
		return nil, false, err
	case what.take != nil:
		return nil, false, errors.New(called(words[0]) + " is a recording already. Name a description of a sound or a sheet")
	case what.sound != nil && exercise != "":
		return nil, false, errors.New("-exercise names an exercise, but " + called(words[0]) + " is not a sheet. Leave one of them out")
	case what.sound != nil:
		return []named{{"sound", *what.sound}}, false, nil
	}
	sh := what.sheet
	for i := range sh.Exercises {
		e := &sh.Exercises[i]
		if exercise == "" || e.ID == exercise {
			sounds = append(sounds, soundsOf(e, fmt.Sprintf("%02d-%s", i+1, e.ID))...)
		}
	}
	if len(sounds) == 0 {
		return nil, false, fmt.Errorf("the sheet has no exercise %q. Check its id", exercise)
	}
	return sounds, exercise == "", nil
}

// soundsOf lists the sounds of an exercise; their files are called after name.
func soundsOf(e *sheet.Exercise, name string) []named {
	var all []named
	add := func(what string, s synth.Sound) {
		all = append(all, named{plain(name + what), s})
	}
	switch e.Kind {
	case sheet.Name:
		for i, a := range e.Answers {
			add(fmt.Sprintf("-%d-%s", i+1, a.Name), a.Sound)
		}
	case sheet.Same:
		for i, p := range e.Pairs {
			add(fmt.Sprintf("-%d-%s-one", i+1, p.Name), p.One)
			add(fmt.Sprintf("-%d-%s-other", i+1, p.Name), p.Other)
		}
	default:
		add("", e.Target)
	}
	return all
}

// plain makes a name that every file system takes: small letters, digits and hyphens.
func plain(name string) string {
	b := bytes.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r - 'A' + 'a'
		}
		return '-'
	}, []byte(name))
	for bytes.Contains(b, []byte("--")) {
		b = bytes.ReplaceAll(b, []byte("--"), []byte("-"))
	}
	if len(b) > 80 {
		b = b[:80]
	}
	return strings.Trim(string(b), "-")
}

// normalize brings the greatest sample to peak.
func normalize(samples []float32) {
	var most float32
	for _, v := range samples {
		most = max(most, v, -v)
	}
	if most == 0 {
		return
	}
	for i := range samples {
		samples[i] *= peak / most
	}
}
