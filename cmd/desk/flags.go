package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
)

// misuseError is a command line that cannot be understood, as opposed to work that failed.
type misuseError struct{ err error }

func (e *misuseError) Error() string { return e.err.Error() }
func (e *misuseError) Unwrap() error { return e.err }

// misuse makes a misuseError.
func misuse(format string, values ...any) error {
	return &misuseError{fmt.Errorf(format, values...)}
}

// helpAsked is the wish to have a command explained, which has these flags.
type helpAsked struct{ flags *flag.FlagSet }

func (e *helpAsked) Error() string { return "help is asked for" }

// newFlags returns an empty set of flags for one command.
func newFlags(name string) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	return flags
}

// parseFlags reads args into flags and refuses anything left over.
func parseFlags(flags *flag.FlagSet, args []string) error {
	words, err := parseWords(flags, args)
	if err == nil && len(words) > 0 {
		return misuse("it takes flags only, but was also given %q", words)
	}
	return err
}

// parseWords reads args into flags and returns the words among them, in their order. Flags may
// stand before, between and after words; after -- everything is a word, and - is one.
func parseWords(flags *flag.FlagSet, args []string) ([]string, error) {
	var words []string
	var last []string
	if i := slices.Index(args, "--"); i >= 0 {
		args, last = args[:i], args[i+1:]
	}
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				return nil, &helpAsked{flags}
			}
			return nil, &misuseError{err}
		}
		if args = flags.Args(); len(args) == 0 {
			return append(words, last...), nil
		}
		words, args = append(words, args[0]), args[1:]
	}
}

// given says whether a flag was set on the command line.
func given(flags *flag.FlagSet, name string) bool {
	found := false
	flags.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}
