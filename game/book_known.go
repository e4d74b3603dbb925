package game

import (
	"slices"

	"partialcredit/game/book"
	"partialcredit/game/sheet"
)

// Bounds of the sheets that are remembered after they were handed out (design choices).
const (
	mostHanded      = 60
	mostHandedBytes = 512 << 10
)

// remember keeps a sheet as it is handed out: its slips come back when it may have been
// changed or removed.
func (g *Game) remember(s *sheet.Sheet) {
	c, link := &g.cabinet, s.Fragment()
	if i := slices.Index(c.Handed, link); i >= 0 {
		c.Handed = slices.Delete(c.Handed, i, i+1)
	}
	c.Handed = append(c.Handed, link)
	sum := 0
	for i := len(c.Handed) - 1; i >= 0; i-- {
		if sum += len(c.Handed[i]); len(c.Handed)-i > mostHanded || sum > mostHandedBytes {
			c.Handed = slices.Delete(c.Handed, 0, i+1)
			break
		}
	}
	g.file()
}

// openKnown opens the sheets that slips wait for, as far as this device has them, and
// gives what became of those slips.
func (g *Game) openKnown() (receipts []book.Receipt) {
	b := g.marks.book
	wanted := map[string]bool{}
	for _, e := range b.Entries() {
		if e.Waits() {
			wanted[e.Slip.Sheet] = true
		}
	}
	if len(wanted) == 0 {
		return nil
	}
	try := func(s *sheet.Sheet) {
		if print := s.Fingerprint(); wanted[print] {
			receipts = append(receipts, b.Open(s)...)
			delete(wanted, print)
		}
	}
	for _, s := range g.everySheet() {
		try(s)
		for i := range s.Exercises {
			if len(wanted) > 0 && len(s.Exercises) > 1 {
				try(s.Only(i))
			}
		}
	}
	if len(receipts) > 0 {
		g.booked()
	}
	return receipts
}

// everySheet are all sheets on this device: those handed out, those written here, those
// that came by links, and the course.
func (g *Game) everySheet() (all []*sheet.Sheet) {
	for _, link := range slices.Backward(g.cabinet.Handed) {
		if s, err := sheet.ReadFragment(link); err == nil {
			all = append(all, s)
		}
	}
	for _, w := range g.cabinet.Written {
		if s, err := sheet.Parse(w.Sheet().JSON()); err == nil { // as a link brings it
			all = append(all, s)
		}
	}
	for i := range g.kept.Given {
		all = append(all, g.kept.Given[i].sheet)
	}
	course := g.course
	if g.trial.on {
		course = g.trial.course
	}
	return append(all, course[:min(g.built, len(course))]...)
}
