package main

import (
	"errors"
	"flag"
	"fmt"
	"image/png"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"partialcredit/cmd/desk/paint"
	"partialcredit/game/figure"
	"partialcredit/synth"
)

var drawCommand = command{
	name:    "draw",
	summary: "draw a sound as SVG or PNG, for slides and videos",
	words:   "SOUND",
	help: `
SOUND is a file with the description of a sound (JSON) or with a recording of one
note (WAV), a link that holds a sound (…#sound=…), or - for what is piped in. A
picture is one of

  trace     as an oscilloscope shows it, two to three periods
  partials  the spectrum, numbered by partial, ten decibels a division
  both      the trace over the partials
  sweep     a spectrogram: a field of the sound moved over a range (-field), or
            the whole note over its time; the more ink, the more level

With -with a second sound is drawn into the same picture, dashed and with open
circles: the target. Both are made equally loud.

The name of the file that is written ends in .svg or .png; - writes SVG to the
output. A PNG has Latin, Greek and Cyrillic letters; in an SVG a -title may have
any. Sizes are slide (1920x1080), thumbnail (1280x720, coarser), square
(1080x1080), or a width and a height like 1600x900. Grounds are paper,
blackboard, white (for print), transparent (dark ink, to lie over something
light) and chalk (light ink, to lie over something dark).`,
	examples: []example{
		{"desk draw pulse.json -o pulse.svg", "the trace over the partials, on paper, sized for a slide"},
		{"desk draw pulse.json -with square.json -what partials -o both.png", "two sounds over each other"},
		{"desk draw pulse.json -what sweep -field a.duty -from 0.03 -to 0.5 -o duty.png", "what the duty does to the partials"},
		{"desk draw brass.json -what trace -size thumbnail -ground chalk -o over.png", "to lay over a dark video"},
		{"desk draw mine.json -with synth.wav -target recording -o compared.svg", "a sound over the recording of an instrument"},
		{"desk draw - -o - <sound.json >sound.svg", "from what is piped in, to the output"},
	},
	run: runDraw,
}

var pictures = []string{"trace", "partials", "both", "sweep"}

// drawing is what the flags of draw ask for.
type drawing struct {
	what, with       string
	field            string
	from, to         *float64 // nil: the ends of the field's own range
	options          figure.Options
	file             string
	force            bool
	sizeName, ground string
}

func runDraw(d *desk, args []string) error {
	w, words, err := readDraw(args)
	if err != nil {
		return err
	}
	if len(words) != 1 {
		return misuse("it draws one sound, but was given %d. Name a file, a link or -, for example: desk draw sound.json -o sound.svg", len(words))
	}
	if err := d.free(w.file, w.force); err != nil {
		return err
	}
	s, err := d.thing(words[0])
	if err != nil {
		return err
	}
	var picture *figure.Drawing
	if w.what == "sweep" {
		picture, err = w.sweep(d, words[0], s)
	} else {
		picture, err = w.draw(d, words[0], s)
	}
	if err != nil {
		return err
	}
	if err := d.create(w.file, w.force, func(to io.Writer) error { return writePicture(to, w.file, picture) }); err != nil {
		return err
	}
	if w.file != "-" {
		fmt.Fprintf(d.out, "Drew %s, %d by %d pixels.\n", w.file, picture.W, picture.H)
	}
	return nil
}

func readDraw(args []string) (*drawing, []string, error) {
	w := &drawing{}
	flags := newFlags("draw")
	flags.StringVar(&w.what, "what", "both", "the `picture`: trace, partials, both or sweep")
	flags.StringVar(&w.with, "with", "", "a second `sound`, the target: a file, a link or -")
	flags.StringVar(&w.field, "field", "", "the `field` that a sweep moves, for example a.duty; the time of the note where left out")
	from := flags.Float64("from", 0, "the `value` where a sweep begins; the least of the field where left out")
	to := flags.Float64("to", 0, "the `value` where a sweep ends; the greatest of the field where left out")
	flags.StringVar(&w.sizeName, "size", "slide", "the `size`: slide, thumbnail, square or WIDTHxHEIGHT in pixels")
	flags.StringVar(&w.ground, "ground", "paper", "the `ground`: "+strings.Join(figure.GroundNames, ", "))
	flags.StringVar(&w.options.Title, "title", "", "a `text` over the picture")
	flags.StringVar(&w.options.Words.Yours, "yours", "", "what the first sound is `called` where there are two; yours where left out")
	flags.StringVar(&w.options.Words.Target, "target", "", "what the second sound is `called`; target where left out")
	flags.StringVar(&w.file, "o", "", "the `file` to write, ending in .svg or .png; - for the output, as SVG")
	flags.BoolVar(&w.force, "force", false, "replace a file that exists")
	words, err := parseWords(flags, args)
	if err != nil {
		return nil, nil, err
	}
	if given(flags, "from") {
		w.from = from
	}
	if given(flags, "to") {
		w.to = to
	}
	return w, words, w.check(flags)
}

func (w *drawing) check(flags *flag.FlagSet) error {
	ending := strings.ToLower(filepath.Ext(w.file))
	switch {
	case w.file == "":
		return misuse("name the file to write, for example: -o sound.svg")
	case w.file != "-" && ending != ".svg" && ending != ".png":
		return misuse("%s ends neither in .svg nor in .png, so it is not clear what to write. Give it one of these endings", w.file)
	case !slices.Contains(pictures, w.what):
		return misuse("there is no picture %q; it must be one of %s", w.what, strings.Join(pictures, ", "))
	case w.what != "sweep" && (w.field != "" || w.from != nil || w.to != nil):
		return misuse("-field, -from and -to belong to a sweep. Add -what sweep")
	case w.what == "sweep" && w.field == "" && (w.from != nil || w.to != nil):
		return misuse("-from and -to are values of a field. Name it with -field")
	case w.what == "sweep" && w.with != "":
		return misuse("a sweep shows one sound. Leave -with out, or draw two sweeps")
	}
	size, err := figure.ParseSize(w.sizeName)
	if err != nil {
		return &misuseError{err}
	}
	ground := slices.Index(figure.GroundNames, w.ground)
	if ground < 0 {
		return misuse("there is no ground %q; it must be one of %s", w.ground, strings.Join(figure.GroundNames, ", "))
	}
	w.options.Size, w.options.Ground = size, figure.Ground(ground)
	return nil
}

// draw draws the sound, and the other over it where one is named.
func (w *drawing) draw(d *desk, word string, s thing) (*figure.Drawing, error) {
	yours, err := s.pictured(word)
	if err != nil {
		return nil, err
	}
	var target *figure.Signal
	if w.with != "" {
		other, err := d.thing(w.with)
		if err != nil {
			return nil, err
		}
		signal, err := other.pictured(w.with)
		if err != nil {
			return nil, err
		}
		target = &signal
	}
	names := w.options.Words
	if names.Yours == "" {
		names.Yours = "yours"
	}
	if names.Target == "" {
		names.Target = "target"
	}
	draw, about := figure.Both, "The trace of a sound over its partials"
	switch w.what {
	case "trace":
		draw, about = figure.Trace, "The trace of a sound"
	case "partials":
		draw, about = figure.Partials, "The partials of a sound"
	}
	w.options.About = about + "."
	if target != nil {
		w.options.About = fmt.Sprintf("%s: %s is solid with filled dots, %s dashed with open circles.", about, names.Yours, names.Target)
	}
	return draw(w.options, yours, target), nil
}

// sweep draws the field that is asked for, or the note over its time.
func (w *drawing) sweep(d *desk, word string, s thing) (*figure.Drawing, error) {
	var along figure.Along
	var at func(float64) figure.Signal
	if w.field == "" {
		note, err := s.whole(word)
		if err != nil {
			return nil, err
		}
		along = figure.AlongTime(float64(len(note.Samples))/note.Rate, w.options.Words)
		at = figure.NoteAt(note)
		w.options.About = "A spectrogram of a note over its time."
	} else {
		f, ok := synth.FieldByName(w.field)
		switch {
		case s.sound == nil:
			return nil, errors.New("only the description of a sound has fields to sweep. Leave -field out to draw a recording over its time")
		case !ok:
			return nil, misuse("a sound has no field %q. The fields are listed in DEVELOPERS.md; a.duty is one", w.field)
		case len(f.Choices) > 0:
			return nil, misuse("%s is chosen, not moved, so it cannot be swept. Draw its choices one by one", w.field)
		}
		from, to := f.Min, f.Max
		if w.from != nil {
			from = *w.from
		}
		if w.to != nil {
			to = *w.to
		}
		if err := errors.Join(f.Check(from), f.Check(to)); err != nil {
			return nil, &misuseError{err}
		}
		if from == to {
			return nil, misuse("the sweep begins and ends at %v. Give -from and -to different values", from)
		}
		along = figure.AlongField(f, from, to)
		at = figure.FieldAt(*s.sound, f, along)
		w.options.About = fmt.Sprintf("A spectrogram of a sound while this moves from %s to %s: %s.", f.Format(from), f.Format(to), f.Label)
	}
	p := d.progress("Sweeping, percent", 100)
	defer p.end()
	return figure.Sweep(w.options, along, func(place float64) figure.Signal {
		p.at(int(100 * place))
		return at(place)
	}), nil
}

func writePicture(to io.Writer, name string, picture *figure.Drawing) error {
	if strings.EqualFold(filepath.Ext(name), ".png") {
		img, err := paint.Image(picture)
		if err != nil {
			return err
		}
		return png.Encode(to, img)
	}
	_, err := io.WriteString(to, picture.SVG())
	return err
}
