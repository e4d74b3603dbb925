package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
)

var markCommand = command{
	name:    "mark",
	summary: "compare two sounds, of which each may be a recording: marks and the reasons for them",
	words:   "TARGET ANSWER",
	help: `
TARGET and ANSWER are each a file with the description of a sound (JSON), a link
that holds one (…#sound=…), a recording (WAV), or - for what is piped in. A
recording holds one note, held for a second or two, with a moment of quiet
before and after it; at most 60 seconds. It is refused with the reason where it
is silent, noise, clipped, too short or holds several notes.

Two descriptions are marked as the app marks them. With a recording the sounds
alone decide: its level, its start phases and the noise around its note cost
nothing, its pitch does.`,
	examples: []example{
		{"desk mark target.json answer.json", "marks of 100 and what cost the others"},
		{"desk mark lead.wav answer.json -strictness beginner", "the target is your own instrument"},
		{"desk mark target.json take.wav -json", "a learner's recording; for other programs"},
		{"desk render target.json -o - | desk mark target.json -", "the same sound gets all marks"},
	},
	run: runMark,
}

func runMark(d *desk, args []string) error {
	flags := newFlags("mark")
	strictness := flags.String("strictness", "expert", "how it is marked: `beginner`, practised or expert")
	asJSON := flags.Bool("json", false, "write JSON")
	words, err := parseWords(flags, args)
	if err != nil {
		return err
	}
	switch {
	case len(words) != 2:
		return misuse("it compares two sounds, but was given %d. Name the target and the answer, for example: desk mark target.json answer.wav", len(words))
	case words[0] == "-" && words[1] == "-":
		return misuse("only one of the two sounds can be piped in. Name a file for the other")
	}
	var how sheet.Strictness
	if err := how.UnmarshalJSON([]byte(fmt.Sprintf("%q", *strictness))); err != nil {
		return misuse("the strictness is %q. It is beginner, practised or expert", *strictness)
	}
	target, err := d.given(words[0])
	if err != nil {
		return err
	}
	answer, err := d.given(words[1])
	if err != nil {
		return err
	}
	result := compareGiven(target, answer, how.Times())
	if *asJSON {
		return writeMarksJSON(d.out, how, target, answer, result)
	}
	return writeMarks(d.out, how, target, answer, result)
}

func compareGiven(target, answer *givenSound, times float64) mark.Result {
	var r *mark.Reference
	if target.take != nil {
		r = mark.PrepareTake(target.take)
	} else {
		r = mark.Prepare(target.sound)
	}
	if answer.take != nil {
		return r.MarkTake(answer.take, times)
	}
	return r.Mark(answer.sound, times)
}

func writeMarks(w io.Writer, how sheet.Strictness, target, answer *givenSound, r mark.Result) error {
	for _, g := range []struct {
		what string
		*givenSound
	}{{"target", target}, {"answer", answer}} {
		if g.take != nil {
			if _, err := fmt.Fprintf(w, "The %s is a recording: %s.\n", g.what, g.told()); err != nil {
				return err
			}
		}
	}
	steps := "no end of"
	if !math.IsInf(r.Steps, 0) {
		steps = fmt.Sprintf("%.1f", r.Steps)
	}
	_, err := fmt.Fprintf(w, "%.0f marks of 100 (%s; %s just-noticeable steps)\n", r.Marks, how, steps)
	for _, reason := range r.Reasons {
		if err == nil {
			_, err = fmt.Fprintf(w, "- %s\n", reason.Text)
		}
	}
	return err
}

// marked is what -json writes.
type marked struct {
	Marks      float64   `json:"marks"`      // 0 to 100
	Strictness string    `json:"strictness"` // of the marks
	Steps      *float64  `json:"steps"`      // just-noticeable; null where there is no end of them
	Reasons    []because `json:"reasons"`    // the most costly first
	Target     *recorded `json:"target,omitempty"`
	Answer     *recorded `json:"answer,omitempty"`
}

type because struct {
	Text  string  `json:"text"`
	Steps float64 `json:"steps"`
}

// recorded is what was found in a recording.
type recorded struct {
	Hz      float64 `json:"hz"`      // 0 where there is no one pitch
	Start   float64 `json:"start"`   // s
	Seconds float64 `json:"seconds"` // length of the note
}

func (g *givenSound) recorded() *recorded {
	if g.take == nil {
		return nil
	}
	return &recorded{g.take.Hz, g.take.Start, g.take.Seconds}
}

func writeMarksJSON(w io.Writer, how sheet.Strictness, target, answer *givenSound, r mark.Result) error {
	m := marked{Marks: r.Marks, Strictness: how.String(), Reasons: []because{}, Target: target.recorded(), Answer: answer.recorded()}
	if !math.IsInf(r.Steps, 0) {
		m.Steps = &r.Steps
	}
	for _, reason := range r.Reasons {
		m.Reasons = append(m.Reasons, because{reason.Text.String(), reason.Cost})
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(m)
}
