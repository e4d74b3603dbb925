package main

import (
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"

	"partialcredit/cmd/desk/credit"
	"partialcredit/cmd/desk/measure"
)

var creditCommand = command{
	name:    "credit",
	summary: "measure the marks: the credit table",
	help:    `Random targets are marked with every control moved away from them step by step.`,
	examples: []example{
		{"desk credit", "the whole table"},
		{"desk credit -targets 4 -tries 0", "a quick look"},
	},
	run: runCredit,
}

func runCredit(d *desk, args []string) error {
	flags := newFlags("credit")
	targets := flags.Int("targets", 17, "how many random `targets` of each technique, 1 to 1000")
	seed := flags.Uint64("seed", 1, "the `number` that chooses the targets")
	tries := flags.Int("tries", 40, "how many `steps` to search for a setting that earns too much, for every fourth target; 0 for none")
	file := flags.String("o", "", "the `file` to write; without it the table is printed")
	amiss := flags.Bool("amiss", false, "print every reason that is not as it should be, too")
	only := flags.String("technique", "", "measure this technique alone, its `name` as in the table")
	if err := parseFlags(flags, args); err != nil {
		return err
	}
	switch {
	case *targets < 1 || *targets > 1000:
		return &misuseError{fmt.Errorf("there are %d targets; there must be 1 to 1000", *targets)}
	case *tries < 0:
		return &misuseError{fmt.Errorf("the search has %d steps; it must have 0 or more", *tries)}
	}
	known := slices.ContainsFunc(credit.Techniques, func(t credit.Technique) bool { return t.Name == *only })
	if *only != "" && !known {
		return &misuseError{fmt.Errorf("there is no technique %q; the table names them", *only)}
	}
	t, err := credit.Run(credit.Options{Targets: *targets, Seed: *seed, Tries: *tries, Workers: runtime.NumCPU(), Only: *only})
	if err != nil {
		return err
	}
	return writeReport(*file, d.out, func(w io.Writer) {
		t.Write(w, strings.Join(append([]string{"go run ./cmd/desk credit"}, args...), " "), measure.ThisMachine(""))
		if *amiss {
			fmt.Fprintf(w, "\n## Amiss\n\n")
			for _, what := range t.Amiss {
				fmt.Fprintf(w, "- %s\n", what)
			}
		}
	})
}
