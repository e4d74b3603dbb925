package game

import "partialcredit/game/ui"

// A Wish is something that only the page around the game can do.
type Wish struct {
	Kind WishKind
	Name string  // of a file
	Text string  // what to copy, or what is in the file
	Rect ui.Rect // where to show the camera
}

// A WishKind says what is wished for.
type WishKind int

// The wishes.
const (
	Copy         WishKind = iota // Text into the clipboard
	Download                     // Text as a file called Name
	OpenFile                     // a file of the learner's choice; what is in it comes back by [Game.Import]
	Renew                        // take over the new version of the program
	Scan                         // show the camera over Rect, or move it there; codes come by [Game.Scanned], what is wrong by [Game.ScanFailed]
	StopScan                     // the camera goes off
	ScanPictures                 // pictures of the learner's choice, in which there are codes; the answers come the same way
)

// Wishes gives what has been wished for since it was last asked.
func (g *Game) Wishes() []Wish {
	w := g.wishes
	g.wishes = nil
	return w
}

func (g *Game) wish(w Wish) { g.wishes = append(g.wishes, w) }
