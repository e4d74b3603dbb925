package main

import (
	"fmt"
	"io"

	"partialcredit/cmd/desk/icons"
	"partialcredit/cmd/desk/site"
)

func runIcons(args []string, out io.Writer) error {
	if err := parseFlags(newFlags("icons"), args, out); err != nil {
		return err
	}
	root, err := site.FindRoot()
	if err != nil {
		return err
	}
	names, err := icons.Write(root)
	for _, name := range names {
		fmt.Fprintf(out, "Wrote %s.\n", name)
	}
	return err
}
