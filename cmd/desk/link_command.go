package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

var linkCommand = command{
	name:    "link",
	words:   "SHEET|SOUND|LINK",
	summary: "make a link of a sheet or a sound, or read what is in a link",
	help: `
A file with a sheet or with a sound, as JSON, becomes a link. A link, or a file with one, becomes
the sheet or the sound again, as JSON to read and to edit; a slip shows its answers. All of it is in
the part of the link after the #, which no server gets to see. Without -address only that part is
written: it goes after the address of the page where you keep the app.`,
	examples: []example{
		{"desk link sheet.json -address https://example.org/credit/", "the link to a sheet"},
		{"desk link sheet.json -exercise 3", "one exercise of it"},
		{"desk link 'https://example.org/credit/#sheet=1.…' -o sheet.json", "the sheet of a link, into a file"},
		{"desk link - < sound.json", "a sound that is piped in"},
	},
	run: runLink,
}

func runLink(d *desk, args []string) error {
	flags := newFlags("link")
	address := flags.String("address", "", "the `address` of the page, which begins with https:// or http://")
	exercise := flags.String("exercise", "", "only this exercise of the sheet: its `number`, from 1, or its id")
	file := flags.String("o", "-", "the `file` to write; - is the output")
	force := flags.Bool("force", false, "replace a file that exists")
	names, err := parseWords(flags, args)
	switch {
	case err != nil:
		return err
	case len(names) != 1:
		return misuse("name one sheet, sound or link, for example: desk link sheet.json -address https://example.org/credit/")
	case *address != "" && !strings.HasPrefix(*address, "https://") && !strings.HasPrefix(*address, "http://"):
		return misuse("the address is %q; it must begin with https:// or http://", *address)
	}
	text := names[0]
	if !isLink(text) {
		data, err := d.read(text, mostJSON)
		if err != nil {
			return err
		}
		text = string(data)
	}
	var made string
	if strings.HasPrefix(strings.TrimSpace(text), "{") {
		made, err = toLink(called(names[0]), []byte(text), *exercise)
		page, _, _ := strings.Cut(*address, "#")
		made = page + "#" + made + "\n"
	} else {
		made, err = fromLink(text, *exercise)
	}
	if err != nil {
		return err
	}
	return d.create(*file, *force, func(w io.Writer) error {
		_, err := io.WriteString(w, made)
		return err
	})
}

// isLink says whether a word of the command line is a link and no file.
func isLink(s string) bool {
	if _, err := os.Stat(s); err == nil || s == "-" {
		return false
	}
	_, _, err := link.Unpack(s)
	return !errors.Is(err, link.ErrUnknown) || strings.Contains(s, "#") || strings.Contains(s, "://")
}

// toLink makes the fragment of a sheet or a sound.
func toLink(name string, data []byte, exercise string) (string, error) {
	t, err := parseThing(name, data)
	switch {
	case err != nil:
		return "", err
	case t.sound != nil && exercise != "":
		return "", misuse("%s is a sound, which has no exercises", name)
	case t.sound != nil:
		return sheet.SoundFragment(*t.sound), nil
	}
	sh, err := only(t.sheet, exercise)
	if err != nil {
		return "", err
	}
	fragment := sh.Fragment()
	if len(fragment) > link.MostFragment {
		return "", fmt.Errorf("the sheet is too large for a link: %d bytes, where %d are the most. Divide it", len(fragment), link.MostFragment)
	}
	return fragment, nil
}

// fromLink writes what is in a link as JSON.
func fromLink(text, exercise string) (string, error) {
	kind, _, err := link.Unpack(text)
	if err != nil {
		return "", err
	}
	if exercise != "" && kind != link.Sheet {
		return "", misuse("the link leads to a %s, which has no exercises", kind.Name)
	}
	switch kind {
	case link.Sheet:
		sh, err := sheet.ReadFragment(text)
		if err != nil {
			return "", err
		}
		if sh, err = only(sh, exercise); err != nil {
			return "", err
		}
		return string(sh.Readable()), nil
	case link.Slip:
		s, err := slip.Read(text)
		if err != nil {
			return "", err
		}
		return indented(s)
	}
	s, err := sheet.ReadSoundFragment(text)
	if err != nil {
		return "", err
	}
	return indented(s)
}

func indented(v any) (string, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return out.String(), err
}

// only is the sheet with one exercise, by its number or its id; all of it where none is asked for.
func only(sh *sheet.Sheet, exercise string) (*sheet.Sheet, error) {
	if exercise == "" {
		return sh, nil
	}
	for i := range sh.Exercises {
		if sh.Exercises[i].ID == exercise || strconv.Itoa(i+1) == exercise {
			return sh.Only(i), nil
		}
	}
	return nil, misuse("the sheet has no exercise %q; it has the numbers 1 to %d", exercise, len(sh.Exercises))
}
