package browser

import (
	"slices"
	"testing"

	"partialcredit/game"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

func written(id, value string, lines int) ui.Widget {
	return ui.Widget{ID: id, Role: ui.Written, Label: "Field " + id, Rect: ui.Rect{X: 10, Y: 20, W: 200, H: ui.TextHeight(lines)},
		Text: ui.Text{Value: value, Hint: "as you like", Lines: lines, Most: 40}}
}

func scene(widgets ...ui.Widget) *game.Scene { return &game.Scene{Widgets: widgets} }

func TestTextFieldsInTheMirror(t *testing.T) {
	plain := written("plain", "", 1)
	plain.Text.Hint, plain.Text.Most = "", 0
	p := &page{t: t}
	var m mirror
	p.apply(m.update(scene(written("name", "Ada", 1), written("task", "two\nlines", 3), plain)))
	want := `# 

! 
name text "" value Ada map[aria-label:Field name maxlength:40 placeholder:as you like] {12 46 196 42}
task textarea "" value two
lines map[aria-label:Field task maxlength:40 placeholder:as you like] {12 46 196 86}
plain text "" value  map[aria-label:Field plain] {12 46 196 42}
`
	if got := p.String(); got != want {
		t.Errorf("the page says\n%s\nwant\n%s", got, want)
	}
}

// What was typed is not put back into the field that it comes from; what the game
// has made of it is, whether it is less, as it was, or another text.
func TestTypedTextIsNotPutBack(t *testing.T) {
	var m mirror
	m.update(scene(written("name", "", 1)))
	for _, c := range []struct{ typed, game string }{{"A", "A"}, {"Ad", "Ad"}, {"Ada!", "Ada"}, {"", "Ada"}, {"x", ""}} {
		if !m.typed("name", c.typed) {
			t.Fatal("it is not a text field")
		}
		var want []edit
		if c.typed != c.game {
			want = []edit{{do: setValue, id: "name", value: c.game}}
		}
		if got := m.update(scene(written("name", c.game, 1))); !slices.Equal(got, want) {
			t.Errorf("%q typed, %q in the game: %+v, want %+v", c.typed, c.game, got, want)
		}
	}
	if m.typed("gone", "x") {
		t.Error("a field that is not there was typed into")
	}
}

// An input method that puts letters together would lose them if the text under it
// were set.
func TestNothingIsPutBackWhileComposing(t *testing.T) {
	var m mirror
	m.update(scene(written("name", "", 1), written("other", "", 1)))
	m.compose("name")
	m.typed("name", "に")
	moved := written("name", "n", 1)
	moved.Rect.Y += 5
	got := m.update(scene(moved, written("other", "b", 1)))
	want := []edit{{do: place, id: "name", rect: bounds(&moved)}, {do: setValue, id: "other", value: "b"}}
	if !slices.Equal(got, want) {
		t.Errorf("while composing: %+v, want %+v", got, want)
	}
	m.compose("")
	if got, want := m.update(scene(moved, written("other", "b", 1))), []edit{{do: setValue, id: "name", value: "n"}}; !slices.Equal(got, want) {
		t.Errorf("after it: %+v, want %+v", got, want)
	}
	m.compose("name")
	m.update(scene(button("a"))) // the page was turned
	if got := m.update(scene(written("name", "new", 1))); got[len(got)-1] == (edit{}) || m.composing != "" {
		t.Errorf("a field that was gone is still composing: %+v", got)
	}
}

func TestTextFieldsFollowEveryChange(t *testing.T) {
	off := written("a", "x", 1)
	off.Disabled, off.Text.Hint = true, ""
	scenes := [][]ui.Widget{
		{}, {written("a", "x", 1)}, {written("a", "y", 1), button("b")}, {written("a", "y", 4)}, {off}, {button("a")},
		{button("b"), written("a", "", 1), written("c", "z", 2)}, {written("c", "z", 2), written("a", "", 1)},
	}
	for i, from := range scenes {
		for j, to := range scenes {
			p, fresh := &page{t: t}, &page{t: t}
			var m, anew mirror
			p.apply(m.update(scene(from...)))
			p.apply(m.update(scene(to...)))
			fresh.apply(anew.update(scene(to...)))
			if p.String() != fresh.String() {
				t.Errorf("from scene %d to %d the page says\n%s\nwant\n%s", i, j, p, fresh)
			}
		}
	}
}

// What has been typed stays when the language changes.
func TestTypedTextKeepsItsLanguage(t *testing.T) {
	var m mirror
	m.update(scene(written("name", "marked", 1)))
	m.speak(words.German())
	if got := m.update(scene(written("name", "marked", 1))); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

func TestWhatLeavesATextField(t *testing.T) {
	for _, c := range []struct {
		k             keystroke
		oneLine, want bool
	}{
		{keystroke{key: "Escape"}, true, true}, {keystroke{key: "Escape"}, false, true},
		{keystroke{key: "Enter"}, true, true}, {keystroke{key: "Enter"}, false, false}, // a line break
		{keystroke{key: "Enter", composing: true}, true, false}, {keystroke{key: "Escape", composing: true}, true, false},
		{keystroke{key: "Enter", ctrl: true}, true, false}, {keystroke{key: "a"}, true, false}, {keystroke{key: "Tab"}, true, false},
	} {
		if got := c.k.leaves(c.oneLine); got != c.want {
			t.Errorf("%+v in one line (%v): %v", c.k, c.oneLine, got)
		}
	}
}
