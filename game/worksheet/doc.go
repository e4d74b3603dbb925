// Package worksheet puts a sheet on paper: a worksheet with pictures, room for answers and the link
// as a QR code, or the answer key to it. What it writes is one HTML document that is also well-formed
// XML: styles in one element, no scripts, pictures as SVG within. Sounds are told apart by the kind of
// line and dot, never by colour alone.
package worksheet

import (
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// Options say what is put on paper.
type Options struct {
	Key     bool   // the answers instead of room for them
	Address string // of the page the sheet is opened with, http:// or https:// without a fragment; no code and no link where empty

	// Names of learners, for a sheet that draws targets for each: a worksheet for every name, one after
	// the other, or a table of the targets in the key. Without any, the targets are those that stand in
	// the sheet, and the paper says so. A sheet that does not vary has a worksheet with each name too.
	Names []string

	Words *words.Language // English where nil
}

// Print makes the whole document. A key takes about a quarter of a second for every control: where a
// frame waits, use a [Maker].
func Print(s *sheet.Sheet, o Options) string { return New(s, o).Document() }
