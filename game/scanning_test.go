package game

import (
	"slices"
	"testing"

	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// A page that shows the camera wishes for it, moves it, and gives it up under a sheet of paper, where it
// cannot be had, and when it is left.
func TestTheCameraIsOnWhereItIsShown(t *testing.T) {
	g := &Game{lang: words.English}
	took := ""
	wishes := func(what string, camera ui.Rect, want ...Wish) {
		t.Helper()
		g.scene = Scene{}
		if g.scanning.on {
			g.scene.Camera = camera
		}
		g.pointCamera()
		if got := g.Wishes(); !slices.Equal(got, want) {
			t.Errorf("%s: wishes %v, want %v", what, got, want)
		}
	}
	here, there := ui.Rect{X: 10, Y: 20, W: 300, H: 200}, ui.Rect{X: 20, Y: 10, W: 200, H: 300}
	wishes("before", here)
	g.scan(func(text string) { took = text })
	wishes("on", here, Wish{Kind: Scan, Rect: here})
	wishes("still on", here)
	g.Scanned("a slip")
	if took != "a slip" {
		t.Errorf("took %q", took)
	}
	wishes("turned", there, Wish{Kind: Scan, Rect: there})
	g.over = note
	wishes("under a note", there, Wish{Kind: StopScan})
	g.over = noOverlay
	wishes("the note is gone", there, Wish{Kind: Scan, Rect: there})
	g.ScanFailed(words.Say("There is no camera."))
	if g.over != note || g.say != "There is no camera." {
		t.Errorf("over %v: %q", g.over, g.say)
	}
	wishes("failed", there, Wish{Kind: StopScan})
	g.over = noOverlay
	wishes("the note was read", there)
	g.scan(nil)
	wishes("on again", here, Wish{Kind: Scan, Rect: here})
	wishes("another page", ui.Rect{}, Wish{Kind: StopScan})
	wishes("back", here)
	g.scan(nil)
	wishes("on once more", here, Wish{Kind: Scan, Rect: here})
	g.stopScan()
	wishes("stopped", here, Wish{Kind: StopScan})
}
