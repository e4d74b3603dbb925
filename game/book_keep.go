package game

import (
	"slices"

	"partialcredit/game/book"
	"partialcredit/game/ui"
)

// mostSlipFiles is how much of the files with slips is read, in bytes.
const mostSlipFiles = MostDropped

// actOnCollecting is for how slips get into the book.
func (g *Game) actOnCollecting(name string, a ui.Action) bool {
	m := &g.marks
	switch name {
	case "scan":
		m.leaf, m.learner, m.scanned, m.code = leafCollect, nil, 0, ""
		g.scan(g.takeCode)
	case "stop":
		g.stopScan()
	case "open slips":
		g.wish(Wish{Kind: OpenFile, Purpose: "slips", Accept: ".txt,.eml,.json,text/plain,image/*", Many: true, Most: mostSlipFiles})
	case "slips":
		if !a.Typed {
			return false
		}
		m.pasted = a.Text
	case "take slips":
		text := m.pasted
		m.pasted = ""
		g.takeSlipText(text, "")
	default:
		return false
	}
	g.dirty = true
	return true
}

// actOnKept is for what goes out of the book: files, paper, and what is removed.
func (g *Game) actOnKept(name string, n int) bool {
	m, b := &g.marks, g.openBook()
	t := g.bookTable()
	all := m.view
	all.Find = "" // nobody is left out of a file
	switch {
	case name == "save slips":
		g.wish(Wish{Kind: Download, Name: "slips.txt", Type: "text/plain", Text: g.slipLinks()})
	case name == "csv" && t != nil:
		g.wish(Wish{Kind: Download, Name: "marks-" + fileName(t.Sheet.Title) + ".csv", Type: "text/csv", Text: t.CSV(t.View(all))})
	case name == "wide" && t != nil:
		g.wish(Wish{Kind: Download, Name: "class-" + fileName(t.Sheet.Title) + ".csv", Type: "text/csv", Text: t.Wide(t.View(all))})
	case name == "print" && t != nil:
		g.wish(Wish{Kind: Print, Name: "marks-" + fileName(t.Sheet.Title) + ".html", Text: g.bookDocument(t, t.View(all))})
	case name == "aside":
		m.aside = n
	case name == "remove slip", name == "close sheet", name == "remove aside":
		m.asks = name
		g.over = bookQuestion
	case name == "remove it":
		g.removeFromBook(b)
	default:
		return false
	}
	g.dirty = true
	return true
}

// removeFromBook removes what was asked about.
func (g *Game) removeFromBook(b *book.Book) {
	m := &g.marks
	g.over = noOverlay
	switch m.asks {
	case "remove slip":
		if m.learner != nil && slices.Contains(b.Entries(), m.learner) {
			b.Discard(m.learner)
			g.say = g.t("The slip is removed.")
		}
		m.learner = nil
	case "close sheet":
		if prints := g.bookPrints(); len(prints) > 0 {
			b.Close(prints[g.printAt(prints)])
			g.say = g.t("The slips of this sheet are removed.")
		}
		m.learner = nil
	case "remove aside":
		asides := b.Asides()
		switch waiting := waitingSlips(b); {
		case m.aside < len(asides):
			b.DiscardAside(m.aside)
			g.say = g.t("It is removed.")
		case m.aside < len(asides)+len(waiting):
			b.Discard(waiting[m.aside-len(asides)])
			g.say = g.t("The slip is removed.")
		}
	}
	m.asks = ""
	g.booked()
}

// waitingSlips are those whose sheet is not here.
func waitingSlips(b *book.Book) (waiting []*book.Entry) {
	for _, e := range b.Entries() {
		if e.Waits() {
			waiting = append(waiting, e)
		}
	}
	return waiting
}

// bookQuestion asks before something is removed.
func (g *Game) bookQuestion() (title, text string, buttons []ui.Widget) {
	title, text = g.t("Remove this slip?"), g.t("It goes from this device and cannot be brought back but by opening it again.")
	if g.marks.asks == "close sheet" {
		title, text = g.t("Remove all its slips?"), g.t("All slips of this sheet go from this device. Save the slips to a file first if you want to keep them.")
	}
	return title, text, []ui.Widget{{ID: "keep", Label: g.t("Keep it")}, {ID: "remove it", Label: g.t("Remove"), Primary: true}}
}
