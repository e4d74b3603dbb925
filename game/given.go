package game

import (
	"slices"
	"strings"

	"partialcredit/game/sheet"
)

// A given sheet has come by a link or as a file. It stands in the course, behind the
// sheets that come with the program. What is done in it is kept under the ids of its
// exercises with what [given.prefix] puts before them, so that it is no other sheet's and
// no other name's. It takes no part in the practice: what is practised would be tries
// that a slip counts, and the boxes belong to the device, not to a name.
type given struct {
	Link string `json:"link"`           // the fragment that holds all of it
	Name string `json:"name,omitempty"` // who works on it now, as it was written; empty while nobody has said
	Used int    `json:"used"`           // more than that of a sheet opened before

	sheet *sheet.Sheet // as the teacher wrote it
	print string       // its fingerprint
}

// Bounds of what is kept, as a tablet's storage is small (design choices).
const (
	MostGiven      = 30
	mostGivenBytes = 1 << 20 // of all links together: one of ten exercises has about 2000
)

// parting stands between the parts of an id: names hold no line breaks.
const parting = "\n"

func (s *given) prefix(name string) string {
	return s.print + parting + sheet.Learner(name) + parting
}

// id is that of an exercise as the game knows it.
func (s *given) id(exercise string) string { return s.prefix(s.Name) + exercise }

// original is the id of an exercise as the teacher gave it.
func original(id string) string {
	if parts := strings.SplitN(id, parting, 3); len(parts) == 3 {
		return parts[2]
	}
	return id
}

// drawn is the sheet as it stands in the course, for whoever works on it.
func (s *given) drawn() *sheet.Sheet {
	own := *s.sheet.For(s.Name)
	own.Exercises = slices.Clone(own.Exercises)
	for i := range own.Exercises {
		own.Exercises[i].ID = s.id(own.Exercises[i].ID)
	}
	return &own
}

// unpack puts the given sheets behind the course.
func (g *Game) unpack() {
	g.course = slices.Clone(g.course[:g.built])
	g.kept.Given = slices.DeleteFunc(g.kept.Given, func(s given) bool {
		_, err := sheet.ReadFragment(s.Link)
		return err != nil
	})
	seen := map[string]bool{}
	g.kept.Given = slices.DeleteFunc(g.kept.Given, func(s given) bool {
		again := seen[s.Link]
		seen[s.Link] = true
		return again
	})
	for i := range g.kept.Given {
		s := &g.kept.Given[i]
		s.sheet, _ = sheet.ReadFragment(s.Link)
		s.print = s.sheet.Fingerprint()
		g.course = append(g.course, s.drawn())
	}
}

// own is the given sheet that lies open; nil where it is one of the course.
func (g *Game) own() *given {
	if i := g.at.sheet - g.built; i >= 0 && i < len(g.kept.Given) {
		return &g.kept.Given[i]
	}
	return nil
}

// receive opens a sheet that has come, and keeps it.
func (g *Game) receive(s *sheet.Sheet) {
	g.endTrial()
	print := s.Fingerprint()
	if own := g.own(); own != nil && own.print == print && g.within() {
		return // the page was loaded anew, with the link still in its address
	}
	g.leave()
	g.session = session{}
	i := slices.IndexFunc(g.kept.Given, func(x given) bool { return x.print == print })
	said, dropped := "", ""
	if i < 0 {
		link := s.Fragment()
		var ok bool
		if dropped, ok = g.makeRoom(len(link)); !ok {
			g.at = place{}
			g.show(contents)
			g.Tell("As many sheets are kept here as there is room for, and there is work on all of them. Hand in the slip of one and remove it, then open the link again.")
			return
		}
		i = len(g.kept.Given)
		g.kept.Given = append(g.kept.Given, given{Link: link})
		g.unpack()
		said = g.t("The sheet is kept on this device, in the contents under “From links”.")
		if dropped != "" {
			said += " " + g.t("“%s” made room for it: nothing had been done in it.", plainly(dropped))
		}
	}
	g.at = place{g.built + i, 0}
	g.touched()
	g.show(sheetPage)
	g.say = said
	if dropped != "" {
		g.over = note
	}
}

// within says whether the page belongs to the open sheet.
func (g *Game) within() bool {
	switch g.page {
	case sheetPage, working, marked, showing, questionPage, answered, result, slipPage, namePage:
		return !g.session.on
	}
	return false
}

// touched notes that the open sheet was used last.
func (g *Game) touched() {
	s := g.own()
	if s == nil {
		return
	}
	for i := range g.kept.Given {
		s.Used = max(s.Used, g.kept.Given[i].Used+1)
	}
}

// makeRoom drops sheets in which nothing was done, the oldest first, until another fits.
// It says which was dropped, and whether there is room now.
func (g *Game) makeRoom(bytes int) (dropped string, ok bool) {
	for {
		sum := bytes
		for _, s := range g.kept.Given {
			sum += len(s.Link)
		}
		if len(g.kept.Given) < MostGiven && sum <= mostGivenBytes {
			return dropped, true
		}
		oldest := -1
		for i := range g.kept.Given {
			if s := &g.kept.Given[i]; !g.kept.worked(s.print+parting) && (oldest < 0 || s.Used < g.kept.Given[oldest].Used) {
				oldest = i
			}
		}
		if oldest < 0 {
			return dropped, false
		}
		dropped = g.kept.Given[oldest].sheet.Title
		g.discard(oldest)
	}
}

// remove takes the open sheet off the device, with the work of every name on it.
func (g *Game) remove() {
	s := g.own()
	if s == nil {
		return
	}
	title := s.sheet.Title
	i := g.at.sheet - g.built
	g.page = contents // nothing is left to keep
	g.at = place{}
	g.discard(i)
	g.over = noOverlay
	g.show(contents)
	g.say = g.t("The sheet “%s” is removed from this device.", plainly(title))
}

func (g *Game) discard(i int) {
	g.kept.move(g.kept.Given[i].print+parting, "")
	g.kept.Given = slices.Delete(g.kept.Given, i, i+1)
	g.unpack()
}
