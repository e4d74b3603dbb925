package game

import (
	"bytes"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

func TestFilesAreKnownByWhatIsInThem(t *testing.T) {
	good := studied(t).Save()
	for _, c := range []struct {
		name  string
		files []File
		want  string // that the page says; the question before progress is replaced where empty
	}{
		{"progress", []File{{"a.json", good}}, ""},
		{"progress by another name", []File{{"a.txt", good}}, ""},
		{"progress among others", []File{{"a.png", []byte("\x89PNG")}, {"b.json", good}}, ""},
		{"a picture", []File{{"my 1.5.png", []byte("\x89PNG")}}, "no use for the file “my 1.5.png”"},
		{"a format", []File{{"100%s.png", []byte("\x89PNG")}}, "“100%s.png”"},
		{"a long name", []File{{strings.Repeat("ä", 300), []byte("x")}}, "“" + strings.Repeat("ä", 40) + "…”"},
		{"an empty file", []File{{"e", []byte{}}}, "no use for"},
		{"a folder", []File{{"f", nil}}, "could not be read"},
	} {
		g := studied(t)
		before := g.Save()
		g.Dropped(c.files)
		look(g)
		if c.want == "" && g.over != importQuestion || c.want != "" && (g.over != note || !strings.Contains(g.Scene().Body, c.want)) {
			t.Errorf("%s: %q", c.name, g.Scene().Body)
		}
		if !bytes.Equal(g.Save(), before) {
			t.Errorf("%s changed the progress", c.name)
		}
	}
	g := studied(t)
	g.Dropped(nil)
	g.Opened("import", nil)
	if g.over != noOverlay {
		t.Error("nothing dropped says something")
	}
}

func TestFilesComeBackToTheirPurpose(t *testing.T) {
	g := studied(t)
	g.act(ui.Action{Widget: "import"})
	w := g.Wishes()
	if len(w) != 1 || w[0].Kind != OpenFile || w[0].Most != MostImported || w[0].Many {
		t.Fatalf("%+v", w)
	}
	g.Opened(w[0].Purpose, []File{{"a.json", g.Save()}})
	if g.over != importQuestion {
		t.Error("the progress did not arrive")
	}
	g = studied(t)
	g.Opened("import", []File{{"a.json", nil}})
	look(g)
	if !strings.Contains(g.Scene().Body, "no progress that this program can read") {
		t.Errorf("%q", g.Scene().Body)
	}
}

func TestPastedText(t *testing.T) {
	sound := synth.Default()
	sound.A.Shape = synth.Triangle
	link := "https://example.org/#" + sheet.SoundFragment(sound)
	g := studied(t)
	g.Pasted(" " + link + "\n")
	if g.page != benchPage || g.work.yours != sound {
		t.Errorf("the link leads to page %s", pageNames[g.page])
	}
	g = studied(t)
	g.Pasted(string(g.Save()))
	if g.over != importQuestion {
		t.Error("progress was not taken")
	}
	g = studied(t)
	g.Pasted("a C# and a D")
	if g.over != note || !strings.Contains(g.say, "no use for the text") {
		t.Errorf("%q", g.say)
	}
	g = studied(t)
	g.Pasted(" \n")
	if g.over != noOverlay {
		t.Error("no text says something")
	}
}

func TestWhatIsNotSharedIsCopied(t *testing.T) {
	const address = "https://example.org/"
	for _, c := range []struct {
		wish Wish
		kind WishKind
		text string
	}{
		{Wish{Kind: Share, Text: "Hear this:", Link: "#x"}, Copy, "Hear this:\nhttps://example.org/#x"},
		{Wish{Kind: Share, Link: "#x"}, Copy, "https://example.org/#x"},
		{Wish{Kind: Share, Text: "slip", Name: "s.txt", File: "slip"}, Copy, "slip"},
		{Wish{Kind: Share, Name: "s.wav", Type: "audio/wav", File: "RIFF\xff"}, Download, "RIFF\xff"},
	} {
		g := New(sheet.Course(), nil, roughly)
		g.Shared(c.wish, false)
		w := g.Wishes()
		if len(w) != 1 || w[0].Kind != c.kind || w[0].Message(address) != c.text {
			t.Fatalf("%+v became %+v", c.wish, w)
		}
		if c.kind == Copy {
			g.Copied(w[0], true)
			look(g)
			if !strings.Contains(g.Scene().Say, "it is copied") {
				t.Errorf("it says %q", g.Scene().Say)
			}
		}
	}
	g := New(sheet.Course(), nil, roughly)
	g.Shared(Wish{Kind: Share, Text: "x", Done: "It is shared."}, true)
	if len(g.Wishes()) != 0 || g.say != "It is shared." {
		t.Errorf("shared, and then: %q", g.say)
	}
}

func TestWhatIsNotPrintedIsSaved(t *testing.T) {
	g := New(sheet.Course(), nil, roughly)
	g.Printed(Wish{Kind: Print, Text: "<p>a</p>", Name: "sheet.html"}, true)
	if len(g.Wishes()) != 0 || g.over != noOverlay {
		t.Error("what was printed does more")
	}
	g.Printed(Wish{Kind: Print, Text: "<p>a</p>", Name: "sheet.html"}, false)
	w := g.Wishes()
	if len(w) != 1 || w[0] != (Wish{Kind: Download, Name: "sheet.html", Type: "text/html", Text: "<p>a</p>"}) || g.over != note {
		t.Errorf("%+v", w)
	}
}

// Letters that are written press no buttons, whatever they are elsewhere.
func TestLettersInATextFieldPressNothing(t *testing.T) {
	g := studied(t)
	at, _ := g.find("beats")
	g.open(at)
	look(g)
	g.scene.Widgets = append(g.scene.Widgets, ui.Widget{ID: "name", Role: ui.Written, Rect: ui.Rect{W: 200, H: 70}})
	for key := range shortcuts {
		g.event(ui.Event{Kind: ui.KeyDown, Key: key, Widget: "name"})
	}
	if g.playing.what != silence || g.page != working || g.over != noOverlay {
		t.Errorf("a letter did something: page %s", pageNames[g.page])
	}
	g.event(ui.Event{Kind: ui.KeyDown, Key: "c"})
	if g.page == working {
		t.Error("elsewhere it does nothing either: this test tests nothing")
	}
}
