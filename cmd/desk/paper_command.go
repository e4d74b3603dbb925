package main

import (
	"fmt"
	"io"
	"strings"

	"partialcredit/game/words"
	"partialcredit/game/worksheet"
)

var paperCommand = command{
	name:    "paper",
	words:   "SHEET",
	summary: "print a sheet as a worksheet or as its answer key, as HTML",
	help: `
SHEET is a file with a sheet (JSON) or with a link to one, a link, or - for what is
piped in. The page that is written opens in every browser, which prints it on A4 or
Letter. A worksheet has the pictures of the sounds, room for answers and, with
-address, the link and its QR code; a link too long for a camera has none. The key
(-key) has the answers, the teaching sentences and, for every control of a match, how
far it may be off while 80 marks are left: each takes about a quarter of a second.

For a sheet that draws targets for each learner name them with -name, once for each:
there is a worksheet for every name, each on pages of its own, or a table of all
targets in the key.`,
	examples: []example{
		{"desk paper sheet.json -address https://example.org/credit/ -o sheet.html", "a worksheet with the code of its link"},
		{"desk paper sheet.json -key -o key.html", "the answer key"},
		{"desk paper sheet.json -name wren -name 'red fox' -o class.html", "a worksheet for each of two learners"},
		{"desk paper sheet.json -key -name wren -name 'red fox' -o key.html", "the key with the targets of both"},
		{"desk paper sheet.json -language de -exercise 3 -o blatt.html", "one exercise, with all that the program says in German"},
		{"desk link 'https://example.org/credit/#sheet=1.…' | desk paper - -o sheet.html", "the sheet of a link"},
	},
	run: runPaper,
}

// names are given by a flag that may stand several times.
type names []string

func (n *names) String() string { return strings.Join(*n, ", ") }

func (n *names) Set(name string) error {
	if strings.TrimSpace(name) == "" {
		return fmt.Errorf("it must not be empty")
	}
	*n = append(*n, name)
	return nil
}

func runPaper(d *desk, args []string) error {
	var o worksheet.Options
	var tag string
	flags := newFlags("paper")
	flags.BoolVar(&o.Key, "key", false, "the answer key instead of the worksheet")
	flags.Var((*names)(&o.Names), "name", "the `name` of a learner; it may be given several times")
	flags.StringVar(&o.Address, "address", "", "the `address` of the page where you keep the app, which begins with https:// or http://")
	exercise := flags.String("exercise", "", "only this exercise of the sheet: its `number`, from 1, or its id")
	flags.StringVar(&tag, "language", "en", "the `language` of all that the program says: en or de")
	file := flags.String("o", "-", "the `file` to write; - is the output")
	force := flags.Bool("force", false, "replace a file that exists")
	sheets, err := parseWords(flags, args)
	switch {
	case err != nil:
		return err
	case len(sheets) != 1:
		return misuse("name one sheet, for example: desk paper sheet.json -o sheet.html")
	case o.Address != "" && !strings.HasPrefix(o.Address, "https://") && !strings.HasPrefix(o.Address, "http://"):
		return misuse("the address is %q; it must begin with https:// or http://", o.Address)
	}
	for _, l := range words.Languages() {
		if l.Tag == tag {
			o.Words = l
		}
	}
	if o.Words == nil {
		return misuse("there is no language %q; it must be en or de", tag)
	}
	o.Address, _, _ = strings.Cut(o.Address, "#")
	if err := d.free(*file, *force); err != nil {
		return err
	}
	sh, err := d.readSheet(sheets[0])
	if err != nil {
		return err
	}
	if sh, err = only(sh, *exercise); err != nil {
		return err
	}
	m := worksheet.New(sh, o)
	all := m.Left()
	p := d.progress("Drawing and marking", all)
	for !m.Step() {
		p.at(all - m.Left())
	}
	p.end()
	return d.create(*file, *force, func(w io.Writer) error {
		_, err := io.WriteString(w, m.Document())
		return err
	})
}
