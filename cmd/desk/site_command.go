package main

import (
	"context"
	"fmt"

	"partialcredit/cmd/desk/site"
)

var siteCommand = command{
	name:    "site",
	summary: "write the app as a folder of static files",
	help:    `The folder holds all of the app and can be put onto any web server, or onto a stick.`,
	examples: []example{
		{"desk site -o public", "write it into the folder public"},
	},
	run: runSite,
}

func runSite(d *desk, args []string) error {
	flags := newFlags("site")
	folder := flags.String("o", "", "the `folder` to write; it is made when it does not exist")
	if err := parseFlags(flags, args); err != nil {
		return err
	}
	if *folder == "" {
		return &misuseError{fmt.Errorf("name the folder to write, for example: desk site -o public")}
	}
	root, err := site.FindRoot()
	if err != nil {
		return err
	}
	built, err := site.Build(context.Background(), site.Options{Root: root, Brotli: site.SmallestBrotli})
	if err != nil {
		return err
	}
	if err := built.Write(*folder); err != nil {
		return err
	}
	raw, brotli, gzip := built.Sizes()
	fmt.Fprintf(d.out, "Wrote %d files to %s.\n", len(built.Files), *folder)
	fmt.Fprintf(d.out, "A first visit transfers %.2f MB with brotli, %.2f MB with gzip, %.2f MB uncompressed.\n",
		megabytes(brotli), megabytes(gzip), megabytes(raw))
	return nil
}

func megabytes(n int) float64 { return float64(n) / 1e6 }
