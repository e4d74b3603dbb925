package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
)

// misuseError is a command line that cannot be understood, as opposed to work that failed.
type misuseError struct{ err error }

func (e *misuseError) Error() string { return e.err.Error() }
func (e *misuseError) Unwrap() error { return e.err }

// newFlags returns an empty set of flags for one sub-command.
func newFlags(name string) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	return flags
}

// parseFlags reads args into flags and refuses anything left over. What -h asks for goes to out.
func parseFlags(flags *flag.FlagSet, args []string, out io.Writer) error {
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintf(out, "Flags of desk %s:\n", flags.Name())
			flags.SetOutput(out)
			flags.PrintDefaults()
			return err
		}
		return &misuseError{err}
	}
	if flags.NArg() > 0 {
		return &misuseError{fmt.Errorf("it takes flags only, but was also given %q", flags.Args())}
	}
	return nil
}
