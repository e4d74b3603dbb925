package game

import (
	"strings"

	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// Scanning is what reads QR codes for a page, with the device's camera or from pictures.
type scanning struct {
	on     bool              // the page wants the camera: then it lays out where in the scene's Camera
	camera ui.Rect           // where the camera is by now; off where empty
	took   func(text string) // what is done with the text of a code before the camera

	pictured func(name string, texts []string, why string) // and with what a picture holds
}

// scan turns the camera on. The page lays it out as long as it is on; leaving the page turns it off.
func (g *Game) scan(took func(text string)) {
	g.scanning.on, g.scanning.took, g.dirty = true, took, true
}

// scanPicture reads the codes in a picture that was opened. Took gets its name, the texts, and what is
// wrong where there are none.
func (g *Game) scanPicture(f File, took func(name string, texts []string, why string)) {
	g.scanning.pictured = took
	g.wish(Wish{Kind: ScanPicture, Name: f.Name, File: string(f.Data)})
}

// stopScan turns the camera off.
func (g *Game) stopScan() { g.scanning.on, g.dirty = false, true }

// Scanned takes the text of a code. One that stays before the camera comes once.
func (g *Game) Scanned(text string) {
	if g.scanning.took != nil {
		g.scanning.took(text)
		g.dirty = true
	}
}

// PictureScanned takes the texts of the codes in a picture, or what is wrong with it.
func (g *Game) PictureScanned(name string, texts []string, why words.Message) {
	if g.scanning.pictured != nil {
		g.scanning.pictured(name, texts, g.lang.In(why))
		g.dirty = true
	}
}

// ScanFailed says over the page why nothing was scanned; the camera goes off.
func (g *Game) ScanFailed(why words.Message) {
	g.stopScan()
	g.say, g.over = g.lang.In(why), note
}

// pointCamera turns the camera on, off or moves it, as the page was laid out. Under a sheet of paper it
// is off, for its picture would lie over that.
func (g *Game) pointCamera() {
	k, wanted := &g.scanning, g.scene.Camera
	switch {
	case g.over != noOverlay:
		wanted = ui.Rect{}
	case wanted.W <= 0:
		k.on = false
	}
	if wanted == k.camera {
		return
	}
	k.camera = wanted
	if wanted.W > 0 {
		g.wish(Wish{Kind: Scan, Rect: wanted})
	} else {
		g.wish(Wish{Kind: StopScan})
	}
}

// isPicture reports whether a file begins as the pictures do that browsers read: PNG, JPEG, GIF, WebP,
// and those in the container of ISO/IEC 14496-12, which telephones write.
func (f File) isPicture() bool {
	begins := func(at int, s string) bool {
		return len(f.Data) > at && strings.HasPrefix(string(f.Data[at:min(len(f.Data), at+8)]), s)
	}
	return begins(0, "\x89PNG\r\n\x1a\n") || begins(0, "\xff\xd8\xff") || begins(0, "GIF8") ||
		begins(0, "RIFF") && begins(8, "WEBP") || begins(4, "ftyphei") || begins(4, "ftypmif1") || begins(4, "ftypavif")
}
