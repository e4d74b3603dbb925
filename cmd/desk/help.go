package main

import (
	"flag"
	"fmt"
	"io"
	"strings"
)

// usage lists the words, the teacher's first.
func usage(w io.Writer) {
	fmt.Fprintln(w, "Usage: desk COMMAND [WORDS] [FLAGS]")
	fmt.Fprintln(w)
	list(w, teaching)
	fmt.Fprintln(w)
	fmt.Fprintln(w, "For people who work on Partial Credit itself:")
	fmt.Fprintln(w)
	list(w, developing)
	fmt.Fprintln(w)
	fmt.Fprintln(w, "desk help COMMAND explains a command and shows examples.")
}

func list(w io.Writer, commands []command) {
	for _, c := range commands {
		fmt.Fprintf(w, "  %-8s %s\n", c.name, c.summary)
	}
}

// explain writes all there is to know about a command.
func (c *command) explain(w io.Writer, flags *flag.FlagSet) {
	has := false
	flags.VisitAll(func(*flag.Flag) { has = true })
	line := "desk " + c.name
	if c.words != "" {
		line += " " + c.words
	}
	if has {
		line += " [FLAGS]"
	}
	fmt.Fprintf(w, "Usage: %s\n\n", line)
	fmt.Fprintf(w, "%s%s.\n", strings.ToUpper(c.summary[:1]), c.summary[1:])
	if c.help != "" {
		fmt.Fprintf(w, "\n%s\n", strings.TrimSpace(c.help))
	}
	if has {
		fmt.Fprintf(w, "\nFlags of desk %s:\n", c.name)
		flags.SetOutput(w)
		flags.PrintDefaults()
	}
	if len(c.examples) > 0 {
		fmt.Fprint(w, "\nExamples:\n")
	}
	for _, e := range c.examples {
		fmt.Fprintf(w, "  %s\n      %s\n", e.line, e.what)
	}
}
