package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"partialcredit/game/book"
	"partialcredit/game/sheet"
)

// mostText is how large a file of slips may be: some ten thousand of them.
const mostText = 16 << 20

// A tally is a mark book that is filled from files, and what became of them.
type tally struct {
	desk     *desk
	book     book.Book
	files    int
	receipts []book.Receipt
	skipped  []string // files, each with the reason
	empty    []string // files without slips
	found    []*sheet.Sheet
	from     []string // where those were found
}

// gather adds every file, and every file of every folder in the order of their names.
func (t *tally) gather(names []string) {
	var files []string
	for _, name := range names {
		info, err := os.Stat(name)
		if err != nil || !info.IsDir() {
			files = append(files, name)
			continue
		}
		filepath.WalkDir(name, func(path string, e fs.DirEntry, err error) error {
			switch {
			case err != nil:
				t.skip(path, err)
			case path != name && strings.HasPrefix(e.Name(), "."): // of the system or an editor
				if e.IsDir() {
					return fs.SkipDir
				}
			case !e.IsDir():
				files = append(files, path)
			}
			return nil
		})
	}
	line := t.desk.progress("Reading files", len(files))
	for i, file := range files {
		t.add(file)
		line.at(i + 1)
	}
	line.end()
}

func (t *tally) add(name string) {
	t.files++
	if info, err := os.Stat(name); name != "-" && err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		t.skip(name, errors.New("it is no file of text"))
		return
	}
	data, err := t.desk.read(name, mostText)
	if err != nil {
		t.skip(name, err)
		return
	}
	text, ok := readable(data)
	if !ok {
		t.skip(name, errors.New("it is no text"))
		return
	}
	receipts := t.book.Add(text, called(name))
	if strings.HasPrefix(strings.TrimSpace(text), "{") {
		if sh, err := sheet.Parse([]byte(text)); err == nil {
			receipts = append(receipts, book.Receipt{Fate: book.ASheet, From: name, Line: 1, Sheet: sh})
		}
	}
	if len(receipts) == 0 {
		t.empty = append(t.empty, called(name))
	}
	for _, r := range receipts {
		if r.Fate == book.ASheet {
			t.found, t.from = append(t.found, r.Sheet), append(t.from, r.From)
		} else {
			t.receipts = append(t.receipts, r)
		}
	}
}

// openFound opens the sheets that lay among the slips. Those that waited for one may turn out
// not to fit it.
func (t *tally) openFound() {
	for _, sh := range t.found {
		after := t.book.Open(sh)
		if len(after) == 0 {
			continue
		}
		print := sh.Fingerprint()
		t.receipts = slices.DeleteFunc(t.receipts, func(r book.Receipt) bool {
			return r.Fate == book.Waiting && r.Entry.Slip.Sheet == print
		})
		t.receipts = append(t.receipts, after...)
	}
}

func (t *tally) skip(name string, why error) {
	text := why.Error()
	if !strings.HasPrefix(text, called(name)) {
		text = called(name) + ": " + text
	}
	t.skipped = append(t.skipped, text)
}

// unused is how much was found that could not be used.
func (t *tally) unused() int {
	n := len(t.skipped)
	for _, r := range t.receipts {
		if r.Fate == book.Damaged || r.Fate == book.Waiting {
			n++
		}
	}
	return n
}

// readable is what a file says, where it is text: UTF-8, or UTF-16 with its mark.
func readable(data []byte) (string, bool) {
	big, little := bytes.HasPrefix(data, []byte{0xFE, 0xFF}), bytes.HasPrefix(data, []byte{0xFF, 0xFE})
	if (big || little) && len(data)%2 == 0 {
		units := make([]uint16, 0, len(data)/2)
		for i := 2; i < len(data); i += 2 {
			a, b := uint16(data[i]), uint16(data[i+1])
			if little {
				a, b = b, a
			}
			units = append(units, a<<8|b)
		}
		return string(utf16.Decode(units)), true
	}
	if bytes.IndexByte(data, 0) >= 0 {
		return "", false
	}
	if !utf8.Valid(data) && !bytes.Contains(data, []byte("slip=")) { // a mail in an older code may hold one
		return "", false
	}
	return string(data), true
}

// sheet finds the sheet that a word stands for: a link that holds it, a file with it or with a link to
// it, or - for what is piped in.
func (d *desk) sheet(word string) (*sheet.Sheet, error) {
	if strings.HasPrefix(word, "sheet=") {
		word = "#" + word
	}
	t, err := d.thing(word)
	if err == nil && t.sheet == nil {
		err = errors.New(called(word) + " is no sheet. Name a file with a sheet, or a link to one")
	}
	return t.sheet, err
}
