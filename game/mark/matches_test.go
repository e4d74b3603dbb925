package mark

import (
	"slices"

	"partialcredit/game/sheet"
)

// swept are the matches that the long tests sweep: one or more for every
// technique of the voice. Others of the course ask for more of the same at once.
var swept = []string{
	"shape", "duty", "footage", "width-rate", "vibrato", "drum", "beats", "octaves",
	"ring", "am", "fm", "bell", "sync", "sync-sweep", "tremolo", "two-at-once",
}

// Swept returns these matches, for the tests of both packages.
func Swept() (all []sheet.Exercise) {
	for _, e := range sheet.Matches().Exercises {
		if slices.Contains(swept, e.ID) {
			all = append(all, e)
		}
	}
	if len(all) != len(swept) {
		panic("mark: a match that the tests sweep is not in the course")
	}
	return
}
