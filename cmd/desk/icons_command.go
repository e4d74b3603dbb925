package main

import (
	"fmt"

	"partialcredit/cmd/desk/icons"
	"partialcredit/cmd/desk/site"
)

var iconsCommand = command{
	name:    "icons",
	summary: "paint the icons of the installed app from web/icon.svg",
	run:     runIcons,
}

func runIcons(d *desk, args []string) error {
	if err := parseFlags(newFlags("icons"), args); err != nil {
		return err
	}
	root, err := site.FindRoot()
	if err != nil {
		return err
	}
	names, err := icons.Write(root)
	for _, name := range names {
		fmt.Fprintf(d.out, "Wrote %s.\n", name)
	}
	return err
}
