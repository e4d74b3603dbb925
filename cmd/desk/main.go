// Desk is the teacher's command line for Partial Credit.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// command is one word of the desk. Its run function reads its own flags from args.
type command struct {
	name     string
	summary  string // one line, for the list of all words
	words    string // what stands after the name beside flags: "SOUND"; "" for flags only
	help     string // what one has to know to use it, broken to lines
	examples []example
	run      func(d *desk, args []string) error
}

// example is a command line that works, and what it does.
type example struct{ line, what string }

// desk is what a command reads from and writes to. What is asked for goes to out; progress and
// whatever is wrong go to problems, so that out can be the input of another program.
type desk struct {
	in            io.Reader
	out, problems io.Writer
}

// teaching lists the teacher's words in the order in which help shows them.
var teaching = []command{
	serveCommand,
	checkCommand,
	linkCommand,
	paperCommand,
	renderCommand,
	drawCommand,
	markCommand,
	tallyCommand,
	siteCommand,
}

// developing lists the words for people who work on Partial Credit itself.
var developing = []command{
	measureCommand,
	creditCommand,
	iconsCommand,
}

func main() {
	os.Exit(run(os.Args[1:], &desk{os.Stdin, os.Stdout, os.Stderr}))
}

// run finds the command, runs it and returns the exit code: 0 for success, 1 for a failure,
// 2 for a command line that cannot be understood.
func run(args []string, d *desk) int {
	if len(args) == 0 {
		usage(d.problems)
		return 2
	}
	name, rest := args[0], args[1:]
	if name == "help" && len(rest) == 1 {
		name, rest = rest[0], []string{"-h"}
	}
	switch name {
	case "help", "-h", "-help", "--help":
		usage(d.out)
		return 0
	}
	c, ok := find(name)
	if !ok {
		fmt.Fprintf(d.problems, "desk: there is no command %q.\n\n", name)
		usage(d.problems)
		return 2
	}
	err := c.run(d, rest)
	var asked *helpAsked
	var misuse *misuseError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &asked):
		c.explain(d.out, asked.flags)
		return 0
	case errors.As(err, &misuse):
		fmt.Fprintf(d.problems, "desk %s: %v\n", name, err)
		fmt.Fprintf(d.problems, "desk help %s explains it.\n", name)
		return 2
	default:
		fmt.Fprintf(d.problems, "desk %s: %v\n", name, err)
		return 1
	}
}

func find(name string) (command, bool) {
	for _, list := range [][]command{teaching, developing} {
		for _, c := range list {
			if c.name == name {
				return c, true
			}
		}
	}
	return command{}, false
}
