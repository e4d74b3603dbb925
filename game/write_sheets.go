package game

import (
	"slices"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
)

// mostOpened is the largest sheet that is opened from a file, in bytes: hundreds of
// exercises come to less.
const mostOpened = 1 << 20

// actOnSheets is for the list of the sheets that were written.
func (g *Game) actOnSheets(name string, n int) bool {
	c := &g.cabinet
	switch name {
	case "written":
		if n == c.Desk.Sheet {
			g.show(writePage)
			return true
		}
		c.Desk.Sheet, c.Desk.Exercise, c.Desk.Part = n, 0, 0
	case "write":
		g.show(writePage)
		return true
	case "new sheet":
		if g.newSheet(sheet.Sheet{Strictness: sheet.Beginner}) {
			c.Desk.Part = 1 // where its title is written
			g.show(writePage)
		}
	case "open sheet":
		g.wish(Wish{Kind: OpenFile, Purpose: "sheet", Accept: ".json,application/json", Most: mostOpened})
		return true
	case "copy sheet":
		if w := g.written(); w != nil {
			s := *w.Sheet()
			if s.Title != "" {
				s.Title = g.t("%s (copy)", shortened(s.Title))
			}
			g.newSheet(s)
		}
	case "remove sheet":
		if w := g.written(); w != nil {
			c.Removed = w
			c.Written = slices.Delete(c.Written, c.Desk.Sheet, c.Desk.Sheet+1)
			g.say = g.t("The sheet is removed. “Put it back” undoes that.")
		}
	case "restore sheet":
		if c.Removed != nil {
			c.Written = append(c.Written, c.Removed)
			c.Desk.Sheet, c.Removed = len(c.Written)-1, nil
			g.say = g.t("The sheet is back.")
		}
	default:
		return false
	}
	g.changed()
	return true
}

// newSheet puts a sheet among those that are written and turns to it, if there is
// room.
func (g *Game) newSheet(s sheet.Sheet) bool {
	c := &g.cabinet
	if len(c.Written) >= mostWritten {
		g.Tell("There is room for 200 sheets here, and all of it is taken. Hand one out as a file and remove it.")
		return false
	}
	c.Written = append(c.Written, draft.New(s))
	c.Desk = desk{Sheet: len(c.Written) - 1}
	g.changed()
	return true
}

// openSheet takes a sheet from a file.
func (g *Game) openSheet(f File) {
	if f.Data == nil {
		g.Tell("The file could not be read, or it is larger than 1 MB, which no sheet is. Choose another one.")
		return
	}
	s, err := sheet.Parse(f.Data)
	if err != nil {
		g.say, g.over, g.dirty = g.t("The file “%s” holds no sheet that can be used: %s. Choose another one, or mend it with a text editor.", plainly(f.Name), plainly(g.wrong(err))), note, true
		return
	}
	if g.newSheet(*s) {
		g.show(writePage)
	}
}
