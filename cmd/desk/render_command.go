package main

import (
	"bytes"
	"fmt"
	"os"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/wav"
)

// peak is what a rendered file is brought to: -6 dBFS, as in the app at the most.
const peak = 0.5

var renderCommand = command{
	name:    "render",
	summary: "write a sound as a WAV file",
	help: `
The sound is brought to a peak of -6 dBFS, the most that the app plays.`,
	examples: []example{
		{"desk render -exercise duty -o duty.wav", "the target of an exercise that comes with the app"},
	},
	run: runRender,
}

func runRender(d *desk, args []string) error {
	flags := newFlags("render")
	description := flags.String("sound", "", "the `file` with the description of a sound, as JSON")
	exercise := flags.String("exercise", "", "the `id` of an exercise of the built-in sheet, whose target is rendered")
	file := flags.String("o", "", "the WAV `file` to write")
	rate := flags.Int("rate", 48000, "samples a second, 8000 to 192000")
	if err := parseFlags(flags, args); err != nil {
		return err
	}
	switch {
	case *file == "":
		return &misuseError{fmt.Errorf("name the file to write, for example: desk render -exercise duty -o duty.wav")}
	case (*description == "") == (*exercise == ""):
		return &misuseError{fmt.Errorf("name either a description with -sound or an exercise with -exercise")}
	case *rate < 8000 || *rate > 192000:
		return &misuseError{fmt.Errorf("the rate is %d; it must lie between 8000 and 192000", *rate)}
	}
	s, err := readSound(*description, *exercise)
	if err != nil {
		return err
	}
	samples := synth.Render(s, float64(*rate))
	normalize(samples)
	var data bytes.Buffer
	if err := wav.Write(&data, &wav.Sound{Rate: *rate, Channels: 1, Samples: samples}, wav.PCM24); err != nil {
		return err
	}
	if err := os.WriteFile(*file, data.Bytes(), 0o644); err != nil {
		return fmt.Errorf("the file cannot be written: %w", err)
	}
	fmt.Fprintf(d.out, "Wrote %.2f s at %d Hz to %s.\n", float64(len(samples))/float64(*rate), *rate, *file)
	return nil
}

func readSound(description, exercise string) (synth.Sound, error) {
	if exercise != "" {
		for _, e := range sheet.Matches().Exercises {
			if e.ID == exercise {
				return e.Target, nil
			}
		}
		return synth.Sound{}, fmt.Errorf("the built-in sheet has no exercise %q", exercise)
	}
	data, err := os.ReadFile(description)
	if err != nil {
		return synth.Sound{}, fmt.Errorf("the description cannot be read: %w", err)
	}
	s, err := synth.Parse(data)
	if err != nil {
		return synth.Sound{}, fmt.Errorf("%s: %w", description, err)
	}
	return s, nil
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
