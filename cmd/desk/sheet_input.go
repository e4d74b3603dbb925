package main

import (
	"bytes"
	"fmt"
	"strings"

	"partialcredit/game/sheet"
)

// readSheet reads a sheet from what it is called on a command line: a link that holds
// it, a file with the sheet or with a link, or - for what is piped in.
func (d *desk) readSheet(name string) (*sheet.Sheet, error) {
	if i := strings.Index(name, "#sheet="); i >= 0 {
		return sheet.ReadFragment(strings.TrimSpace(name[i:]))
	}
	data, err := d.read(name, mostJSON)
	if err != nil {
		return nil, err
	}
	if text := bytes.TrimSpace(data); !bytes.HasPrefix(text, []byte("{")) && bytes.Contains(text, []byte("#sheet=")) {
		return sheet.ReadFragment(string(text[bytes.Index(text, []byte("#sheet=")):]))
	}
	s, err := sheet.Parse(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", called(name), err)
	}
	return s, nil
}
