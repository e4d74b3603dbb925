package main

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, s)
		return err
	}
}

func TestOutputIsNeverOverAFileUnasked(t *testing.T) {
	var out bytes.Buffer
	d := &desk{in: strings.NewReader("piped"), out: &out}
	name := filepath.Join(t.TempDir(), "a.txt")
	holds := func(want string) {
		t.Helper()
		if got, err := os.ReadFile(name); err != nil || string(got) != want {
			t.Errorf("the file holds %q (%v), want %q", got, err, want)
		}
		if files, _ := os.ReadDir(filepath.Dir(name)); len(files) != 1 {
			t.Errorf("there are %d files in the folder, want 1", len(files))
		}
	}
	if err := d.create(name, false, text("one")); err != nil {
		t.Fatal(err)
	}
	holds("one")
	if err := d.create(name, false, text("two")); err == nil || !strings.Contains(err.Error(), "add -force") {
		t.Errorf("a file that exists: got %v", err)
	}
	holds("one")
	broken := errors.New("the work failed")
	fail := func(w io.Writer) error {
		w.Write(make([]byte, 1<<20))
		return broken
	}
	if err := d.create(name, true, fail); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	holds("one")
	if err := d.create(name, true, text("three")); err != nil {
		t.Fatal(err)
	}
	holds("three")
	appears := func(w io.Writer) error { return os.WriteFile(name, []byte("another's"), 0o644) }
	os.Remove(name)
	if err := d.create(name, false, appears); err == nil {
		t.Error("a file that appeared meanwhile was replaced")
	}
	holds("another's")
	if err := d.create("-", false, text("out")); err != nil || out.String() != "out" {
		t.Errorf("- wrote %q (%v)", out.String(), err)
	}
	if got, err := d.read("-", 5); err != nil || string(got) != "piped" {
		t.Errorf("- read %q (%v)", got, err)
	}
	if _, err := d.read(name, 3); err == nil || !strings.Contains(err.Error(), "larger than 3 bytes") {
		t.Errorf("too large a file: got %v", err)
	}
	for _, c := range []struct{ name, want string }{{filepath.Join(name, "none"), "cannot be"}, {filepath.Dir(name), "is a folder"}} {
		if _, err := d.read(c.name, 3); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: read gives %v", c.name, err)
		}
		if err := d.create(c.name, true, text("x")); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: create gives %v", c.name, err)
		}
	}
}

func TestWordsStandAnywhereAmongFlags(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"a b -o x", "a b"}, {"-o x a b", "a b"}, {"a -o x b", "a b"}, {"- -o x", "-"}, {"-o x -- -a b", "-a b"}, {"-o x", ""},
	} {
		flags := newFlags("test")
		o := flags.String("o", "", "")
		words, err := parseWords(flags, strings.Fields(c.args))
		if err != nil || !slices.Equal(words, strings.Fields(c.want)) || *o != "x" {
			t.Errorf("%q: %q, -o %q (%v)", c.args, words, *o, err)
		}
	}
}

// A pipe or a file instead of a terminal gets nothing but what it asked for.
func TestProgressStandsOnTerminalsOnly(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "log"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	for _, w := range []io.Writer{&bytes.Buffer{}, file} {
		p := (&desk{problems: w}).progress("Counting", 2)
		p.at(1)
		p.at(2)
		p.end()
	}
	if info, _ := file.Stat(); info.Size() > 0 {
		t.Error("progress went into a file")
	}
	var b bytes.Buffer
	p := &progress{w: &b, what: "Counting", total: 2}
	p.at(1)
	p.at(1) // too soon
	p.at(2)
	p.end()
	if want := "\rCounting: 1 of 2\rCounting: 2 of 2\r\x1b[K"; b.String() != want {
		t.Errorf("a terminal gets %q, want %q", b.String(), want)
	}
}

func TestEveryCommandIsExplained(t *testing.T) {
	for _, c := range append(slices.Clone(teaching), developing...) {
		var b bytes.Buffer
		c.explain(&b, flag.NewFlagSet(c.name, flag.ContinueOnError))
		if c.name != "icons" && (c.help == "" || len(c.examples) == 0) {
			t.Errorf("%s has no help or no examples:\n%s", c.name, b.String())
		}
		for _, e := range c.examples {
			if !strings.Contains(e.line, "desk "+c.name) {
				t.Errorf("%s: the example %q does not use it", c.name, e.line)
			}
		}
	}
}
