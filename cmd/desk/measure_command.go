package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"

	"partialcredit/cmd/desk/measure"
	"partialcredit/cmd/desk/site"
)

var measureCommand = command{
	name:    "measure",
	summary: "measure the sound against exact spectra and its rivals",
	help:    `It takes some minutes and needs Chromium.`,
	examples: []example{
		{"desk measure -quick", "a part of it, in seconds"},
		{"desk measure -o testdata/measured/sound.md", "all of it, into the table of the project"},
	},
	run: runMeasure,
}

func runMeasure(d *desk, args []string) error {
	flags := newFlags("measure")
	file := flags.String("o", "", "the `file` to write; without it the table is printed")
	quick := flags.Bool("quick", false, "measure a part only, in seconds instead of minutes")
	if err := parseFlags(flags, args); err != nil {
		return err
	}
	root, err := site.FindRoot()
	if err != nil {
		return err
	}
	report, err := measure.Run(root, *quick)
	if err != nil {
		return err
	}
	return writeReport(*file, d.out, func(w io.Writer) {
		report.Write(w, strings.Join(append([]string{"go run ./cmd/desk measure"}, args...), " "))
	})
}

// writeReport writes what is reported to a file, or to out where none is named.
func writeReport(file string, out io.Writer, report func(io.Writer)) error {
	var table bytes.Buffer
	report(&table)
	if file == "" {
		_, err := out.Write(table.Bytes())
		return err
	}
	if err := os.WriteFile(file, table.Bytes(), 0o644); err != nil {
		return fmt.Errorf("the table cannot be written: %w", err)
	}
	fmt.Fprintf(out, "Wrote the table to %s.\n", file)
	return nil
}
