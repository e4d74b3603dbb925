package game

import (
	"fmt"
	"maps"
	"slices"
)

// Erase forgets all marks and settings, but for the volume and the language.
func (g *Game) erase() {
	volume, language := g.kept.Volume, g.kept.Language
	g.page = contents // nothing is left to keep
	g.restore(nil)
	g.kept.Volume, g.kept.Hinted, g.kept.Language = volume, true, language
	g.chooseLanguage()
	g.over = noOverlay
	g.say = g.t("All marks are erased from this device.")
	g.keep()
}

// export wishes for the progress as a file.
func (g *Game) export() {
	d := date(g.today())
	g.wish(Wish{Kind: Download, Type: "application/json", Text: string(g.Save()),
		Name: fmt.Sprintf("partial-credit-%04d-%02d-%02d.json", d.Year(), d.Month(), d.Day())})
}

// MostImported is the largest file of progress that is read, in bytes: many years of
// work come to less.
const MostImported = 4 << 20

// Import takes the progress in a file, after a question where it would replace
// other progress. No data stands for a file that could not be read or is too large.
func (g *Game) Import(data []byte) {
	if !isProgress(data) {
		g.Tell("This file holds no progress that this program can read. Choose one that was exported here.")
		return
	}
	g.offered = data
	if len(g.kept.Marks) == 0 {
		g.takeOffered()
		return
	}
	g.over, g.dirty = importQuestion, true
}

// isProgress reports whether a file holds progress that this program can read.
func isProgress(data []byte) bool {
	if len(data) > MostImported {
		return false
	}
	k, err := read(data)
	return err == nil && slices.Contains(slices.Collect(maps.Values(pageNames)), k.Page)
}

// takeOffered replaces the progress by that of the file.
func (g *Game) takeOffered() {
	if g.offered == nil {
		return
	}
	volume := g.kept.Volume
	g.page = contents
	g.restore(g.offered)
	g.kept.Volume, g.kept.Hinted, g.offered = volume, true, nil
	g.over = noOverlay
	g.show(progressPage)
	g.say = g.t("The progress from the file is on this device now.")
}
