package main

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"

	"partialcredit/game/book"
)

var tallyCommand = command{
	name:    "tally",
	words:   "FOLDER|FILE...",
	summary: "mark a folder of slips: a table for a spreadsheet, and what the class still confuses",
	help: `
Slips are looked for in every text file, also several in one, as links or as what mails make of
them. Marks are made anew from the answers. Sheets are named with -sheet, as files or links; where
none is, they are looked for among the files.

The table (CSV, RFC 4180, UTF-8) has a line for each learner and exercise, or with -wide one for
each learner. The summary goes to the screen; with -o - the table does, and the summary only where
-summary asks for it, beside the problems.

Of several slips of one learner the latest counts. What cannot be used is named and never stops the
rest: damaged slips, slips of a sheet that is not there, files that are no text, that are larger
than 16 MB or that cannot be read. The exit status is 0 all the same, and with -strict 1.`,
	examples: []example{
		{"desk tally slips -sheet sheet.json -o marks.csv", "the slips of a folder: the table into a file, the summary to the screen"},
		{"desk tally slips mail.txt", "only the summary, with the sheets that lie among the slips"},
		{"cat *.txt | desk tally - -sheet sheet.json -wide -o - | sort", "the table as part of a pipe, a line for each learner"},
	},
	run: runTally,
}

type tallyFlags struct {
	sheets                       []string
	file                         string
	summary, wide, strict, force bool
}

func runTally(d *desk, args []string) error {
	var f tallyFlags
	flags := newFlags("tally")
	flags.Func("sheet", "the `file` or link of a sheet; may be given several times", func(s string) error {
		f.sheets = append(f.sheets, s)
		return nil
	})
	flags.StringVar(&f.file, "o", "", "the CSV `file` to write; - is the output")
	flags.BoolVar(&f.summary, "summary", false, "with -o -: the summary too, beside the problems")
	flags.BoolVar(&f.wide, "wide", false, "a line for each learner instead of one for each exercise")
	flags.BoolVar(&f.strict, "strict", false, "exit status 1 where anything could not be used")
	flags.BoolVar(&f.force, "force", false, "replace a file that exists")
	names, err := parseWords(flags, args)
	if err != nil {
		return err
	}
	if len(names) == 0 {
		return misuse("name a folder or files with slips, for example: desk tally slips -sheet sheet.json -o marks.csv")
	}
	if f.file != "" {
		if err := d.free(f.file, f.force); err != nil {
			return err
		}
	}
	return d.tally(&f, names)
}

func (d *desk) tally(f *tallyFlags, names []string) error {
	t := &tally{desk: d}
	for _, name := range f.sheets {
		sh, err := d.sheet(name)
		if err != nil {
			return err
		}
		t.book.Open(sh)
	}
	t.gather(names)
	if len(f.sheets) == 0 {
		t.openFound()
	}
	if len(t.book.Sheets()) == 0 {
		t.report(d.problems)
		return errors.New("there is no sheet to mark by. Name it with -sheet, as a file or a link")
	}
	if f.wide && f.file != "" && len(t.book.Sheets()) > 1 {
		return misuse("-wide has a column for each exercise, so it takes one sheet: name it with -sheet")
	}
	line := d.progress("Marking sounds", t.book.Left())
	t.book.MarkAll(runtime.GOMAXPROCS(0), func(done, _ int) { line.at(done) })
	line.end()
	if f.file != "" {
		if err := d.create(f.file, f.force, func(w io.Writer) error { return t.table(w, f.wide) }); err != nil {
			return err
		}
	}
	switch {
	case f.file != "-":
		t.summary(d.out)
		if f.file != "" {
			fmt.Fprintf(d.out, "\nThe table is in %s.\n", f.file)
		}
	case f.summary:
		t.summary(d.problems)
	default:
		t.report(d.problems)
	}
	if n := t.unused(); f.strict && n > 0 {
		return fmt.Errorf("%d of what was found could not be used, see above", n)
	}
	return nil
}

// table writes all sheets as one table.
func (t *tally) table(w io.Writer, wide bool) error {
	for i, sh := range t.book.Sheets() {
		table := t.book.Table(sh.Fingerprint())
		rows := table.View(book.View{By: book.ByName})
		text := table.CSV(rows)
		if wide {
			text = table.Wide(rows)
		}
		if i > 0 {
			_, text, _ = strings.Cut(text, "\r\n") // the header stands already
		}
		if _, err := io.WriteString(w, text); err != nil {
			return err
		}
	}
	return nil
}
