package game

import (
	"encoding/json"

	"partialcredit/game/draft"
)

// cabinet is what a teacher keeps on the device, apart from a learner's progress.
type cabinet struct {
	Version int            `json:"version"`
	Written []*draft.Draft `json:"written"`           // the sheets that were written here
	Removed *draft.Draft   `json:"removed,omitempty"` // the one that was removed last
	Desk    desk           `json:"desk"`

	Handed []string        `json:"handed,omitempty"` // the sheets that were handed out, as fragments, the newest last
	Book   json.RawMessage `json:"book,omitempty"`   // the mark book
	Lost   json.RawMessage `json:"lost,omitempty"`   // one that could not be read
}

const cabinetVersion = 1

// Filed changes when what a teacher keeps has changed.
func (g *Game) Filed() int { return g.filed }

// File is what a teacher keeps, to be stored on the device.
func (g *Game) File() []byte {
	g.cabinet.Version = cabinetVersion
	g.shelve()
	data, err := json.Marshal(g.cabinet)
	if err != nil {
		panic("game: " + err.Error()) // texts and finite numbers
	}
	return data
}

// Unfile takes what [Game.File] gave an earlier time, and reports whether it could be
// read: what could not must be set aside. Nothing at all is an empty cabinet.
func (g *Game) Unfile(data []byte) bool {
	if len(data) == 0 {
		return true
	}
	var c cabinet
	if err := json.Unmarshal(data, &c); err != nil || c.Version != cabinetVersion {
		g.Tell("What a teacher has kept on this device could not be read. It is set aside, not erased.")
		return false
	}
	g.cabinet, g.marks, g.dirty = c, markBook{}, true
	g.tidyDesk()
	return true
}

func (g *Game) file() { g.filed++ }
