package game

import (
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// Scanning is what reads QR codes for a page, with the device's camera or from pictures.
type scanning struct {
	on     bool              // the page wants the camera: then it lays out where in the scene's Camera
	camera ui.Rect           // where the camera is by now; off where empty
	took   func(text string) // what is done with the text of a code
}

// scan turns the camera on. The page lays it out as long as it is on; leaving the page turns it off.
func (g *Game) scan(took func(text string)) {
	g.scanning.on, g.scanning.took, g.dirty = true, took, true
}

// scanPictures has a person choose pictures of codes.
func (g *Game) scanPictures(took func(text string)) {
	g.scanning.took = took
	g.wish(Wish{Kind: ScanPictures})
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
