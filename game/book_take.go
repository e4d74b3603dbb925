package game

import (
	"strings"

	"partialcredit/game/book"
)

// holdsSlips says whether slips, or sheets for the mark book, may be in a text.
func (g *Game) holdsSlips(text string) bool {
	if g.page == bookPage && (strings.Contains(text, "sheet=") || strings.HasPrefix(text, "{") && !isProgress([]byte(text))) {
		return true
	}
	return strings.Contains(text, "slip=")
}

// turnToBook opens the mark book where slips are collected.
func (g *Game) turnToBook() {
	if g.page != bookPage {
		g.endTrial()
		g.leave()
		g.session = session{}
		g.show(bookPage)
	}
	g.openBook()
	if g.marks.leaf != leafCollect {
		g.marks.leaf, g.marks.learner, g.part = leafCollect, nil, 0
	}
}

// takeSlip takes the text of a slip: a link, or its fragment.
func (g *Game) takeSlip(text string) { g.takeSlipText(text, "") }

// takeSlipText takes all slips in a text that was pasted or followed, and says what became
// of them.
func (g *Game) takeSlipText(text, from string) {
	g.turnToBook()
	receipts := g.addSlips(text, from)
	if s, ok := isSheet([]byte(text)); ok && len(receipts) == 0 {
		receipts = g.openForBook(book.Receipt{Fate: book.ASheet, Sheet: s})
		g.booked()
	}
	if len(receipts) == 0 {
		g.tellNews(g.t("There is no slip in this text. Paste the whole link of a slip, or what is in its file."))
		return
	}
	g.tellNews(g.became(receipts))
}

// takeSlipFiles takes the slips in files: in texts, and in pictures of codes.
func (g *Game) takeSlipFiles(files []File) {
	g.turnToBook()
	var receipts []book.Receipt
	for _, f := range files {
		name := plainly(shortened(f.Name))
		switch {
		case f.Data == nil:
			g.tellNews(g.t("The file “%s” could not be read: it is a folder, it is gone, or it is larger than 64 MB. Choose another one.", name))
		case f.isPicture():
			g.scanPicture(f, g.takePicture)
		default:
			found := g.addSlips(string(f.Data), shortened(f.Name))
			if s, ok := isSheet(f.Data); ok && len(found) == 0 {
				found = g.openForBook(book.Receipt{Fate: book.ASheet, Sheet: s})
				g.booked()
			}
			if len(found) == 0 {
				g.tellNews(g.t("There is no slip in the file “%s”.", name))
			}
			receipts = append(receipts, found...)
		}
	}
	if len(receipts) > 0 {
		g.tellNews(g.became(receipts))
	}
}

// takePicture takes what the codes in a picture hold.
func (g *Game) takePicture(name string, texts []string, why string) {
	if g.page != bookPage {
		return // it was left since
	}
	receipts := g.addSlips(strings.Join(texts, "\n"), shortened(name))
	said := why
	switch {
	case len(receipts) > 0:
		said = g.became(receipts)
	case len(texts) > 0:
		said = g.t("The code in it holds no slip.")
	}
	g.tellNews(g.t("“%s”: %s", plainly(shortened(name)), plainly(said)))
}

// takeCode takes what a code before the camera holds. The same one twice in a row counts
// once.
func (g *Game) takeCode(text string) {
	m := &g.marks
	if text == m.code {
		return
	}
	m.code = text
	m.scanned++
	said := g.t("This code holds no slip.")
	if receipts := g.addSlips(text, ""); len(receipts) > 0 {
		said = g.became(receipts)
	}
	g.tellNews(g.t("Code %d: %s", m.scanned, plainly(said)))
}

// addSlips puts the slips in a text into the book, and opens the sheets that are in it.
func (g *Game) addSlips(text, from string) (receipts []book.Receipt) {
	b := g.openBook()
	for _, r := range b.Add(text, from) {
		if r.Fate == book.ASheet {
			receipts = append(receipts, g.openForBook(r)...)
			continue
		}
		receipts = append(receipts, r)
	}
	receipts = since(receipts, g.openKnown())
	if len(receipts) > 0 {
		g.booked()
	}
	return receipts
}

// since has receipts of slips that waited say what became of them when their sheet was
// opened. One that does not fit it has no entry any more; it is known by its name.
func since(receipts, opened []book.Receipt) []book.Receipt {
	taken, aside := map[*book.Entry]book.Receipt{}, map[string][]book.Receipt{}
	for _, r := range opened {
		if r.Entry != nil {
			taken[r.Entry] = r
		} else {
			aside[r.Name] = append(aside[r.Name], r)
		}
	}
	for i, r := range receipts {
		if r.Fate != book.Waiting {
			continue
		}
		if known, ok := taken[r.Entry]; ok {
			receipts[i] = known
		} else if here := aside[r.Name]; len(here) > 0 {
			receipts[i], aside[r.Name] = here[0], here[1:]
		}
	}
	return receipts
}

// openForBook opens a sheet for the slips that wait for it.
func (g *Game) openForBook(r book.Receipt) []book.Receipt {
	return append([]book.Receipt{r}, g.openBook().Open(r.Sheet)...)
}

// became says what became of slips.
func (g *Game) became(receipts []book.Receipt) string {
	var count [book.ASheet + 1]int
	for _, r := range receipts {
		count[r.Fate]++
	}
	if len(receipts) == 1 {
		return g.becameOne(receipts[0])
	}
	said := g.t("Slips read: %d.", len(receipts)-count[book.ASheet])
	for fate := range manyBecame {
		if n := count[fate]; n > 0 {
			said += " " + g.t(manyBecame[fate], n)
		}
	}
	return said
}

// manyBecame is what is said of many slips, by what became of them.
var manyBecame = [...]string{
	book.Taken:   "New: %d.",
	book.Double:  "The same again: %d.",
	book.Newer:   "Newer ones of the same learner, which count from now on: %d.",
	book.Older:   "Earlier ones of the same learner, which are kept: %d.",
	book.Waiting: "Kept aside until their sheet is opened here: %d.",
	book.Damaged: "Damaged and kept aside: %d.",
	book.ASheet:  "Sheets opened: %d.",
}

func (g *Game) becameOne(r book.Receipt) string {
	name := plainly(r.Name)
	switch r.Fate {
	case book.Taken:
		return g.t("The slip of %s is taken.", name)
	case book.Double:
		return g.t("The slip of %s is in the book already: it is the same again.", name)
	case book.Newer:
		return g.t("This slip of %s is newer than the one in the book: it counts from now on, and the other one is kept.", name)
	case book.Older:
		return g.t("This slip of %s is older than the one in the book: it is kept, and the newer one counts.", name)
	case book.Waiting:
		return g.waits(r.Entry)
	case book.ASheet:
		return g.t("The sheet “%s” is opened for the mark book. No slip has waited for it.", plainly(r.Sheet.Title))
	}
	return g.t("Kept aside: %s", plainly(g.wrong(r.Why)))
}

// waits says what a slip waits for.
func (g *Game) waits(e *book.Entry) string {
	title := e.Slip.Title
	if title == "" {
		title = "?"
	}
	return g.t("The slip of %s answers a sheet that this device does not have: “%s”. It is kept aside until you open that sheet here, by its link or its file.", plainly(e.Slip.Name), plainly(shortened(title)))
}

// wrong says what is wrong, in the language of whoever reads it.
func (g *Game) wrong(err error) string { return g.lang.Refusal(err.Error()) }

// mostNews is how many pieces of news are remembered.
const mostNews = 8

// tellNews says what became of slips, and writes it on the page.
func (g *Game) tellNews(s string) {
	m := &g.marks
	m.news = append([]string{s}, m.news[:min(len(m.news), mostNews-1)]...)
	g.say, g.dirty = s, true
}

// slipLinks are all sheets and slips of the book, and what was damaged, a link a line:
// a file that can be opened again.
func (g *Game) slipLinks() string {
	b := g.openBook()
	var file strings.Builder
	line := func(fragment string) { file.WriteString(g.in.Address + "#" + strings.TrimPrefix(fragment, "#") + "\n") }
	for _, s := range b.Sheets() {
		line(s.Fragment())
	}
	for _, e := range b.Entries() {
		line(e.Fragment())
	}
	for _, a := range b.Asides() {
		line(a.Text)
	}
	return file.String()
}
