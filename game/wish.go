package game

// A Wish is something that only the page around the game can do.
type Wish struct {
	Kind WishKind
	Name string // of a file
	Text string // what to copy, or what is in the file
}

// A WishKind says what is wished for.
type WishKind int

// The wishes.
const (
	Copy     WishKind = iota // Text into the clipboard
	Download                 // Text as a file called Name
	OpenFile                 // a file of the learner's choice; what is in it comes back by [Game.Import]
	Renew                    // take over the new version of the program
)

// Wishes gives what has been wished for since it was last asked.
func (g *Game) Wishes() []Wish {
	w := g.wishes
	g.wishes = nil
	return w
}

func (g *Game) wish(w Wish) { g.wishes = append(g.wishes, w) }
