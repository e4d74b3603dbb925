package game

import "partialcredit/game/ui"

// A Wish is something that only the page around the game can do.
type Wish struct {
	Kind WishKind

	Text  string // Copy, Share: plain text; Download: the bytes of the file; Print: an HTML document
	Link  string // Copy, Share: a fragment with its # sign, which the page puts its address before
	Title string // Share: of the message
	Name  string // Download, Share, Print: of the file
	Type  string // Download, Share: its media type (IANA), as "text/csv"
	File  string // Share: the bytes of a file that goes along, or goes alone, where the system takes it
	Done  string // what is said, in the learner's language, when it is done: Copy, Share

	Purpose string // OpenFile: comes back with the files by [Game.Opened]
	Accept  string // OpenFile: types and endings with commas between: ".wav,audio/wav"
	Many    bool   // OpenFile: several may be chosen
	Most    int    // OpenFile: bytes that are read, of all the files

	Rect ui.Rect // Scan: where to show the camera
}

// A WishKind says what is wished for.
type WishKind int

// The wishes.
const (
	Copy        WishKind = iota // Text, or a link, or both, into the clipboard
	Download                    // Text as a file called Name
	OpenFile                    // files of a person's choice, which come back by [Game.Opened]
	Renew                       // take over the new version of the program
	Share                       // a message, a link, a file, by what the system has for it; Copy or Download where it has nothing
	Print                       // Text on paper: its styles in plain style elements, none in attributes, and no scripts; Download where there is no printing
	Scan                        // show the camera over Rect, or move it there; codes come by [Game.Scanned], what is wrong by [Game.ScanFailed]
	StopScan                    // the camera goes off
	Record                      // from the device's input; what comes in is told by [Game.RecordingLevel], then [Game.Recorded] or [Game.RecordFailed]
	StopRecord                  // end it
	DropRecord                  // end it, and forget what came in
	ScanPicture                 // read the codes in the picture File called Name; the answer comes by [Game.PictureScanned]
)

// Wishes gives what has been wished for since it was last asked.
func (g *Game) Wishes() []Wish {
	w := g.wishes
	g.wishes = nil
	return w
}

func (g *Game) wish(w Wish) { g.wishes = append(g.wishes, w) }

// Message is what a wish copies: the text and, in a line of its own, the link behind
// the page's address.
func (w *Wish) Message(address string) string {
	switch {
	case w.Link == "":
		return w.Text
	case w.Text == "":
		return address + w.Link
	}
	return w.Text + "\n" + address + w.Link
}

// Copied tells that the clipboard has taken what was wished, or would not.
func (g *Game) Copied(w Wish, ok bool) {
	switch {
	case ok:
		g.done(w)
		g.handout.copied = true
	case w.Link != "":
		g.Tell("The browser does not let this page copy. The link stands in the address bar now: copy it there.")
	default:
		g.Tell("The browser does not let this page copy. Open the page by an address that begins with https, or in another browser.")
	}
}

// Shared tells that the system has taken what was wished, or would not: then it is
// copied or, where it is but a file, downloaded.
func (g *Game) Shared(w Wish, ok bool) {
	switch {
	case ok:
		g.done(w)
	case w.Text == "" && w.Link == "":
		g.wish(Wish{Kind: Download, Name: w.Name, Type: w.Type, Text: w.File})
	default:
		w.Kind, w.Done = Copy, g.t("This device shares nothing from here, so it is copied: paste it where you want it.")
		g.wish(w)
	}
}

// Printed tells that the browser has taken a document for the printer, or has none.
func (g *Game) Printed(w Wish, ok bool) {
	if ok {
		return
	}
	g.wish(Wish{Kind: Download, Name: w.Name, Type: "text/html", Text: w.Text})
	g.Tell("This browser does not print from here. The page is saved as a file instead: open it in a browser that prints.")
}

func (g *Game) done(w Wish) {
	if w.Done != "" {
		g.say, g.dirty = w.Done, true
	}
}
