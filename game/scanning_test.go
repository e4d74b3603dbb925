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

func TestPicturesAreToldFromOtherFiles(t *testing.T) {
	for what, want := range map[string]bool{
		"\x89PNG\r\n\x1a\nand so on": true, "\xff\xd8\xff\xe0and so on": true, "GIF89a and so on": true,
		"RIFF\x10\x00\x00\x00WEBPVP8 ": true, "\x00\x00\x00\x18ftypheic and so on": true, "\x00\x00\x00\x18ftypmif1": true,
		"": false, "\xff\xd8": false, "RIFF\x10\x00\x00\x00WAVEfmt ": false, `{"version": 1}`: false,
		"#slip=1.abc": false, "\x00\x00\x00\x18ftypmp42": false,
	} {
		if got := (File{Data: []byte(what)}).isPicture(); got != want {
			t.Errorf("%q: %v, want %v", what, got, want)
		}
	}
}

func TestAPicturesCodesComeBackWithItsName(t *testing.T) {
	g := &Game{lang: words.German()}
	g.PictureScanned("nobody waits.png", []string{"a"}, words.Message{})
	var got []string
	g.scanPicture(File{Name: "a.png", Data: []byte("PNG")}, func(name string, texts []string, why string) {
		got = append(append(got, name, why), texts...)
	})
	if w := g.Wishes(); !slices.Equal(w, []Wish{{Kind: ScanPicture, Name: "a.png", File: "PNG"}}) {
		t.Errorf("wishes %v", w)
	}
	g.PictureScanned("a.png", []string{"one", "two"}, words.Message{})
	g.PictureScanned("b.png", nil, words.Say("There is nothing to make a code of."))
	if want := []string{"a.png", "", "one", "two", "b.png", "Es gibt nichts, woraus ein Code werden könnte."}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
