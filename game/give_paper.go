package game

import (
	"slices"

	"partialcredit/game/ui"
	"partialcredit/game/worksheet"
)

// printing is a document for the printer in the making.
type printing struct {
	maker *worksheet.Maker
	key   bool
	name  string // of the file
}

// printSheet begins to put what is handed out on paper: the worksheet, or the answer key. It is made
// one picture or one sound a tick. What is begun already goes on.
func (g *Game) printSheet(key bool) {
	s := g.handedOut()
	if s == nil || g.printing != nil && g.printing.key == key {
		return
	}
	o := worksheet.Options{Key: key, Address: g.in.Address, Words: g.lang}
	kind := g.t("worksheet")
	if key {
		kind = g.t("answer-key")
		if s.Vary {
			o.Names = g.namesOf(s.Fingerprint())
		}
	}
	g.printing = &printing{worksheet.New(s, o), key, fileName(s.Title) + "-" + kind + ".html"}
	g.say, g.dirty = g.t("Preparing…"), true
}

// namesOf are the learners whose slips for a sheet lie in the mark book: a key to a sheet that varies
// has their targets.
func (g *Game) namesOf(print string) (names []string) {
	for _, e := range g.openBook().Entries() {
		if e.Counts && e.Slip.Sheet == print {
			names = append(names, e.Slip.Name)
		}
	}
	slices.Sort(names)
	return names
}

// writePaper goes on with what is being made, and has it printed when it is done.
func (g *Game) writePaper() {
	p := g.printing
	if p == nil || !p.maker.Step() {
		return
	}
	g.printing, g.say, g.dirty = nil, "", true
	g.wish(Wish{Kind: Print, Name: p.name, Text: p.maker.Document()})
}

// paperButtons are for the worksheet and the key; the one that is being made says so.
func (g *Game) paperButtons() []ui.Widget {
	buttons := []ui.Widget{
		{ID: "worksheet", Label: g.t("Print the worksheet"), Face: g.t("Worksheet")},
		{ID: "key", Label: g.t("Print the answer key"), Face: g.t("Answer key")},
	}
	if g.printing != nil {
		i := 0
		if g.printing.key {
			i = 1
		}
		buttons[i].Face = g.t("Preparing…")
	}
	return buttons
}
