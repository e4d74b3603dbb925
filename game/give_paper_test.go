package game

import (
	"strings"
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// The worksheet and the key come to the printer after some ticks, none of which makes more than one
// picture, and the button says that they are on their way.
func TestPaperIsMadeTickByTick(t *testing.T) {
	g := New(sheet.Course(), nil, func(s string, size float64, bold bool) float64 { return 0.5 * size * float64(len(s)) })
	in := Input{W: 1180, H: 820, Address: "https://partial-credit.example/"}
	in.Heard.Item = -1
	tick := func() { in.Now += time.Second / 60; g.Update(in) }
	all := sheet.Matches()
	s := *all.Only(0)
	s.Title = "Duty & more"
	g.giving = &s
	g.show(givePage)
	tick()
	for id, holds := range map[string]string{"worksheet": `class="blank"`, "key": "marks are left"} {
		g.Wishes()
		g.act(ui.Action{Widget: id})
		tick()
		if w := widget(g.Scene(), id); w.Face != "Preparing…" || g.Idle() {
			t.Fatalf("%s: the button says %q", id, w.Face)
		}
		g.act(ui.Action{Widget: id}) // once more, by a hand that doubts
		ticks := 1
		for ; g.printing != nil && ticks < 500; ticks++ {
			tick()
		}
		wishes := g.Wishes()
		if len(wishes) != 1 || wishes[0].Kind != Print || ticks < 2 {
			t.Fatalf("%s: %d wishes after %d ticks", id, len(wishes), ticks)
		}
		w := wishes[0]
		if !strings.Contains(w.Text, holds) || !strings.Contains(w.Text, "<title>") || !strings.Contains(w.Text, "Duty &amp; more") || !strings.HasPrefix(w.Name, "duty-more-") || !strings.HasSuffix(w.Name, ".html") {
			t.Errorf("%s: %s: %.600s", id, w.Name, w.Text)
		}
		tick()
		if face := widget(g.Scene(), id).Face; face == "Preparing…" {
			t.Errorf("%s: the button still says %q", id, face)
		}
	}
	g.act(ui.Action{Widget: "key"})
	g.show(contents)
	for range 200 {
		tick()
	}
	if n := len(g.Wishes()); n > 0 || g.printing != nil {
		t.Error("what was left is printed")
	}
	g.lang = words.German()
	g.giving = &s
	g.show(givePage)
	g.act(ui.Action{Widget: "worksheet"})
	if g.printing.name != "duty-more-arbeitsblatt.html" {
		t.Errorf("the file is called %q", g.printing.name)
	}
}

func widget(s *Scene, id string) ui.Widget {
	for _, w := range s.Widgets {
		if w.ID == id {
			return w
		}
	}
	return ui.Widget{}
}
