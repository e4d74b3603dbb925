package main

import (
	"context"
	"fmt"
	"io"

	"partialcredit/cmd/desk/site"
)

func runSite(args []string, out io.Writer) error {
	flags := newFlags("site")
	folder := flags.String("o", "", "the `folder` to write; it is made when it does not exist")
	if err := parseFlags(flags, args, out); err != nil {
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
	fmt.Fprintf(out, "Wrote %d files to %s.\n", len(built.Files), *folder)
	fmt.Fprintf(out, "A first visit transfers %.2f MB with brotli, %.2f MB with gzip, %.2f MB uncompressed.\n",
		megabytes(brotli), megabytes(gzip), megabytes(raw))
	return nil
}

func megabytes(n int) float64 { return float64(n) / 1e6 }
