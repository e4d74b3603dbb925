package game

import (
	"strings"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// A File has come from the device: opened, dropped on the page or pasted.
type File struct {
	Name string
	Data []byte // nil where it could not be read, or was too large
}

// MostDropped is how much of what is dropped on the page is read, in bytes: a class
// of slips, or some minutes of a recording.
const MostDropped = 64 << 20

// Opened takes the files that were chosen for a purpose.
func (g *Game) Opened(purpose string, files []File) {
	if len(files) == 0 {
		return
	}
	switch purpose {
	case "import":
		if s, ok := isSheet(files[0].Data); ok {
			g.receive(s)
			return
		}
		g.Import(files[0].Data)
	case "sheet":
		g.openSheet(files[0])
	case "recording":
		g.takeFile(files[0])
	case "slips":
		g.takeSlipFiles(files)
	default:
		g.Dropped(files)
	}
}

// Dropped takes files that nobody asked for, by what is in them.
func (g *Game) Dropped(files []File) {
	if len(files) == 0 {
		return
	}
	for _, f := range files {
		if isProgress(f.Data) {
			g.Import(f.Data)
			return
		}
	}
	for _, f := range files {
		if f.isWAV() {
			g.takeFile(f)
			return
		}
	}
	for _, f := range files {
		if g.page == bookPage || g.holdsSlips(string(f.Data)) {
			g.takeSlipFiles(files)
			return
		}
	}
	for _, f := range files {
		if s, ok := isSheet(f.Data); ok {
			g.receive(s)
			return
		}
	}
	f := files[0]
	name := words.Message{Format: shortened(f.Name)} // a name is not put into the language
	if f.Data == nil {
		g.Tell(g.t("The file “%s” could not be read: it is a folder, it is gone, or it is larger than 64 MB. Choose another one.", name))
		return
	}
	g.Tell(g.t("This page has no use for the file “%s”. It takes sheets, slips, WAV recordings, and progress that was exported here.", name))
}

// isSheet reads a file that holds a sheet.
func isSheet(data []byte) (*sheet.Sheet, bool) {
	if len(data) > link.Sheet.Most {
		return nil, false
	}
	s, err := sheet.Parse(data)
	return s, err == nil
}

// Pasted takes text that was pasted, but not into a text field: a link, or what is
// in a file.
func (g *Game) Pasted(text string) {
	text = strings.TrimSpace(text)
	if text == "" {
		return
	}
	if g.holdsSlips(text) {
		g.takeSlipText(text, "")
		return
	}
	if _, fragment, ok := strings.Cut(text, "#"); ok && len(strings.Fields(text)) == 1 && fragment != "" {
		g.Follow("#" + fragment)
		return
	}
	if isProgress([]byte(text)) {
		g.Import([]byte(text))
		return
	}
	g.Tell("This page has no use for the text that was pasted. It takes links to a sheet or a sound, slips, and progress that was exported here.")
}

// shortened leaves the beginning of a long name.
func shortened(name string) string {
	const most = 40
	n := 0
	for i := range name {
		if n == most {
			return name[:i] + "…"
		}
		n++
	}
	return name
}
