// Desk is the teacher's command line for Partial Credit.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

// command is one sub-command. Its run function reads its own flags from args.
type command struct {
	name    string
	summary string
	run     func(args []string, out io.Writer) error
}

// commands lists every sub-command in the order in which help shows them.
var commands = []command{
	{"serve", "build the app and serve it on this machine", runServe},
	{"site", "write the app as a folder of static files", runSite},
	{"render", "write a sound as a WAV file", runRender},
	{"measure", "measure the sound against exact spectra and its rivals", runMeasure},
	{"credit", "measure the marks: the credit table", runCredit},
	{"icons", "paint the icons of the installed app from web/icon.svg", runIcons},
}

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run finds the sub-command, runs it and returns the exit code: 0 for success, 1 for a failure,
// 2 for a command line that cannot be understood.
func run(args []string, out, problems io.Writer) int {
	if len(args) == 0 {
		usage(problems)
		return 2
	}
	name := args[0]
	if name == "help" || name == "-h" || name == "-help" || name == "--help" {
		usage(out)
		return 0
	}
	for _, c := range commands {
		if c.name != name {
			continue
		}
		err := c.run(args[1:], out)
		var misuse *misuseError
		switch {
		case err == nil, errors.Is(err, flag.ErrHelp):
			return 0
		case errors.As(err, &misuse):
			fmt.Fprintf(problems, "desk %s: %v\n", name, err)
			return 2
		default:
			fmt.Fprintf(problems, "desk %s: %v\n", name, err)
			return 1
		}
	}
	fmt.Fprintf(problems, "desk: there is no command %q.\n\n", name)
	usage(problems)
	return 2
}

func usage(w io.Writer) {
	fmt.Fprintln(w, "Usage: desk COMMAND [FLAGS]")
	fmt.Fprintln(w)
	for _, c := range commands {
		fmt.Fprintf(w, "  %-8s %s\n", c.name, c.summary)
	}
	fmt.Fprintln(w)
	fmt.Fprintln(w, "desk COMMAND -h lists the flags of a command.")
}
